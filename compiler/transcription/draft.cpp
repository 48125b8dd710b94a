#include "compiler/transcription/draft.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

DraftField* DraftEntry::find(std::string_view label) {
    const auto found = std::ranges::find(fields, label, &DraftField::label);
    return found == fields.end() ? nullptr : &*found;
}

void DraftEntry::add(std::string_view label, std::string value) {
    if (!value.empty()) fields.push_back({std::string(label), std::move(value)});
}

}
