#include "compiler/portal/found.hpp"

namespace quoin::portal {

namespace {

// Lines below each other; an address that one breaks is whole again.
std::string text_of(const Reading& reading) {
    std::string text;
    for (std::size_t i = 0; i < reading.lines.size(); ++i) {
        const ReadLine& line = reading.lines[i];
        const bool broken = i + 1 < reading.lines.size() && line.words.size() == 1 &&
                            breaks_link(line.text(), reading.lines[i + 1].text());
        text += line.text();
        if (!broken) text += '\n';
    }
    return text;
}

}

Found find_all(const Reading& reading, const PageLanguages& languages,
               const std::vector<StyledText>& styles) {
    Found found;
    const std::string text = text_of(reading);
    found.name = find_name(reading);
    found.emails = find_emails(text);
    found.phones = find_phones(text);
    found.links = find_links(text);
    found.sections = find_sections(reading, found.name, languages, styles);
    found.entries = find_entries(reading, found.sections, found.name, languages);
    return found;
}

}
