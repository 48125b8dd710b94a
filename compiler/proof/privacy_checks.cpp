// Checks of what a résumé had better not tell.
#include "compiler/model/wording.hpp"
#include "compiler/proof/check.hpp"
#include "compiler/proof/contact_forms.hpp"
#include "compiler/proof/repository.hpp"
#include "compiler/proof/walk.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace quoin {

namespace {

constexpr std::string_view law =
    "Local law and the employer's own rules decide; where one asks for this, give it there.";

bool all_figures(std::string_view text) {
    return !text.empty() && std::ranges::all_of(text, is_figure);
}

// Social Security Administration: no area 000, 666 or 900 to 999, no group 00, no serial 0000.
bool is_social_security(std::string_view word) {
    if (word.size() != 11 || word[3] != '-' || word[6] != '-') return false;
    const std::string_view area = word.substr(0, 3), group = word.substr(4, 2),
                           serial = word.substr(7);
    if (!all_figures(area) || !all_figures(group) || !all_figures(serial)) return false;
    return area != "000" && area != "666" && area[0] != '9' && group != "00" && serial != "0000";
}

void identity_number(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 5> names{
        "ssn", "social security number", "social security no", "passport number", "passport no"};
    visit_texts(context.resume, [&](const TextInResume& part) {
        const std::string text = part.text.plain();
        for (const WordAt& word : words_in(text))
            if (is_social_security(word.word))
                return report(findings, part.text.place(word.offset, word.word.size()),
                              "this has the form of a Social Security number",
                              "take it out; no employer needs it before an offer");
        const std::string lower = lower_case(text);
        for (const std::string_view name : names)
            if (const std::size_t at = find_phrase(lower, name);
                at != std::string::npos && has_digit(std::string_view(lower).substr(at)))
                return report(findings, part.text.place(at, name.size()),
                              "this looks like a number that identifies you to the state",
                              "take it out; no employer needs it before an offer");
    });
}

struct Detail {
    std::string_view words; // lower case
    std::string_view what;
};

// Wherever they stand, but in a bullet, which tells of work.
constexpr std::array phrases{Detail{"date of birth", "your date of birth"},
                             Detail{"place of birth", "your place of birth"},
                             Detail{"marital status", "your marital status"},
                             Detail{"civil status", "your marital status"},
                             Detail{"religious affiliation", "your religion"},
                             Detail{"blood type", "your health"},
                             Detail{"photo attached", "your photo"},
                             Detail{"photo enclosed", "your photo"}};

// Only as a label, alone or before a colon.
constexpr std::array labels{Detail{"age", "your age"},
                            Detail{"dob", "your date of birth"},
                            Detail{"born", "your date of birth"},
                            Detail{"birthday", "your date of birth"},
                            Detail{"birth date", "your date of birth"},
                            Detail{"birthdate", "your date of birth"},
                            Detail{"married", "your marital status"},
                            Detail{"religion", "your religion"},
                            Detail{"health", "your health"},
                            Detail{"height", "your height"},
                            Detail{"weight", "your weight"},
                            Detail{"sex", "your sex"},
                            Detail{"gender", "your gender"},
                            Detail{"race", "your race"},
                            Detail{"ethnicity", "your ethnicity"},
                            Detail{"photo", "your photo"},
                            Detail{"photograph", "your photo"}};

// "22 years old"
bool tells_age(std::string_view lower) {
    const std::size_t at = find_phrase(lower, "years old");
    if (at == std::string_view::npos || at < 3) return false;
    return is_figure(lower[at - 2]) && is_figure(lower[at - 3]) &&
           (at == 3 || !is_figure(lower[at - 4]));
}

bool may_tell_of_person(const TextInResume& part) {
    if (part.bullet || !part.field) return false;
    switch (part.field->name) {
    case FieldName::headline:
    case FieldName::text:
    case FieldName::title:
    case FieldName::detail:
    case FieldName::group:
    case FieldName::note:
    case FieldName::address:
        return true;
    default:
        return false;
    }
}

std::optional<Detail> personal_detail(std::string_view text, bool is_label) {
    const std::string lower = lower_case(text);
    for (const Detail& detail : phrases)
        if (const std::size_t at = find_phrase(lower, detail.words); at != std::string::npos)
            return detail;
    for (const Detail& detail : labels)
        if (lower.starts_with(detail.words) &&
            (lower.substr(detail.words.size()).starts_with(":") ||
             (is_label && lower == detail.words)))
            return detail;
    if (!is_label && tells_age(lower)) return Detail{"years old", "your age"};
    return std::nullopt;
}

// "Health: first aid, CPR" is a group of skills; "Health: excellent" is not.
bool is_group_of_skills(const TextInResume& part) {
    const auto* items = items_in(part.field);
    if (!items || &part.text != &part.field->label) return false;
    const std::string label = lower_case(part.field->label.plain());
    if (label != "health" && label != "photo" && label != "weight") return false;
    return items->size() > 1;
}

void personal_details(const ProofContext& context, std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!may_tell_of_person(part) || is_group_of_skills(part)) return;
        const std::string text = part.text.plain();
        const bool is_label = &part.text == &part.field->label;
        if (const auto detail = personal_detail(text, is_label))
            report(findings, part.text.place(0, text.size()),
                   "this tells " + std::string(detail->what),
                   "leave it out; it has no bearing on the work, and some employers must set aside "
                   "a résumé that tells it");
    });
}

void find_phrases(const ProofContext& context, std::span<const std::string_view> wanted,
                  const std::string& what, const std::string& mend,
                  std::vector<Finding>& findings) {
    visit_texts(context.resume, [&](const TextInResume& part) {
        const std::string lower = lower_case(part.text.plain());
        for (const std::string_view phrase : wanted) {
            const std::size_t at = find_phrase(lower, phrase);
            if (at == std::string::npos) continue;
            const Place place = part.text.place(at, phrase.size());
            return report(findings, place,
                          in_quotes(part.text.plain().substr(at, phrase.size())) + what, mend);
        }
    });
}

void references_line(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 5> wanted{
        "references available", "references upon request", "references on request",
        "references furnished", "references provided"};
    find_phrases(context, wanted, " is taken for granted", "take the line out and use its room",
                 findings);
}

void salary(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 8> wanted{
        "salary requirement", "salary requirements", "salary expectation", "salary expectations",
        "desired salary",     "expected salary",     "starting salary",    "hourly wage"};
    find_phrases(context, wanted, " has no place on a résumé",
                 "keep it for the talk about an offer", findings);
}

// "License #123456", "RN License No. 123456"
void licence_number(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t least_figures = 4;
    constexpr std::array<std::string_view, 6> before{"license",      "licence",    "certificate",
                                                     "registration", "credential", "certification"};
    visit_texts(context.resume, [&](const TextInResume& part) {
        const std::string text = part.text.plain();
        const std::string lower = lower_case(text);
        const auto named = std::ranges::any_of(
            before, [&](std::string_view word) { return has_phrase(lower, word); });
        if (!named && !(part.field && part.field->name == FieldName::credential)) return;
        for (std::size_t at = 0; at < text.size(); ++at) {
            const std::string_view rest = std::string_view(lower).substr(at);
            std::size_t begin = std::string::npos;
            for (const std::string_view sign : {"#", "no. ", "no.", "number ", "number: ", "nr. "})
                if (rest.starts_with(sign)) begin = at + sign.size();
            if (begin == std::string::npos || (at > 0 && is_ascii_letter(text[at - 1]))) continue;
            std::size_t end = begin;
            while (end < text.size() &&
                   (is_figure(text[end]) || is_ascii_letter(text[end]) || text[end] == '-'))
                ++end;
            const std::string_view number = std::string_view(text).substr(begin, end - begin);
            if (number.size() < least_figures || !has_digit(number)) continue;
            return report(findings, part.text.place(begin, number.size()),
                          in_quotes(number) + " looks like the number of a licence",
                          "an employer looks it up with the board; on paper it serves whoever "
                          "would use it in your name");
        }
    });
}

void public_repository(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Field& field : context.resume.heading) {
        const bool street = field.name == FieldName::address && has_street(plain_in(&field));
        if (!street && field.name != FieldName::phone) continue;
        const auto host = public_host(context.sources.file(field.place.file).path);
        if (!host) continue;
        return report(findings, field.place,
                      "git tracks this file and sends it to " + in_quotes(*host) +
                          "; if the repository is public, everybody can read this " +
                          (street ? "address" : "number"),
                      "keep the repository private, and mind that its history keeps what was "
                      "taken out");
    }
}

constexpr std::array checks{
    Check{"identity-number", Weight::must, "privacy",
          "No number by which a state knows you: Social Security, passport.",
          "It is all that a thief needs, and a résumé goes to strangers.",
          "Social Security Administration, on the form of its numbers; common practice",
          "SSN: 123-45-6789", "no such line", identity_number, law},
    Check{"personal-details", Weight::must, "privacy",
          "No birth date, age, marital status, religion, health, photo or the like.",
          "In the US employers may not weigh most of these, and many set aside a résumé that shows "
          "them.",
          "29 CFR 1604 to 1607 and 1625 (US equal employment opportunity); common practice",
          "Date of birth: March 3, 2005", "no such line", personal_details, law},
    Check{"references-line", Weight::should, "privacy", "No line that says references can be had.",
          "It takes a line to say what every reader knows.", "common practice",
          "text: References available upon request", "no such line", references_line},
    Check{"salary", Weight::should, "privacy", "No salary, past or wished for.",
          "The first to name a figure gives one away.", "common practice",
          "text: Desired salary: $60,000", "no such line", salary},
    Check{"licence-number", Weight::consider, "privacy", "A licence stands without its number.",
          "The number lets others pass for you, and boards answer by name.", "common practice",
          "credential: RN License #123456", "credential: Registered Nurse", licence_number,
          "A licence is worded as its issuing board requires; some ask for the number."},
    Check{"public-repository", Weight::consider, "privacy",
          "A street address or telephone number is not in a file that git tracks and sends to a "
          "public host; read from the text of .git/config and .git/index beside the file.",
          "What is public once is copied for good.", "common practice",
          "phone: (360) 555-0142 in a file of a public repository",
          "the same file in a private one", public_repository},
};

}

std::span<const Check> privacy_checks() {
    return checks;
}

}
