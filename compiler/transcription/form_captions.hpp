// Captions that forms have before each answer (common practice), and what they ask for.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace quoin::transcription {

enum class FormPart { person, work, study, skills, languages, credentials, any };

struct FormCaption {
    std::string_view words, label; // `-`: a bullet
    FormPart part = FormPart::any; // any: of what stands above it
};

constexpr std::array form_captions{
    FormCaption{"first name", "first", FormPart::person},
    FormCaption{"given name", "first", FormPart::person},
    FormCaption{"middle name", "middle", FormPart::person},
    FormCaption{"middle initial", "middle", FormPart::person},
    FormCaption{"last name", "last", FormPart::person},
    FormCaption{"surname", "last", FormPart::person},
    FormCaption{"family name", "last", FormPart::person},
    FormCaption{"full name", "name", FormPart::person},
    FormCaption{"name", "name", FormPart::person},
    FormCaption{"pronouns", "pronouns", FormPart::person},
    FormCaption{"email", "email", FormPart::person},
    FormCaption{"e-mail", "email", FormPart::person},
    FormCaption{"email address", "email", FormPart::person},
    FormCaption{"phone", "phone", FormPart::person},
    FormCaption{"phone number", "phone", FormPart::person},
    FormCaption{"mobile", "phone", FormPart::person},
    FormCaption{"mobile phone", "phone", FormPart::person},
    FormCaption{"cell phone", "phone", FormPart::person},
    FormCaption{"telephone", "phone", FormPart::person},
    FormCaption{"website", "link", FormPart::person},
    FormCaption{"portfolio", "link", FormPart::person},
    FormCaption{"url", "link", FormPart::person},
    FormCaption{"websites", "link", FormPart::person},
    FormCaption{"address", "street", FormPart::person},
    FormCaption{"street", "street", FormPart::person},
    FormCaption{"street address", "street", FormPart::person},
    FormCaption{"zip", "zip", FormPart::person},
    FormCaption{"zip code", "zip", FormPart::person},
    FormCaption{"postal code", "zip", FormPart::person},
    FormCaption{"employer", "employer", FormPart::work},
    FormCaption{"employer name", "employer", FormPart::work},
    FormCaption{"company", "employer", FormPart::work},
    FormCaption{"company name", "employer", FormPart::work},
    FormCaption{"organization", "employer", FormPart::work},
    FormCaption{"agency", "employer", FormPart::work},
    FormCaption{"position", "role", FormPart::work},
    FormCaption{"position title", "role", FormPart::work},
    FormCaption{"title", "role", FormPart::work},
    FormCaption{"job title", "role", FormPart::work},
    FormCaption{"role", "role", FormPart::work},
    FormCaption{"school", "school", FormPart::study},
    FormCaption{"school name", "school", FormPart::study},
    FormCaption{"school or university", "school", FormPart::study},
    FormCaption{"institution", "school", FormPart::study},
    FormCaption{"college", "school", FormPart::study},
    FormCaption{"university", "school", FormPart::study},
    FormCaption{"degree", "degree", FormPart::study},
    FormCaption{"program", "degree", FormPart::study},
    FormCaption{"major", "major", FormPart::study},
    FormCaption{"field of study", "major", FormPart::study},
    FormCaption{"minor", "minor", FormPart::study},
    FormCaption{"gpa", "gpa", FormPart::study},
    FormCaption{"overall gpa", "gpa", FormPart::study},
    FormCaption{"overall result (gpa)", "gpa", FormPart::study},
    FormCaption{"graduation date", "dates", FormPart::study},
    FormCaption{"graduated", "dates", FormPart::study},
    FormCaption{"dates attended", "dates", FormPart::study},
    FormCaption{"skills", "items", FormPart::skills},
    FormCaption{"languages", "items", FormPart::languages},
    FormCaption{"language", "items", FormPart::languages},
    FormCaption{"certifications", "items", FormPart::credentials},
    FormCaption{"certification", "items", FormPart::credentials},
    FormCaption{"certificates", "items", FormPart::credentials},
    FormCaption{"licenses", "items", FormPart::credentials},
    FormCaption{"licenses and certifications", "items", FormPart::credentials},
    FormCaption{"location", "place"},
    FormCaption{"place", "place"},
    FormCaption{"city", "place"},
    FormCaption{"state", "state"},
    FormCaption{"dates", "dates"},
    FormCaption{"date", "dates"},
    FormCaption{"dates employed", "dates"},
    FormCaption{"dates of employment", "dates"},
    FormCaption{"period", "dates"},
    FormCaption{"year", "dates"},
    FormCaption{"from", "from"},
    FormCaption{"start date", "from"},
    FormCaption{"to", "to"},
    FormCaption{"to (actual or expected)", "to"},
    FormCaption{"end date", "to"},
    FormCaption{"duties", "-"},
    FormCaption{"responsibilities", "-"},
    FormCaption{"job duties", "-"},
    FormCaption{"description", "-"},
    FormCaption{"job description", "-"},
    FormCaption{"role description", "-"},
    FormCaption{"accomplishments", "-"},
};

// What is asked beside a résumé's facts, or goes with the answer above.
constexpr std::array<std::string_view, 9> captions_of_asides{"phone type",
                                                             "phone device type",
                                                             "country phone code",
                                                             "i currently work here",
                                                             "i am fluent in this language",
                                                             "country",
                                                             "address type",
                                                             "suffix",
                                                             "prefix"};
constexpr std::array<std::string_view, 6> captions_of_further{
    "issued", "issued date", "expires", "expiration date", "overall proficiency", "proficiency"};

inline const FormCaption* caption_named(std::string_view lower) {
    const auto* found = std::ranges::find(form_captions, lower, &FormCaption::words);
    return found == form_captions.end() ? nullptr : found;
}

}
