// Common practice: the field names of forms and of other people's résumés.
#include "compiler/trade/guessed_labels.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace quoin::trade {

namespace {

using Labels = std::array<std::string_view, 6>; // the first that may stand where the guess does

struct Guess {
    std::string_view typed;
    Labels means; // up to the first empty one
};

constexpr Labels means_link{"link"};
constexpr Labels means_phone{"phone"};
constexpr Labels means_email{"email"};
constexpr Labels means_spot{"place", "address"};
constexpr Labels means_school{"school"};
constexpr Labels means_employer{"employer", "activity", "issuer", "by"};
constexpr Labels means_role{"role", "headline"};
constexpr Labels means_dates{"dates", "graduation"};
constexpr Labels means_graduation{"graduation"};
constexpr Labels means_courses{"courses"};
constexpr Labels means_activity{"activity", "activities"};
constexpr Labels means_award{"award", "honors"};
constexpr Labels means_credential{"credential"};
constexpr Labels means_major{"major"};
constexpr Labels means_gpa{"gpa"};
constexpr Labels means_named{"project", "activity", "award", "credential", "publication", "title"};
constexpr Labels means_giver{"issuer", "by"};
constexpr Labels means_expires{"expires"};
constexpr Labels means_project{"project"};
constexpr Labels means_publication{"publication"};

constexpr std::array guesses{
    Guess{"linkedin", means_link},
    Guess{"website", means_link},
    Guess{"web-site", means_link},
    Guess{"web", means_link},
    Guess{"site", means_link},
    Guess{"url", means_link},
    Guess{"links", means_link},
    Guess{"homepage", means_link},
    Guess{"github", means_link},
    Guess{"portfolio", means_link},
    Guess{"blog", means_link},
    Guess{"cell", means_phone},
    Guess{"cell-phone", means_phone},
    Guess{"cellphone", means_phone},
    Guess{"mobile", means_phone},
    Guess{"mobile-phone", means_phone},
    Guess{"tel", means_phone},
    Guess{"telephone", means_phone},
    Guess{"phone-number", means_phone},
    Guess{"e-mail", means_email},
    Guess{"mail", means_email},
    Guess{"email-address", means_email},
    Guess{"e-mail-address", means_email},
    Guess{"full-name", {"name"}},
    Guess{"tagline", {"headline"}},
    Guess{"subtitle", {"headline"}},
    Guess{"location", means_spot},
    Guess{"city", means_spot},
    Guess{"town", means_spot},
    Guess{"city-state", means_spot},
    Guess{"address", means_spot},
    Guess{"place", means_spot},
    Guess{"where", means_spot},
    Guess{"university", means_school},
    Guess{"college", means_school},
    Guess{"school-name", means_school},
    Guess{"institution", {"school", "issuer", "by"}},
    Guess{"institute", {"school", "issuer", "by"}},
    Guess{"company", means_employer},
    Guess{"company-name", means_employer},
    Guess{"organization", means_employer},
    Guess{"organisation", means_employer},
    Guess{"firm", means_employer},
    Guess{"workplace", means_employer},
    Guess{"business", means_employer},
    Guess{"employer", means_activity},
    Guess{"title", {"role", "project", "award", "credential", "publication", "headline"}},
    Guess{"job-title", means_role},
    Guess{"position", means_role},
    Guess{"job", means_role},
    Guess{"occupation", means_role},
    Guess{"date", means_dates},
    Guess{"when", means_dates},
    Guess{"period", means_dates},
    Guess{"duration", means_dates},
    Guess{"dates-attended", means_dates},
    Guess{"from", means_dates},
    Guess{"to", means_dates},
    Guess{"start", means_dates},
    Guess{"end", means_dates},
    Guess{"start-date", means_dates},
    Guess{"end-date", means_dates},
    Guess{"year", means_dates},
    Guess{"years", means_dates},
    Guess{"expected", means_graduation},
    Guess{"expected-graduation", means_graduation},
    Guess{"graduation-date", means_graduation},
    Guess{"graduated", means_graduation},
    Guess{"graduating", means_graduation},
    Guess{"grad-date", means_graduation},
    Guess{"coursework", means_courses},
    Guess{"relevant-coursework", means_courses},
    Guess{"relevant-courses", means_courses},
    Guess{"classes", means_courses},
    Guess{"club", means_activity},
    Guess{"team", means_activity},
    Guess{"group", means_activity},
    Guess{"prize", means_award},
    Guess{"scholarship", means_award},
    Guess{"honor", means_award},
    Guess{"honour", means_award},
    Guess{"honours", {"honors"}},
    Guess{"awards", {"honors", "award"}},
    Guess{"certification", means_credential},
    Guess{"certificate", means_credential},
    Guess{"license", means_credential},
    Guess{"licence", means_credential},
    Guess{"program", {"degree"}},
    Guess{"qualification", {"degree", "credential"}},
    Guess{"majors", means_major},
    Guess{"field-of-study", means_major},
    Guess{"minors", {"minor"}},
    Guess{"grade-point-average", means_gpa},
    Guess{"cumulative-gpa", means_gpa},
    Guess{"name", means_named},
    Guess{"project-name", means_project},
    Guess{"project-title", means_project},
    Guess{"issued-by", means_giver},
    Guess{"awarded-by", means_giver},
    Guess{"given-by", means_giver},
    Guess{"authority", means_giver},
    Guess{"expiration", means_expires},
    Guess{"expiry", means_expires},
    Guess{"expiration-date", means_expires},
    Guess{"valid-until", means_expires},
    Guess{"paper-title", means_publication},
    Guess{"article", means_publication},
    Guess{"notes", {"note", "detail"}},
};

constexpr std::array<std::string_view, 10> bullet_words{
    "duties",          "duty",         "responsibilities", "responsibility", "tasks",
    "accomplishments", "achievements", "description",      "bullets",        "bullet"};
constexpr std::array<std::string_view, 5> range_begins{"from", "start", "start-date", "started",
                                                       "begin"};
constexpr std::array<std::string_view, 5> range_ends{"to", "end", "end-date", "ended", "until"};

template<typename Fits>
std::optional<std::string_view> first_that(std::string_view guess, const Fits& fits) {
    for (const std::string_view label : meant_by(guess)) {
        const Word* word = find_word(label);
        if (word && label != guess && fits(*word)) return label;
    }
    return std::nullopt;
}

}

std::span<const std::string_view> meant_by(std::string_view guess) {
    const auto* const row = std::ranges::find(guesses, guess, &Guess::typed);
    if (row == guesses.end()) return {};
    const auto* const end = std::ranges::find(row->means, std::string_view{});
    return {row->means.begin(), end};
}

std::optional<std::string_view> meant_in_heading(std::string_view guess) {
    return first_that(guess, [](const Word& word) { return word.heading; });
}

std::optional<std::string_view> meant_in(Holds kind, std::string_view guess) {
    return first_that(guess, [kind](const Word& word) { return word.kinds.has(kind); });
}

bool means_bullets(std::string_view guess) {
    return is_one_of(guess, bullet_words);
}

bool means_section(std::string_view guess) {
    std::string title(guess);
    std::ranges::replace(title, '-', ' ');
    return is_section_title(title);
}

bool begins_range(std::string_view guess) {
    return is_one_of(guess, range_begins);
}

bool ends_range(std::string_view guess) {
    return is_one_of(guess, range_ends);
}

}
