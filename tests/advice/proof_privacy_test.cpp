// Checks of contact, skills and privacy that must not speak of work, and what they are for:
// tests/advice/clean.resume with one piece replaced. Common practice where no source is named.
#include "tests/advice/proofread.hpp"

namespace quoin::advice::proof_privacy_test {

namespace {

using Case = fixtures::CheckCase;

const std::string skills = "section: Skills\n";
const std::string email = "ottoline.brandt@ellerystate.example";
const std::string address = "address: Port Ellery, WA";
const std::string phone = "(360) 555-0142";
const std::string bullet = "- Counted 212";
const std::string place = "place: Anacortes, WA\n";

Case summary(std::string_view check, const std::string& text, const std::string& told) {
    return {check, skills, "section: Summary\n\ntext: " + text + "\n\n" + skills, told};
}

Case group(std::string_view check, const std::string& line, const std::string& told) {
    return {check, skills, skills + '\n' + line + '\n', told};
}

// clang-format off
const Case cases[] = {
    // contact
    {"full-address", address, address + " 98000-1234", "a ZIP code"},
    {"full-address", address, "address: P. O. Box 12, Port Ellery, WA", "a post-office box"},
    {"full-address", address, "address: 1420-B Spindrift Lane, Port Ellery, WA", "a street"},
    {"full-address", address, "address: One Spindrift Lane, Port Ellery, WA", "a street"},
    {"full-address", address, "address: Spindrift Hall 214, Port Ellery, WA", "a room"},
    {"full-address", address, "address: One Tree, WA", ""},
    {"full-address", address, "address: Ten Mile Harbor, WA", ""},
    {"email-form", email, "brandt@mail", "has no dot after its @"},
    {"email-form", email, "brandt@[192.0.2.1]", ""}, // RFC 5322, section 3.4.1
    {"email-tone", email, "hello@ottolinebrandt.example", ""},
    {"email-tone", email, "contact@brandt.example", ""},
    {"email-tone", email, "hello@mail.example", "nothing of your name"},
    {"email-tone", email, "queen@ottolinebrandt.example", "'queen'"},
    {"phone-form", phone, phone + " (cell)", ""},
    {"phone-form", phone, "Cell: 360-555-0142", ""},
    {"phone-form", phone, "555-0142 (cell)", "cannot be dialled: the area code is missing"},
    {"phone-form", phone, "360-555-KELP", "'360-555-KELP' has letters"},
    // skills
    group("language-level", "Languages: Latin (read and write)", ""),
    group("language-level", "Languages: Latin (written and spoken)", ""),
    group("language-level", "Languages: Latin (first language)", ""),
    group("language-level", "Languages: Latin (heritage speaker)", ""),
    group("language-level", "Languages: Latin (3+)", ""), // Interagency Language Roundtable
    group("language-level", "Languages: Latin (ILR 3), ASL (ASL 3)", ""),
    group("language-level", "Languages: Japanese (JLPT N2)", ""),
    group("language-level", "Languages: Latin (3 years)", "no level that readers know"),
    group("language-level", "Languages: Spanish and Hindi", "'Spanish and Hindi' has no level"),
    group("language-level", "Spoken languages: Quechua", "'Quechua' has no level"),
    group("skill-twice", "Design: Adobe (Photoshop), Adobe (Illustrator)", ""),
    group("skill-twice", "Reading: Latin (read), Latin (spoken)", ""),
    group("skill-twice", "Office: Excel (macros), Excel", "'Excel' stands in line"),
    group("skill-twice", "Office: Excel (macros), Excel (macros)", "'Excel' stands in line"),
    // personal details: of a person, and not of skills or work
    group("personal-details", "Health: CPR", ""),
    group("personal-details", "Photo: studio lighting", ""),
    group("personal-details", "Race: timing systems, chip scoring", ""),
    group("personal-details", "Religion: liturgy, hymnody", ""),
    group("personal-details", "Weight: scales, balances", ""),
    group("personal-details", "Records: date of birth checks", ""),
    group("personal-details", "Health: excellent", "your health"),
    group("personal-details", "Gender: female", "your gender"),
    group("personal-details", "Weight: 130 lb", "your weight"),
    group("personal-details", "Height: 5 ft 9 in", "your height"),
    group("personal-details", "Age: 22", "your age"),
    group("personal-details", "Born: 2005", "your date of birth"),
    group("personal-details", "Religion: Lutheran", "your religion"),
    summary("personal-details", "Works with adults 65 years old and over", ""),
    summary("personal-details", "Teacher of 15-year-old swimmers", ""),
    summary("personal-details", "15-year-old swimmers taught for 3 years", ""),
    summary("personal-details", "Born digital archivist since 2019", ""),
    summary("personal-details", "Married engineering and art for 40 children", ""),
    summary("personal-details", "Single, double, and triple entries kept", ""),
    summary("personal-details", "Single-handed sailor", ""),
    summary("personal-details", "Verified date of birth of 900 voters", ""),
    summary("personal-details", "Born March 3, 2005", "your date of birth"),
    summary("personal-details", "Diver. Born in 2005", "your date of birth"),
    summary("personal-details", "DOB 3/3/2005", "your date of birth"),
    summary("personal-details", "Married with two children", "your family"),
    summary("personal-details", "Single, no children", "your family"),
    summary("personal-details", "I am a 21-year-old student of eelgrass", "your age"),
    summary("personal-details", "A 21-year-old student of eelgrass", "your age"),
    summary("personal-details", "22 years old and eager to dive", "your age"),
    summary("personal-details", "US citizen, date of birth 03/03/2005", "your date of birth"),
    {"personal-details", "field survey and data skills", "age 22", "your age"},
    {"personal-details", "field survey and data skills", "swim teacher of adults aged 65", ""},
    // numbers
    group("identity-number", "SSN: 123 45 6789", "by which a state knows you"),
    group("identity-number", "SSN: 123456789", "by which a state knows you"),
    group("identity-number", "Social Security Number: XXX-XX-6789", "by which a state knows you"),
    group("identity-number", "Passport No.: X1234567", "by which a state knows you"),
    group("identity-number", "Passport: X1234567", "by which a state knows you"),
    group("identity-number", "Travel: valid passport, 4 countries", ""),
    group("identity-number", "Passport: US, valid to 2031", ""),
    {"identity-number", bullet, "- Filed forms for Social Security in 2025 and counted 212", ""},
    {"identity-number", bullet, "- Answered 400 passport number questions and counted 212", ""},
    {"licence-number", skills, "section: Licenses\n\ncredential: RN License No. 123456\n\n" + skills, "'123456'"},
    {"licence-number", skills, "section: Licenses\n\ncredential: License RN60123456\n\n" + skills, "'RN60123456'"},
    {"licence-number", skills, "section: Licenses\n\ncredential: Nurse, License (WA 123456)\n\n" + skills, "'123456'"},
    {"licence-number", skills, "section: Licenses\n\ncredential: Driver License 2026, Class II\n\n" + skills, ""},
    {"licence-number", skills, "section: Licenses\n\ncredential: Diver License, no. 4\n\n" + skills, ""},
    group("licence-number", "License: RN60123456", "'RN60123456'"),
    {"licence-number", bullet, "- Sorted license 12000 forms and counted 212", ""},
    // references
    summary("references-line", "References: upon request", "taken for granted"),
    summary("references-line", "References will be provided upon request", "taken for granted"),
    summary("references-line", "Diver. Professional references available from three supervisors", "taken for granted"),
    {"references-line", skills, "section: References\n\ntext: Available upon request\n\n" + skills, "'Available upon request'"},
    {"references-line", skills, "section: References Available on Request\n\ntext: See above\n\n" + skills, "taken for granted"},
    {"references-line", skills, "section: References\n\ntext: Dr. Al Bay, Salish Tidal Trust\n\n" + skills, "named as a reference"},
    {"references-line", bullet, "- Checked references upon request of 4 clients and counted 212", ""},
    {"references-line", bullet, "- References available upon request\n- Counted 212", "taken for granted"},
    summary("references-line", "Equipment is available upon request", ""),
    // salary
    {"salary", bullet, "- Modeled starting salary of 400 graduates and counted 212", ""},
    {"salary", bullet, "- Negotiated 4 hourly wage rises and counted 212", ""},
    {"salary", bullet, "- Salary: $18/hour\n- Counted 212", "'Salary: $18/hour'"},
    {"salary", place, place + "note: Salary: $38,000\n", "'Salary: $38,000' has no place"},
    {"salary", place, place + "note: $18/hour\n", "'$18/hour' has no place"},
    {"salary", place, place + "note: Part-time, paid $18 an hour\n", "'paid $18 an hour'"},
    {"salary", place, place + "note: Billed $90/hour for repairs\n", ""},
    {"salary", place, place + "note: Stipend of $4,000\n", ""},
    summary("salary", "Salary: $18/hour", "has no place"),
    summary("salary", "Open to travel, salary negotiable", "'salary negotiable'"),
    summary("salary", "Seeking $25/hr", "'Seeking $25/hr'"),
    summary("salary", "Compensation: $60,000", "has no place"),
    summary("salary", "My desired salary is $60,000", "has no place"),
    summary("salary", "Seeking $2,000,000 in grants", ""),
    summary("salary", "Salary surveys of 40 firms", ""),
    summary("salary", "Saved growers $25/hr by new tiles", ""),
    group("salary", "Compensation: payroll, benefits", ""),
    group("salary", "Desired salary: $60,000", "has no place"),
};
// clang-format on

}

TEST_CASE("proof: contact, skills and privacy, case by case") {
    fixtures::check_each(cases);
}

TEST_CASE("proof: initials and short forms of the name are of the name") {
    struct Address {
        const char *local, *name;
        bool told;
    };
    const Address addresses[] = {{"mjhdez", "María José Hernández", false},
                                 {"hdezmj", "María José Hernández", false},
                                 {"brndt", "Ottoline Brandt", false},
                                 {"kelpie", "Ottoline Brandt", true},
                                 {"tidepools", "María José Hernández", true}};
    for (const Address& each : addresses) {
        CAPTURE(each.local);
        std::string text = fixtures::clean_resume();
        text.replace(text.find(email), email.size(), each.local + std::string("@mail.example"));
        text.replace(text.find("Ottoline Brandt"), 15, each.name);
        CHECK(fixtures::proof_of(text)->of("email-tone").empty() != each.told);
    }
}

}
