// What a portal looks for in a résumé's text: who it is from, how to answer, its sections, its
// entries with their dates. Recognisers stay silent where they are not sure.
#pragma once

#include "compiler/portal/languages.hpp"
#include "compiler/portal/reading.hpp"
#include "compiler/portal/styles.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct FoundSection {
    std::string title;
    std::size_t page = 0, line = 0; // from 0; the line in Reading::lines
    bool known = true;              // a title portals know
    std::optional<trade::Holds> holds;
};

struct FoundEntry {
    std::size_t section = 0; // index
    std::string title;       // its heading lines
    std::string dates;       // as written; empty if there are none
    std::string edtf;        // the same, ISO 8601-2
    std::size_t page = 0, bullets = 0;
};

struct Found {
    std::string name; // empty if none
    std::vector<std::string> emails, phones, links;
    std::vector<FoundSection> sections;
    std::vector<FoundEntry> entries;
};

// How the words look tells titles that no list has.
Found find_all(const Reading& reading, const PageLanguages& languages = {},
               const std::vector<StyledText>& styles = {});

// contacts.cpp: each in the order it is read, without repetition
std::vector<std::string> find_emails(std::string_view text);
std::vector<std::string> find_phones(std::string_view text);
std::vector<std::string> find_links(std::string_view text);
// `brandt-` above `olin.example`: an address that a line's end broke at a hyphen of its own.
bool breaks_link(std::string_view end, std::string_view next);

// names.cpp: the largest text at the top of the first page, if it looks like a name
std::string find_name(const Reading& reading);

// sections.cpp
bool is_usual_title(std::string_view title);
std::vector<FoundSection> find_sections(const Reading& reading, std::string_view name,
                                        const PageLanguages& languages = {},
                                        const std::vector<StyledText>& styles = {});
// Its title again, at the head of a page, with the word for it.
bool is_continued(std::string_view line, const FoundSection& section,
                  const PageLanguages& languages);

// entries.cpp
struct FoundDates {
    std::string text, edtf;
    std::size_t begin = 0, end = 0; // bytes of the line
};
// The last on the line.
std::optional<FoundDates> find_dates(std::string_view line, const PageLanguages& languages = {});
bool is_bullet_sign(std::string_view word);
std::vector<FoundEntry> find_entries(const Reading& reading,
                                     const std::vector<FoundSection>& sections,
                                     std::string_view name, const PageLanguages& languages = {});

}
