#include "compiler/matching/studies.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/matching/lists.hpp"
#include "compiler/postings/posting.hpp"
#include "compiler/trade/schools.hpp"

#include <algorithm>
#include <span>

namespace quoin::matching {

namespace {

std::string plain(const model::Entry& entry, trade::FieldName name) {
    const model::Field* field = entry.find(name);
    const auto* text = field ? std::get_if<model::Text>(&field->value) : nullptr;
    return text ? text->plain() : std::string();
}

// Of an entry that names no degree it is not known what was studied for.
bool is_college(const model::Entry& entry) {
    const std::string degree = plain(entry, trade::FieldName::degree);
    return !degree.empty() &&
           !trade::is_before_college(plain(entry, trade::FieldName::school), degree);
}

std::string one_text(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : " ") + word;
    return text;
}

bool names_all(const TextOfResume& text, std::span<const std::string> lower) {
    return std::ranges::all_of(lower, [&](const std::string& word) {
        return std::ranges::find(text.words, postings::stem_of(word), &WordOfText::stem) !=
               text.words.end();
    });
}

}

Studies::Studies(const model::Resume& resume, const std::vector<TextOfResume>& texts) {
    for (const TextOfResume& text : texts) {
        if (text.spot.section == nowhere || text.where != Where::head) continue;
        const model::Section& section = resume.sections[text.spot.section];
        if (section.holds != trade::Holds::education || text.spot.further != nowhere) continue;
        const model::Entry& entry = section.entries[text.spot.entry];
        const bool degree = entry.fields[text.spot.field].name == trade::FieldName::degree;
        if (degree && is_college(entry)) at_college_.push_back(&text);
    }
}

const TextOfResume* Studies::shows(const std::vector<std::string>& lower) const {
    if (at_college_.empty()) return nullptr;
    const std::string words = one_text(lower);
    if (is_one_of(words, List::before_college) || is_one_of(words, List::at_college))
        return at_college_.front();
    if (lower.size() < 2 || !is_one_of(lower.back(), List::kinds_of_studies)) return nullptr;
    const auto field = std::span(lower).first(lower.size() - 1);
    if (field.front().ends_with("'s")) return nullptr; // a bachelor's degree is no field
    const auto at = std::ranges::find_if(
        at_college_, [&](const TextOfResume* text) { return names_all(*text, field); });
    return at == at_college_.end() ? nullptr : *at;
}

}
