// Checks of the heading: who it is, and whether a reader or a portal can write, call and look.
#include "compiler/advice/address_faults.hpp"
#include "compiler/advice/check.hpp"
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/other_languages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

namespace quoin::advice {

namespace {

Place heading_place(const ProofContext& context) {
    const model::Field* name = context.resume.find(trade::FieldName::name);
    if (name) return name->place;
    return context.resume.heading.empty() ? Place{} : context.resume.heading.front().place;
}

// Empty if it is still to come.
std::string own_name(const ProofContext& context) {
    const std::string name = plain_in(context.resume.find(trade::FieldName::name));
    return name == trade::name_to_come ? std::string{} : name;
}

void missing_contact(const ProofContext& context, std::vector<Finding>& findings) {
    for (const auto& [name, mend] :
         {std::pair{trade::FieldName::name, "name: Ottoline Brandt"},
          {trade::FieldName::email, "email: ottoline.brandt@ellerystate.example"},
          {trade::FieldName::phone, "phone: (360) 555-0142"}})
        if (name == trade::FieldName::name ? own_name(context).empty() : !context.resume.find(name))
            report<messages::no_contact>(findings, heading_place(context), label_of(name))
                .suggestion = fill<messages::add_line>(mend);
}

std::vector<const model::Field*> contacts(const ProofContext& context, trade::FieldName name) {
    std::vector<const model::Field*> fields;
    for (const model::Field& field : context.resume.heading)
        if (field.name == name) fields.push_back(&field);
    return fields;
}

void full_address(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Field* field : contacts(context, trade::FieldName::address)) {
        const auto details = address_details(plain_in(field));
        if (details.empty()) continue;
        report<messages::address_details>(findings, field->place, joined(details, " and "));
    }
}

// Lawful, for a host of the same network; no mail from elsewhere gets there.
bool has_lone_domain(std::string_view address) {
    const std::string_view domain = address.substr(address.rfind('@') + 1);
    return !domain.starts_with('[') && domain.find('.') == std::string_view::npos;
}

void email_form(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Field* field : contacts(context, trade::FieldName::email)) {
        const std::string address = plain_in(field);
        if (!is_addr_spec(address)) {
            AddressFault fault = fault_of_address(address);
            report<messages::no_address>(findings, field->place, in_quotes(address), fault.found)
                .suggestion = std::move(fault.mend);
        } else if (has_lone_domain(address)) {
            report<messages::no_domain>(findings, field->place, in_quotes(address));
        }
    }
}

// Words of four letters and more that tell one school from another.
std::set<std::string> school_words(const model::Resume& resume) {
    std::set<std::string> words;
    for (const Position& position : positions(resume, {trade::Holds::education})) {
        if (is_before_college(*position.entry)) continue;
        std::string initials;
        const std::string school = plain_letters(plain_in(position.find(trade::FieldName::school)));
        for (const WordAt& each : words_in(school)) {
            const std::string word(each.word);
            if (word != "of" && word != "the" && word != "and") initials += word.front();
            if (word.size() >= 4 && !is_one_of(word, List::words_of_any_school)) words.insert(word);
        }
        if (initials.size() >= 3) words.insert(initials);
    }
    return words;
}

bool is_school_address(std::string_view address, const std::set<std::string>& words) {
    const std::string domain = lower_case(address.substr(address.rfind('@') + 1));
    if (domain.ends_with(".edu") || domain.find(".edu.") != std::string::npos ||
        domain.find(".ac.") != std::string::npos)
        return true;
    return std::ranges::any_of(
        words, [&](const std::string& word) { return domain.find(word) != std::string::npos; });
}

void email_tone(const ProofContext& context, std::vector<Finding>& findings) {
    const std::string name = own_name(context);
    const std::set<std::string> school = school_words(context.resume);
    for (const model::Field* field : contacts(context, trade::FieldName::email)) {
        const std::string address = plain_in(field);
        if (!is_addr_spec(address) || address.starts_with('"')) continue;
        const auto part = unprofessional_part(address, name, is_school_address(address, school));
        if (part) report<messages::odd_address>(findings, field->place, *part);
    }
}

// `anneliese@tremblayito.example`, of Tremblay-Ito: it vouches for itself.
bool is_own_domain(std::string_view address, std::string_view name) {
    constexpr std::size_t shortest = 4;
    std::string domain = lower_case(address.substr(address.rfind('@') + 1));
    std::erase(domain, '-');
    const std::string plain = plain_letters(name);
    return std::ranges::any_of(words_in(plain), [&](const WordAt& part) {
        std::string letters(part.word);
        std::erase(letters, '-');
        return letters.size() >= shortest && domain.find(letters) != domain.npos;
    });
}

void school_email(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Settings& settings = context.resume.settings;
    const std::set<std::string> school = school_words(context.resume);
    if (*settings.stage != trade::Stage::undergraduate || school.empty()) return;
    const auto emails = contacts(context, trade::FieldName::email);
    const auto from_school = [&](const model::Field* field) {
        const std::string address = plain_in(field);
        return !is_addr_spec(address) || is_school_address(address, school) ||
               is_own_domain(address, own_name(context));
    };
    if (emails.empty() || std::ranges::any_of(emails, from_school)) return;
    report<messages::private_email>(findings, emails.front()->place);
}

// harborlight.example is no address of Tamsin Harbor College.
std::set<std::string> beside(std::set<std::string> school, std::string_view employer) {
    std::erase_if(school, [&](const std::string& word) {
        return word.size() < employer.size() && employer.find(word) != employer.npos;
    });
    return school;
}

// `w.solano@clayborne-mutual.example`, who works at Clayborne Mutual; not one's own firm.
void work_email(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t shortest = 5;
    const std::string name = plain_letters(own_name(context));
    const std::set<std::string> school = school_words(context.resume);
    for (const model::Field* field : contacts(context, trade::FieldName::email)) {
        const std::string address = lower_case(plain_in(field));
        const std::string domain = address.substr(address.rfind('@') + 1);
        for (const Position& position : positions(context.resume, {trade::Holds::experience})) {
            const std::string employer = plain_in(position.find(trade::FieldName::employer));
            const std::string plain = plain_letters(employer);
            const auto words = words_in(plain);
            if (words.empty()) continue;
            const std::string_view first = words.front().word;
            const bool own = name.find(first) != name.npos || first == "college";
            if (own || first.size() < shortest || !domain.starts_with(first)) continue;
            if (is_school_address(address, beside(school, first))) continue;
            report<messages::work_email>(findings, field->place, in_quotes(employer));
            return;
        }
    }
}

void phone_form(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Field* field : contacts(context, trade::FieldName::phone)) {
        const std::string number = plain_in(field);
        if (!is_american(context.resume) && is_national_phone(number)) continue;
        if (const auto fault = phone_fault(number))
            report<messages::wrong_phone>(findings, field->place, in_quotes(number), *fault);
    }
}

void phone_notation(const ProofContext& context, std::vector<Finding>& findings) {
    std::string first;
    std::string pattern;
    for (const TextInResume& part : context.texts) {
        const std::string& text = part.plain;
        for (const PhoneAt& phone : phones_in(text)) {
            const std::string number = text.substr(phone.offset, phone.length);
            const std::string its_pattern = phone_pattern(number);
            if (pattern.empty()) {
                first = number;
                pattern = its_pattern;
            } else if (its_pattern != pattern) {
                report<messages::phone_in_two_ways>(findings,
                                                    part.text.place(phone.offset, phone.length),
                                                    in_quotes(number), in_quotes(first));
            }
        }
    }
}

void voicemail(const ProofContext& context, std::vector<Finding>& findings) {
    const auto phones = contacts(context, trade::FieldName::phone);
    if (phones.empty()) return;
    report<messages::check_voicemail>(findings, phones.front()->place);
}

// The host of an address: `localhost`, `192.168.0.12`.
bool is_of_own_machine(std::string_view url) {
    const std::string lower = lower_case(url);
    if (lower.starts_with("file:")) return true;
    const std::size_t scheme = lower.find("://");
    const std::string_view host =
        std::string_view(lower).substr(scheme == lower.npos ? 0 : scheme + 3);
    return host.starts_with("localhost") || host.starts_with("127.") ||
           host.starts_with("192.168.") || host.starts_with("c:\\");
}

void report_own_machine(const TextInResume& part, std::vector<Finding>& findings) {
    const std::string shown = part.text.plain();
    bool own = is_of_own_machine(shown);
    for (const std::string& link : part.text.links)
        own = own || is_of_own_machine(link);
    if (own)
        report<messages::unreachable>(findings, part.field->place, in_quotes(shown)).weight =
            Weight::must;
}

// `photos.example/party-queen`, `throttlejunkie.example`: what would not do in an address of mail
// either, and is no name of the writer's.
void report_telling_link(const ProofContext& context, const TextInResume& part,
                         std::vector<Finding>& findings) {
    constexpr std::size_t long_enough = 5; // to be no chance within a word
    const std::string shown = lower_case(part.text.plain());
    const std::string name = lower_case(own_name(context));
    if (shown.find(' ') != shown.npos) return;
    const std::size_t path = std::min(shown.find('/'), shown.size());
    for (const std::string_view nickname : listed(List::nicknames)) {
        const bool in_path = has_phrase(std::string_view(shown).substr(path), nickname);
        const bool in_host = nickname.size() >= long_enough && shown.find(nickname) < path;
        if ((!in_path && !in_host) || name.find(nickname) != name.npos) continue;
        report<messages::telling_link>(findings, part.field->place, in_quotes(nickname));
        return;
    }
}

// A link with words of its own shows those; its address is not on the page.
void link_form(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!part.field || part.field->name != trade::FieldName::link) continue;
        report_own_machine(part, findings);
        report_telling_link(context, part, findings);
        if (part.text.links.empty()) continue;
        const std::string& shown = part.plain;
        if (shown.find(' ') != std::string::npos || shown.find('.') == std::string::npos) continue;
        if (const auto fault = link_fault(shown))
            report<messages::hard_link>(findings, part.field->place, *fault);
    }
}

// A designer, by headline or degree, without a link to any work.
void portfolio_missing(const ProofContext& context, std::vector<Finding>& findings) {
    std::string field;
    bool linked = false;
    for (const TextInResume& part : context.texts) {
        using enum trade::FieldName;
        const bool contact = part.field && (part.field->name == email || part.field->name == phone);
        if (!part.text.links.empty() && !contact) linked = true;
        if (!part.field) continue;
        linked = linked || part.field->name == link;
        if (part.field->name != headline && part.field->name != degree && part.field->name != major)
            continue;
        for (const std::string_view shown : listed(List::fields_of_shown_work))
            if (has_phrase(part.lower, shown)) field = shown;
    }
    if (!field.empty() && !linked)
        report<messages::no_portfolio>(findings, heading_place(context), in_quotes(field));
}

constexpr std::array contact_table{
    Check{"missing-contact", Weight::must, "contact",
          "The heading has a name, an email address and a telephone number.",
          "An employer who cannot reach you goes on to the next résumé, and a portal asks for each "
          "of the three.",
          "common practice", "a heading without 'phone:'", "phone: (360) 555-0142",
          missing_contact},
    Check{"full-address", Weight::consider, "contact",
          "The address is a city and a state: no street, box, apartment or ZIP code.",
          "A résumé goes through many hands, and none of them needs to know where you sleep.",
          "common practice", "address: 1420 Spindrift Lane, Port Ellery, WA",
          "address: Port Ellery, WA", full_address},
    Check{"email-form", Weight::must, "contact",
          "An email address has the form that mail servers accept, and a whole domain.",
          "Mail to an address with a slip in it comes back, or reaches somebody else.",
          "RFC 5322, section 3.4.1; RFC 5321, section 4.5.3.1",
          "email: ottoline..brandt@ellerystate.example",
          "email: ottoline.brandt@ellerystate.example", email_form},
    Check{"email-tone", Weight::should, "contact",
          "The part before the @, or the domain, is made of your name: no nickname, no year of "
          "birth, no long number.",
          "The address is the first thing that is read of you, and it is to sound like a "
          "colleague's.",
          "common practice", "email: beachbum42@mail.example",
          "email: ottoline.brandt@mail.example", email_tone},
    Check{"school-email", Weight::consider, "contact",
          "An undergraduate writes from the school's address, told by words of the school's name "
          "in it.",
          "It shows at a glance that you are enrolled, and it is less likely to be taken for junk "
          "mail.",
          "common practice", "email: ottoline.brandt@mail.example",
          "email: ottoline.brandt@ellerystate.example", school_email},
    Check{"work-email", Weight::should, "contact", "The address of mail is not an employer's.",
          "It tells that you look for work in working hours, and ends with the job.",
          "common practice", "email: w.solano@clayborne.example, employer: Clayborne Mutual",
          "email: w.solano@mail.example", work_email},
    Check{"phone-form", Weight::must, "contact",
          "A telephone number is whole: ten figures in the US, or + and the code of another "
          "country.",
          "A number with a figure too few rings nowhere.",
          "ITU-T E.164; North American Numbering Plan", "phone: 555-0142", "phone: (360) 555-0142",
          phone_form},
    Check{"phone-notation", Weight::should, "contact",
          "All telephone numbers on the page are written in one way.",
          "Two ways of writing one kind of thing look like two hands.",
          "ITU-T E.123; common practice", "phone: (360) 555-0142 beside 360-555-0187",
          "(360) 555-0142 beside (360) 555-0187", phone_notation},
    Check{"voicemail",
          Weight::consider,
          "contact",
          "Once for every résumé with a telephone number: a reminder to listen to your voicemail.",
          "A full mailbox or a joke for a greeting can cost the interview that the résumé won.",
          "common practice",
          "a greeting with music and no name",
          "a greeting that says your name, in a mailbox with room",
          voicemail,
          {},
          true},
    Check{"portfolio-missing", Weight::should, "contact",
          "Who designs, draws, films or photographs gives a link to some of the work.",
          "Those who hire for such work look at it before they read on.", "common practice",
          "headline: Graphic designer, and no link",
          "link: Portfolio <https://ottolinebrandt.example>", portfolio_missing},
    Check{"link-form", Weight::should, "contact",
          "A link that shows its address is short and clean: at most about 40 characters, no "
          "tracking, no random tail, no 'https://www.'.",
          "Readers type links from paper and judge them by their look.", "common practice",
          "link: https://www.ottolinebrandt.example/?utm_source=card",
          "link: ottolinebrandt.example", link_form},
};

}

std::span<const Check> contact_checks() {
    return contact_table;
}

}
