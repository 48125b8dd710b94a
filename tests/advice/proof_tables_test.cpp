// The labelled tables of tests/advice: contact details, degrees and dates, each row with its
// source.
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/date_spelling.hpp"
#include "compiler/advice/degree_names.hpp"
#include "compiler/advice/gpa.hpp"
#include "tests/advice/proofread.hpp"
#include "tests/english_dates.hpp"

#include <charconv>
#include <sstream>

namespace quoin::advice {

namespace {

using Row = std::vector<std::string>;

std::vector<Row> rows(const std::string& name, std::size_t columns) {
    std::istringstream in(
        fixtures::contents(std::filesystem::path(QUOIN_SOURCE_FOLDER) / "tests/advice" / name));
    std::vector<Row> all;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with('#')) continue;
        Row row;
        std::istringstream cells(line);
        for (std::string cell; std::getline(cells, cell, '\t');)
            row.push_back(cell);
        REQUIRE(row.size() == columns);
        all.push_back(std::move(row));
    }
    return all;
}

// "a ; b" parted.
std::vector<std::string> parts(const std::string& text) {
    std::vector<std::string> all;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(" ; ", at), text.size());
        all.push_back(text.substr(at, end - at));
        at = end + 3;
    }
    return all;
}

model::Date day_of(const std::string& iso) { // 2026-11-10
    const auto number = [&](std::size_t from, std::size_t length) {
        int value = 0;
        std::from_chars(iso.data() + from, iso.data() + from + length, value);
        return value;
    };
    return {number(0, 4), number(5, 2), std::nullopt, number(8, 2)};
}

std::string contact_verdict(const Row& row) {
    const std::string &kind = row[0], &value = row[1];
    if (kind == "email-form") return is_addr_spec(value) ? "ok" : "malformed";
    if (kind == "email-tone")
        return unprofessional_part(value, row[2], false) ? "unprofessional" : "professional";
    if (kind == "phone") return phone_fault(value) ? "malformed" : "ok";
    if (kind == "link") return link_fault(value) ? "unclean" : "clean";
    if (kind == "address") return address_details(value).empty() ? "ok" : "too-much";
    const auto both = parts(value);
    return phone_pattern(both.at(0)) == phone_pattern(both.at(1)) ? "alike" : "mixed";
}

std::string degree_verdict(const DegreeReading& reading) {
    switch (reading.verdict) {
    case DegreeReading::Verdict::well_formed:
        return "well-formed";
    case DegreeReading::Verdict::malformed:
        return "malformed";
    case DegreeReading::Verdict::type_missing:
        break;
    }
    return "type-missing";
}

std::string gpa_verdict(const std::string& text) {
    const auto gpa = read_gpa(text);
    if (!gpa) return "unreadable";
    if (gpa->over_scale()) return "over-scale";
    const office::Limits limits;
    std::string verdict = gpa->is_under(limits.gpa_leave_out)                     ? "leave-out"
                          : !gpa->out_of_four() || gpa->is_under(limits.gpa_show) ? "may-show"
                                                                                  : "show";
    if (!gpa->scale) verdict += ",scale-missing";
    if (gpa->decimals > 2) verdict += ",decimals";
    return verdict;
}

// A résumé with one entry for each of the dates, read on the day; the names of what is found.
std::unique_ptr<fixtures::ProofOf> with_dates(const std::vector<std::string>& dates,
                                              const model::Date& day,
                                              const std::string& updated = "") {
    std::string text = "name: Ottoline Brandt\n";
    if (!updated.empty()) text += "updated: " + updated + "\n";
    text += "\nsection: Experience\n";
    for (std::size_t i = 0; i < dates.size(); ++i) {
        text += "\nrole: Intern " + std::to_string(i + 1) + "\n";
        if (dates[i] != "-") text += "dates: " + dates[i] + "\n";
    }
    return fixtures::proof_of(text, {.day = day});
}

std::string graduation_verdict(const std::string& value, const model::Date& day) {
    std::string text = "name: Ottoline Brandt\n\nsection: Education\n\nschool: Ellery State "
                       "College\ndegree: Bachelor of Arts in English\n";
    if (value != "-") text += "graduation: " + value + "\n";
    const auto one = fixtures::proof_of(text, {.day = day});
    const auto missing = one->of("graduation-missing");
    if (value == "-") return missing.empty() ? "ok" : "missing";
    const std::string past = one->of("expected-past").empty() ? "" : "expected-in-past";
    if (missing.empty()) return past.empty() ? "ok" : past;
    return "month-missing" + (past.empty() ? "" : ',' + past);
}

std::string range_verdict(const std::string& value, const model::Date& day) {
    if (value != "-" && std::holds_alternative<model::DateFault>(model::read_dates(value)))
        return "unreadable";
    const auto one = with_dates({value}, day);
    if (!one->of("dates-missing").empty()) return "missing";
    if (!one->of("end-before-start").empty()) return "end-before-start";
    return one->of("day-given").empty() ? "ok" : "day-given";
}

std::string date_verdict(const Row& row) {
    const std::string &kind = row[0], &value = row[1];
    const model::Date day = day_of(row[2]);
    if (kind == "range") return range_verdict(value, day);
    if (kind == "graduation") return graduation_verdict(value, day);
    if (kind == "updated")
        return with_dates({"2020"}, day, value)->of("not-updated").empty() ? "ok" : "not-updated";
    const auto all = parts(value);
    if (kind == "present-updated")
        return with_dates({all.at(0)}, day, all.at(1))->of("stale-present").empty()
                   ? "ok"
                   : "stale-present";
    if (kind == "order")
        return with_dates(all, day)->of("date-order").empty() ? "ok" : "out-of-order";
    return with_dates(all, day)->of("date-forms").empty() ? "alike" : "mixed";
}

}

TEST_CASE("proof tables: contact details") {
    for (const Row& row : rows("contacts.tsv", 5)) {
        CAPTURE(row[0]);
        CAPTURE(row[1]);
        CHECK(contact_verdict(row) == row[3]);
    }
}

TEST_CASE("proof tables: degrees and grade point averages") {
    for (const Row& row : rows("degrees.tsv", 5)) {
        CAPTURE(row[1]);
        if (row[0] == "gpa") {
            CHECK(gpa_verdict(row[1]) == row[2]);
            continue;
        }
        const DegreeReading reading = read_degree(row[1]);
        CHECK(degree_verdict(reading) == row[2]);
        CHECK(reading.usual == (row[3] == "-" ? "" : row[3]));
    }
}

TEST_CASE("proof tables: dates") {
    for (const Row& row : rows("dates.tsv", 5)) {
        CAPTURE(row[0]);
        CAPTURE(row[1]);
        CHECK(date_verdict(row) == row[3]);
    }
}

// The usual form of a degree is one that the check itself finds nothing wrong with.
TEST_CASE("proof tables: a mended degree is well-formed") {
    for (const Row& row : rows("degrees.tsv", 5))
        if (row[0] == "degree" && row[3] != "-")
            CHECK(read_degree(row[3]).verdict == DegreeReading::Verdict::well_formed);
}

// A slow reference for the order of entries: ends compared month by month, where both are sure.
TEST_CASE("date order: against months counted one by one") {
    std::vector<model::Date> dates;
    for (int year = 2024; year <= 2025; ++year) {
        dates.push_back({year, std::nullopt, std::nullopt, std::nullopt});
        for (int month = 1; month <= 12; ++month)
            dates.push_back({year, month, std::nullopt, std::nullopt});
    }
    const auto holds = [](const model::Date& date, int month) {
        return date.year * 12 <= month && month < date.year * 12 + 12 &&
               (!date.month || *date.month == month % 12 + 1);
    };
    for (const model::Date& a : dates)
        for (const model::Date& b : dates) {
            bool all_before = true;
            for (int m = 2024 * 12; m < 2026 * 12; ++m)
                for (int n = 2024 * 12; n < 2026 * 12; ++n)
                    if (holds(a, m) && holds(b, n) && m >= n) all_before = false;
            CHECK(surely_before(a, b) == all_before);
        }
}

TEST_CASE("date spelling: the forms a value is written in, and its other forms") {
    struct Spelling {
        const char* text;
        trade::DateForm form;
        const char* after; // "" if it is left as it is
    };
    const Spelling spellings[] = {
        {"Jun 2026 - Aug 2026", trade::DateForm::month_slash_year, "06/2026 - 08/2026"},
        {"06/2026 to 08/2026", trade::DateForm::short_month, "Jun 2026 to Aug 2026"},
        {"2026-06 - 2026-08", trade::DateForm::long_month, "June 2026 - August 2026"},
        {"06/2025-08/2026", trade::DateForm::short_month, "Jun 2025-Aug 2026"},
        {"expected June 2027", trade::DateForm::short_month, "expected Jun 2027"},
        {"June 2027 (expected)", trade::DateForm::year_month, "2027-06 (expected)"},
        {"September 2025 - present", trade::DateForm::short_month, "Sep 2025 - present"},
        {"Sept. 2025 – present", trade::DateForm::long_month, "September 2025 – present"},
        {"May 2026", trade::DateForm::long_month, ""},
        {"Summer 2026", trade::DateForm::short_month, ""},
        {"2023-24", trade::DateForm::short_month, ""},
        {"May-August 2025", trade::DateForm::month_slash_year, ""}, // May would lose its year
        {"Jun 14, 2026 - Aug 2026", trade::DateForm::short_month, ""},
    };
    for (const Spelling& c : spellings) {
        CAPTURE(c.text);
        std::string text = c.text;
        auto range = std::get<model::DateRange>(model::read_dates(text));
        for (model::WrittenDate& date : range.written) {
            date.place.column = static_cast<std::uint32_t>(date.offset + 1);
            date.place.length = static_cast<std::uint32_t>(date.length);
        }
        const auto changes = respellings(range, c.form, english_dates());
        for (auto change = changes.rbegin(); change != changes.rend(); ++change)
            text.replace(change->place.column - 1, change->place.length, change->replacement);
        CHECK(text == (*c.after == '\0' ? c.text : c.after));
        if (*c.after != '\0')
            CHECK(std::get<model::DateRange>(model::read_dates(text)) ==
                  std::get<model::DateRange>(model::read_dates(c.text)));
    }
}

TEST_CASE("phones in a text") {
    struct Found {
        const char* text;
        std::vector<std::string> phones;
    };
    const Found cases[] = {
        {"call (360) 555-0142 or 360-555-0187", {"(360) 555-0142", "360-555-0187"}},
        {"(360) 555-0142, (360) 555-0187", {"(360) 555-0142", "(360) 555-0187"}},
        {"+1 360 555 0142.", {"+1 360 555 0142"}},
        {"212 quadrats at 9 sites, 1,140 tiles", {}},
        {"2019 - 2021 and 2026-06 - 2026-08", {}},
        {"3605550142", {}}, // ungrouped figures may be anything
    };
    for (const Found& c : cases) {
        CAPTURE(c.text);
        std::vector<std::string> found;
        for (const PhoneAt& phone : phones_in(c.text))
            found.push_back(std::string(c.text).substr(phone.offset, phone.length));
        CHECK(found == c.phones);
    }
}

}
