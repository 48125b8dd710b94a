// What is asked of a résumé, by hand: each word with its weight is shown wherever it stands.
#pragma once

#include "compiler/stages/model/resume.hpp"
#include "compiler/tailoring/demand.hpp"

#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace quoin::tailoring_tests {

using Words = std::vector<std::pair<std::string, double>>;

class Finder {
public:
    Finder(const model::Resume& resume, std::string word) : word_(std::move(word)) {
        look({}, resume.heading);
        for (std::size_t s = 0; s < resume.sections.size(); ++s) {
            const model::Section& section = resume.sections[s];
            if (has(section.title)) spots.push_back({.section = s});
            for (std::size_t e = 0; e < section.entries.size(); ++e)
                look({.section = s, .entry = e}, section.entries[e]);
        }
    }

    std::vector<tailoring::Spot> spots;

private:
    bool has(const model::Text& text) const {
        return text.plain().find(word_) != std::string::npos;
    }

    void look(tailoring::Spot at, const model::Entry& entry) {
        look(at, entry.fields);
        for (std::size_t b = 0; b < entry.bullets.size(); ++b) {
            at.bullet = b;
            if (has(entry.bullets[b].text)) spots.push_back(at);
        }
        at.bullet = tailoring::none;
        for (std::size_t f = 0; f < entry.further.size(); ++f) {
            at.further = f;
            look(at, entry.further[f]);
        }
    }

    void look(tailoring::Spot at, const std::vector<model::Field>& fields) {
        for (std::size_t f = 0; f < fields.size(); ++f) {
            at.field = f;
            at.item = tailoring::none;
            if (const auto* text = std::get_if<model::Text>(&fields[f].value)) {
                if (has(*text)) spots.push_back(at);
            } else if (const auto* items =
                           std::get_if<std::vector<model::Text>>(&fields[f].value)) {
                for (at.item = 0; at.item < items->size(); ++at.item)
                    if (has((*items)[at.item])) spots.push_back(at);
            }
        }
    }

    std::string word_;
};

inline tailoring::Demand demand(const model::Resume& resume, const Words& words) {
    tailoring::Demand asked;
    for (const auto& [word, weight] : words)
        asked.push_back({word, weight, Finder(resume, word).spots});
    return asked;
}

}
