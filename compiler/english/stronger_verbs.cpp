// The verb that hides behind the weak one, or what is done to such an object (common practice).
#include "compiler/english/stronger_verbs.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

namespace w = word_class;

struct Object {
    std::string_view words; // parted by spaces
    std::string_view verbs;
};

constexpr Object done_to[] = {
    {"training trainings onboarding orientation hires newcomers trainees", "Trained Led Coached"},
    {"students student pupils learners class classes lessons curriculum readers freshmen graders",
     "Taught Tutored Coached"},
    {"children kids campers toddlers", "Supervised Taught Guided"},
    {"customers customer guests guest shoppers diners visitors callers", "Served Advised Welcomed"},
    {"clients client", "Advised Served Guided"},
    {"patients patient residents resident wound", "Cared-for Treated Monitored"},
    {"team teams crew staff employees volunteers interns clerks workers members chefs",
     "Led Supervised Coordinated"},
    {"budget budgets funds fund ledger ledgers accounts cash payroll invoices expenses",
     "Managed Balanced Reconciled"},
    {"payable receivable", "Processed Reconciled Paid"},
    {"fundraiser fundraising donations donors drive gala", "Raised Organized Secured"},
    {"event events meeting meetings conference fair festival workshop workshops night",
     "Planned Organized Hosted"},
    {"research study studies experiment experiments survey surveys", "Designed Conducted Analyzed"},
    {"data dataset datasets records database databases", "Analyzed Compiled Cleaned"},
    {"code software app application website site web drivers program tool tools scripts",
     "Built Developed Tested"},
    {"report reports paper papers documentation manual manuals newsletter article articles",
     "Wrote Edited Prepared"},
    {"design layout posters flyers graphics brochure", "Designed Drew Produced"},
    {"media marketing campaign campaigns outreach advertising", "Ran Wrote Promoted"},
    {"inventory stock shelves supplies supply stockroom carts", "Tracked Counted Stocked"},
    {"phones phone calls emails mail inquiries questions", "Answered Resolved Directed"},
    {"sales revenue orders returns", "Sold Processed Closed"},
    {"food meals prep kitchen menus line", "Prepared Cooked Planned"},
    {"equipment machines machinery vehicles instruments drivers", "Operated Maintained Repaired"},
    {"samples specimens cultures assays lab laboratory", "Collected Prepared Analyzed"},
    {"schedule schedules scheduling shifts rota calendar", "Scheduled Coordinated Planned"},
    {"project projects initiative", "Led Planned Delivered"},
    {"production productions show shows play plays performance", "Staged Performed Produced"},
    {"policy policies compliance safety audit audits", "Reviewed Enforced Audited"},
    {"cleanup cleaning site grounds linen room rooms", "Cleaned Organized Maintained"},
    {"bulletin displays display boards", "Designed Arranged Built"},
};

template<typename Visit>
void each_word(std::string_view list, Visit visit) {
    while (!list.empty()) {
        const std::size_t end = std::min(list.find(' '), list.size());
        visit(list.substr(0, end));
        list.remove_prefix(std::min(end + 1, list.size()));
    }
}

void add(std::vector<std::string>& verbs, std::string verb) {
    std::ranges::replace(verb, '-', ' ');
    add_once(verbs, verb, 3);
}

// Responsible for stocking, Helped count, Was able to keep: the verb is there already.
void add_hidden_verb(const Sentence& s, std::size_t i, std::vector<std::string>& verbs) {
    for (std::size_t k = i; k < i + 4; ++k) {
        if (s.is_word(k, {"to", "with", "in", "on"}) || s.is(k, w::adverb)) continue;
        const VerbForms& forms = s.forms(k);
        const bool bare = forms.base && (s.starts_object(k + 1) || mostly_verb(*forms.verb));
        if ((forms.gerund && !s.is_word(k, {"training"})) || bare) {
            const std::string past = std::string(forms.prefix) + past_form(forms.verb->base);
            if (past != "was" && past != "helped") add(verbs, capitalised(past));
        }
        if (s.is(k, w::determiner | w::possessive) || s.ends_phrase(k) || s.is_number(k)) return;
        if (k == i && !forms.none()) return;
    }
}

void add_for_object(const std::string& word, std::vector<std::string>& verbs) {
    for (const Object& object : done_to) {
        bool found = false;
        each_word(object.words, [&](std::string_view listed) { found |= listed == word; });
        if (found)
            each_word(object.verbs, [&](std::string_view verb) { add(verbs, std::string(verb)); });
    }
}

}

std::vector<std::string> stronger_for(const Sentence& sentence, const WeakPhrase& weak) {
    std::vector<std::string> verbs;
    add_hidden_verb(sentence, weak.last + 1, verbs);
    for (std::size_t i = weak.last + 1; i < sentence.size() && i < weak.last + 9; ++i)
        add_for_object(sentence.word(i), verbs);
    return verbs;
}

}
