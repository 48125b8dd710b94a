// Words of the trade, in small letters, that the US English dictionary does not have.
#include "compiler/language/spelling.hpp"

#include <algorithm>
#include <unordered_set>

namespace quoin {
namespace {

constexpr std::string_view words =
    "barcode barcodes barcoded barcoding lookup lookups interop farmworker farmworkers thrifted "
    "sonde sondes titrator "
    "memoranda licensure pathophysiology phlebotomist phlebotomists preceptor preceptors charting "
    "triage rounding "
    "adtech agentic agritech allyship analytics anonymization asana async autocomplete autoscaling "
    "backend "
    "backends bioassay bioassays bioinformatics biomarker biomarkers biostatistics bioswale "
    "biotech "
    "blockchain bugfix bugfixes chatbot chatbots cleanups codebase codebases cofacilitated "
    "cofounded cofounder containerize containerized coursework cron crowdfunded crowdfunding "
    "crowdsource crowdsourced crowdsourcing cybersecurity cytometry darkroom dashboarding "
    "datacenter dataset "
    "datasets datasheet datasheets deescalate deescalated deescalation deduplicate deduplicated "
    "deduplication "
    "dei deliverable deliverables dev devops digitization ebook eelgrass edtech "
    "email emails endpoint endpoints esports explainer explainers facilitator facilitators "
    "fieldwork fintech flowchart flowcharts frontend frontends fundraise fundraised fundraiser "
    "fundraisers gamification "
    "gamified genomics geocoded geocoding geolocation geospatial geotagged "
    "gif gifs github goalkeeping grantwriting greenhouse groundtruth hackathon hackathons "
    "healthcare holistically hotfix hotfixes "
    "hydrologic ideation inclusivity infographic infographics inpatient "
    "interdisciplinary internship internships javascript json keyboarding kubernetes lifecycle "
    "livestream livestreamed livestreaming livestreams localhost makerspace "
    "makerspaces mentee mentees mentorship metabarcoding metadata metagenomics microbiome "
    "microcontroller microcontrollers microcredential microfinance microgrant microgrants "
    "microplastic microplastics "
    "microservice microservices middleware mindfulness monorepo multicultural multidisciplinary "
    "multilingual multimodal multitask multitasked multitasking nanoparticle nanoparticles "
    "nonprofit "
    "nonprofits nonspeaking numpy offboard offboarded offboarding onboard onboarded onboarding "
    "onboards onsite operationalize operationalized outpatient outperform pandas "
    "parametrize parameterize parameterized payables peer-reviewed phishing photobleaching "
    "photogrammetry phlebotomy "
    "phytoplankton pipetted pipetting podcaster podcasting postdoc postdocs prereading "
    "preregistered pretest "
    "pretested preprocess preprocessed preprocessing probiotics proofreading prosocial "
    "proteomics qpcr quadrat quadrats recalibrate recalibrated receivables redlined refactor "
    "refactored "
    "refactoring repo repos repurpose repurposed reskill reskilled retargeting rideshare roadmap "
    "roadmaps "
    "rollout rollouts runbook runbooks scalability scalable schoolwide scrollable "
    "scrum serverless signage smartphone smartphones spearheaded spectrophotometer "
    "spectrophotometry "
    "stakeholder stakeholders standup standups startup startups stormwater storyboarded "
    "storyboarding storyboards subreddit subteam subteams sysadmin systemwide telehealth "
    "telemedicine testbed timebox timeboxed timelapse titrate titrated titrations toolchain "
    "toolkit "
    "toolkits transect transects triaged triaging troubleshot turbidity typeset "
    "typesetting "
    "unmoderated upcycled upcycling upsell upselling upsells upskill upskilled upskilling upsold "
    "url urls usability "
    "username usernames videography videoconference videoconferencing virtualization walkthrough "
    "walkthroughs "
    "webcomic webhook webhooks webinar webinars webpage webpages whiteboarding wifi wireframe "
    "wireframed wireframes "
    "wireframing workflow workflows workstream workstreams zoning";

std::unordered_set<std::string_view> make_set() {
    std::unordered_set<std::string_view> set;
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        set.insert(words.substr(at, end - at));
        at = end + 1;
    }
    return set;
}

}

bool is_trade_word(std::string_view word) {
    static const std::unordered_set<std::string_view> set = make_set();
    std::string small(word);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return set.contains(small);
}

}
