// Words of the trades, in small letters, that no general dictionary has, and names of programs.
#include "compiler/english/spelling.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace quoin::english {
namespace {

constexpr std::string_view trade_word_list = // in the order of the alphabet
    "adtech adwords agentic agritech aliquoted aliquoting allyship ambu anonymization "
    "antiracism antiracist aquaponic aquaponics async autocomplete autocompleted autofill "
    "autograder autograders autoscaling auv auvs backend backends backfilled backfilling "
    "backhaul backhauls backline backorder backordered backorders backpropagation backstock "
    "backstocked barback barbacked barbacking barbacks barcode barcoded barcodes barcoding "
    "bariatric basecamp bioinformatic bioinformatics biostatistician bioswale bluebooked "
    "bluebooking bootcamp bootcamps bouldered bouldering bradycardic broodstock brûlée bugfix "
    "bugfixes busser bussers café cafés callboard callboards capnography charge-nurse "
    "chargeback chargebacks chatbot chatbots cliché clichés clickthrough clickthroughs "
    "cochair cochaired cocurated codebase codebases codebook codebooks codirected codirector "
    "cofacilitated cofounded cohosted cohosting config configs convolutional copresented "
    "coproduced cortado cortados cotaught coteach coteacher coteachers coteaching crm cron "
    "cronjob cronjobs crossdock crossdocked crossdocking crosstab crosstabs crowdsource "
    "crowdsourced crowdsourcing cryosection cryosectioned cryosectioning crème crêpe crêpes "
    "ctd cueing cuvettes cybersecurity cyc cycs cytometry dashboarding datacenter dataframe "
    "dataframes datasheet datasheets debride debrided debrides debriding deburr deburred "
    "deburring decodable decodables deconflict deconflicted deduplicate deduplicated "
    "deduplication dei deserialization deserialize deserialized detailer detailers dev "
    "dev-ops devops devtools dockerize dockerized dockerizing docstring docstrings doorknock "
    "doorknocked doorknocking dopplers dramaturg dramaturgs drivetrains dropship dropshipped "
    "dropshipping drysuit drysuits drywalled drywaller drywallers drywalling ductwork dyno "
    "décor ebook ecommerce edtech electrofish electrofished electrofishing electroporation "
    "endcap endcaps entrée entrées enum eportfolio eportfolios esports explainers exposé "
    "exposés extubate extubated extubation failover failovers farmworker farmworkers façade "
    "façades fiancé filesystem filesystems finetune finetuned finetuning fintech fixturing "
    "flambé fluorometers foley followspot followspots food-bank foodbank formworks frappé "
    "frontend frontends fullstack fundal gameplay gamification gamified genotyped genotyping "
    "geocoded geocoding geodatabase geodatabases geofence geofencing geolocate geolocated "
    "geolocation georeference georeferenced georeferencing geospatial geotag geotagged "
    "geotags gif gifs gillnet gillnets gillnetted gillnetting github gitlab gitops glacé "
    "glucometer glucometers gobos gradebook gradebooks grantwriting groundtruth hackathon "
    "hackathons hashmap hashmaps hemocytometer hemocytometers heteroscedasticity "
    "heteroskedasticity hmong homeschooled hotfix hotfixes hyperparameter hyperparameters "
    "hyperspectral ichthyoplankton immunoblot immunoblots improv improvs incentivized "
    "inclusivity influencer influencers infographic infographics ini inode interlibrary "
    "intermodal interop interrater intramurals jalapeño jalapeños javascript json kaizen "
    "kanban kpi kpis kubectl kubernetes latine latinx laude leaderboard leaderboards leadgen "
    "leaseup lexile lexiles licensure lifecycle lifeguarded lifeguarding linters livestream "
    "livestreamed livestreamer livestreaming livestreams loadout localhost lookbook lookbooks "
    "lysate lysates macaron macarons macchiato macchiatos macroalga macroalgae "
    "macroinvertebrate macroinvertebrates magna makefile makefiles makerspace makerspaces "
    "manipulatives maquettes martech matinée matinées maître med-surg megger meggered "
    "memoization memoize memoized memoizing mentee mentees merch mesocosm mesocosms "
    "metabarcoding metabolomics metagenomics microadventure microarray microarrays microbiome "
    "microcontroller microcontrollers microcredential microfluidic microfluidics microgrant "
    "microgrants microlending micropipette micropipettes micropipetting microplastic "
    "microservice microservices microteaching middleware mise mise-en-place mistnet mistnets "
    "mistnetted mistnetting mocktail mocktails mockup mockups monorepo moodboard moodboards "
    "multimeters multimodal multispectral multitasked multithreaded multithreading mutex "
    "mutual-aid namespace namespaces nanofabrication nanoparticle nanoparticles naïve ndarray "
    "necropsied necropsies necropsy neuro neurodivergent neurodiverse neurodiversity "
    "neurotypical niskin nonbinary nonresponse nosql numpy oauth offboard offboarded "
    "offboarding omnichannel onboarded onboarding onboards onco operationalize "
    "operationalized organoid organoids orientee orientees ortho otoliths overfit overfitting "
    "overlock overlocker oversample oversampled oximetry palletize palletized palletizing "
    "paraeducator paraeducators pathfinding pathophysiology patternmaking peds peer- peer-led "
    "pentest pentested pentesting pentests perceptron perceptrons pericare periop "
    "perioperative phenotyping phonebank phonebanked phonebanking phonebanks photobleaching "
    "photoblog photoshoot photoshoots phylogenetics phylogenomics pipetted pipetting piñata "
    "piñatas planogram planograms playtest playtested playtesting playtests podcaster "
    "poka-yoke postacute postop posttest posttested posttests practica preceptee preceptees "
    "precertified première premières preop preorder preorders preprocess preprocessing "
    "preprocessor prereading preshift pro-bono profiler proptech protégé protégés pulseox "
    "punchlist punchlists purée puréed pytest pâté qpcr quadrats raytracer raytracers "
    "raytracing reaccreditation readme realia rebar rebars rebase rebased rebasing rebooked "
    "rebrand rebranded rebranding rebrands recalibrated recertification recertified redis "
    "regexes repo repos repurpose reranking reshelve reshelved reshelving reskill reskilled "
    "retargeting revalidated reviewed rideshare risograph risographs roadmap roadmaps roi "
    "rollout rollouts romex rosé rov rovs rubygems runbook runbooks runtimes résumé résumés "
    "sauté sautéed sautéing scikit screenprint screenprinted screenprinting scrollable "
    "seaborn seo serged serging serverless shader shaders shapefile shapefiles sharded "
    "sharding sidework sightline sightlines sitework sitzprobe skidsteer sku skus slackline "
    "slacklines slacklining socioemotional soirée soirées sondes sonicate sonicated "
    "sonicating sonication soufflé soufflés sous-vide speedrun speedruns sprintf sql sqlite "
    "standup standups stdin stdout steamtable steamtables stormwater storyboarded "
    "storyboarding strategize strategized strategizing stylesheet stylesheets subclassed "
    "subfloors submodule subnet subnets subnetting subreddit subteam subteams subtidal "
    "systemwide tachycardic tagout tagouts takt teambuilding teleconsult telehealth "
    "telemedicine teletriage textbanking thrifted tickmark tickmarks tidepool tidepools "
    "timebox timeboxed timelapse timesheet timesheets tipout tipouts tokenization tokenize "
    "tokenized tokenizer tokenizers tokenizing toolchain toolkits toolpath toolpaths tooltip "
    "tooltips towfish trach trachs trailwork transfect transfected "
    "transfecting transfection transfemme triaging tuckpoint tuckpointed tuckpointing tweens "
    "typecheck typechecker ui unbanked underbanked underfitting unicode unittest unittests "
    "unix upcharge upcycled upcycling upsell upselling upsells upsert upserts upserved "
    "upskill upskilled upskilling upsold url urls ux vectorize videoconference videographer "
    "videographers videography viewport vlog vlogged vlogger vlogging vlogs voiceovers "
    "voltammetry vortexed walkthrough walkthroughs wasm watchstander watchstanders "
    "watchstanding webapp webapps webcomic webhook webhooks whiteboarding wifi winsorized "
    "wireframe wireframed wireframes wireframing workpaper workpapers workstream workstreams "
    "xml yaml";

constexpr std::string_view trade_name_list =
    "Adobe Airtable Angular Arduino ArcGIS Asana AutoCAD Autodesk Blender Bootstrap Cerner Django "
    "Docker Dreamweaver Dropbox Eclipse Facebook Figma Firebase Flask GitHub GitLab Grafana "
    "Hootsuite Instagram Java JavaScript Jenkins Jupyter Kubernetes Lightroom Linux MailChimp "
    "Mathematica MATLAB Microsoft MongoDB MySQL NVivo OpenCV Oracle Outlook Pandas Photoshop "
    "PostgreSQL "
    "PowerPoint PowerShell Procreate Python PyTorch Qualtrics QuickBooks Quizlet Redshift RStudio "
    "Salesforce SharePoint Shopify SketchUp Slack Snowflake SolidWorks Spotify SQLite Stata "
    "Tableau TensorFlow Terraform Trello TypeScript Ubuntu Unity Vectorworks Vercel WordPress "
    "Zendesk Zoom";

std::vector<std::string_view> listed_words(std::string_view text) {
    std::vector<std::string_view> all;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        all.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return all;
}

}

std::span<const std::string_view> trade_words() {
    static const std::vector<std::string_view> all = listed_words(trade_word_list);
    return all;
}

std::span<const std::string_view> technical_names() {
    static const std::vector<std::string_view> all = listed_words(trade_name_list);
    return all;
}

bool is_trade_word(std::string_view word) {
    return std::ranges::binary_search(trade_words(), lower_case(word));
}

bool is_technical_name(std::string_view word) {
    static const std::set<std::string> all = [] {
        std::set<std::string> made;
        for (const std::string_view name : technical_names())
            made.insert(lower_case(name));
        return made;
    }();
    return all.contains(lower_case(word));
}

}
