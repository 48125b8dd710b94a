// A résumé laid out flat for comparing: its sections, entries and bullets, each in a row, with what
// each says.
#pragma once

#include "compiler/redlining/assignment.hpp"
#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::redlining {

struct Named { // a field that tells one entry from another
    std::string label;
    double weight = 1;
    std::vector<std::string> words;
};

struct FlatEntry { // a further position is one, after its first
    std::size_t section = 0;
    const model::Entry* head = nullptr; // the first position, which has the employer
    const model::Entry* entry = nullptr;
    std::vector<Named> named;
    std::vector<std::string> content; // words of its bullets and lists, in order of the alphabet
};

struct FlatBullet {
    std::size_t entry = 0;
    const model::Bullet* bullet = nullptr;
};

// The items stand beside what they are of, one each.
struct Flat {
    const model::Resume* resume = nullptr;
    std::vector<FlatEntry> entries;
    std::vector<FlatBullet> bullets;
    std::vector<Item> section_items, entry_items, bullet_items;
    std::vector<std::vector<std::size_t>> entries_of, bullets_of; // a section, an entry
};

Flat flatten(const model::Resume& resume);

// From 0, nothing in common, to 1: words in common, longer ones for more. The words in order of the
// alphabet.
double likeness(const std::vector<std::string>& a, const std::vector<std::string>& b);
double likeness(const FlatEntry& a, const FlatEntry& b);

// In small letters, in order of the alphabet.
std::vector<std::string> sorted_words(std::string_view text);

std::string plain_value(const model::Field& field, const model::Resume& resume);
std::string label_of(const model::Field& field); // a group's is the writer's own

}
