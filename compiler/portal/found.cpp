#include "compiler/portal/found.hpp"

namespace quoin::portal {

Found find_all(const Reading& reading, const PageLanguages& languages,
               const std::vector<StyledText>& styles) {
    Found found;
    std::string text;
    for (const ReadLine& line : reading.lines)
        text += line.text() + '\n';
    found.name = find_name(reading);
    found.emails = find_emails(text);
    found.phones = find_phones(text);
    found.links = find_links(text);
    found.sections = find_sections(reading, found.name, languages, styles);
    found.entries = find_entries(reading, found.sections, found.name, languages);
    return found;
}

}
