#include "compiler/redlining/flat.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/redlining/word_changes.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>

namespace quoin::redlining {

namespace {

std::string breaking(std::string text) { // with spaces as others are
    for (std::size_t at = text.find(no_break_space); at != text.npos;
         at = text.find(no_break_space, at))
        text.replace(at, no_break_space.size(), " ");
    return text;
}

double weight_of_word(const std::string& word) {
    return static_cast<double>(std::min<std::size_t>(word.size(), 8));
}

double weight_of_all(const std::vector<std::string>& words) {
    double sum = 0;
    for (const std::string& word : words)
        sum += weight_of_word(word);
    return sum;
}

void add_words(std::vector<std::string>& words, std::string_view text) {
    for (const Word& word : words_of(text))
        if (word.text.size() > 1 || is_letter_or_figure(word.text.front()))
            words.push_back(lower_case(word.text));
}

bool is_list(const model::Field& field) {
    return std::holds_alternative<std::vector<model::Text>>(field.value);
}

std::string key_of(const model::Field& field, const model::Resume& resume) {
    return label_of(field) + ": " + plain_value(field, resume) + '\n';
}

class Flattener {
public:
    explicit Flattener(const model::Resume& resume) : resume_(resume) { flat_.resume = &resume; }

    Flat flatten() {
        for (const model::Section& section : resume_.sections) {
            section_words_.clear();
            flat_.entries_of.emplace_back();
            for (const model::Entry& entry : section.entries) {
                add(entry, entry);
                for (const model::Entry& further : entry.further)
                    add(entry, further);
            }
            std::ranges::sort(section_words_);
            flat_.section_items.push_back({lower_case(section.title.plain()), section_words_});
            ++section_;
        }
        return std::move(flat_);
    }

private:
    void add(const model::Entry& head, const model::Entry& entry) {
        FlatEntry one{section_, &head, &entry, {}, {}};
        Item item;
        for (const model::Field& field : entry.fields) {
            add(field, one);
            item.key += key_of(field, resume_);
        }
        if (&head != &entry) add_employer(head, one);
        flat_.bullets_of.emplace_back();
        for (const model::Bullet& bullet : entry.bullets)
            item.key += add(bullet, one.content) + '\n';
        std::ranges::sort(one.content);
        item.words = one.content;
        for (const Named& named : one.named)
            item.words.insert(item.words.end(), named.words.begin(), named.words.end());
        std::ranges::sort(item.words);
        section_words_.insert(section_words_.end(), item.words.begin(), item.words.end());
        flat_.entry_items.push_back(std::move(item));
        flat_.entries_of.back().push_back(flat_.entries.size());
        flat_.entries.push_back(std::move(one));
    }

    void add(const model::Field& field, FlatEntry& one) const {
        const std::string text = plain_value(field, resume_);
        if (is_list(field) || has(field.name, trade::Trait::writes))
            return add_words(one.content, label_of(field) + ' ' + text);
        const bool names =
            has(field.name, trade::Trait::calls) || has(field.name, trade::Trait::else_calls);
        one.named.push_back({label_of(field), names ? 2.0 : 1.0, sorted_words(text)});
    }

    void add_employer(const model::Entry& head, FlatEntry& one) const {
        if (const model::Field* employer = head.find(trade::FieldName::employer))
            add(*employer, one);
    }

    std::string add(const model::Bullet& bullet, std::vector<std::string>& content) {
        std::string text = bullet.text.plain();
        add_words(content, text);
        flat_.bullets_of.back().push_back(flat_.bullets.size());
        flat_.bullets.push_back({flat_.entries.size(), &bullet});
        flat_.bullet_items.push_back({text, sorted_words(text)});
        return text;
    }

    const model::Resume& resume_;
    Flat flat_;
    std::size_t section_ = 0;
    std::vector<std::string> section_words_;
};

const Named* with_label(const std::vector<Named>& all, const std::string& label) {
    const auto found = std::ranges::find(all, label, &Named::label);
    return found == all.end() ? nullptr : &*found;
}

// A field that one of the two alone has tells half as much as one that differs.
double identity_likeness(const FlatEntry& a, const FlatEntry& b) {
    double sum = 0, weight = 0;
    for (const Named& named : a.named) {
        const Named* other = with_label(b.named, named.label);
        weight += other == nullptr ? named.weight / 2 : named.weight;
        if (other != nullptr) sum += named.weight * likeness(named.words, other->words);
    }
    for (const Named& named : b.named)
        if (with_label(a.named, named.label) == nullptr) weight += named.weight / 2;
    return weight == 0 ? 1 : sum / weight;
}

}

std::vector<std::string> sorted_words(std::string_view text) {
    std::vector<std::string> words;
    add_words(words, text);
    std::ranges::sort(words);
    return words;
}

double likeness(const std::vector<std::string>& a, const std::vector<std::string>& b) {
    const double all = weight_of_all(a) + weight_of_all(b);
    if (all == 0) return 1;
    double common = 0;
    for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
        const int order = a[i].compare(b[j]);
        if (order == 0) common += weight_of_word(a[i]);
        if (order <= 0) ++i;
        if (order >= 0) ++j;
    }
    return 2 * common / all;
}

double likeness(const FlatEntry& a, const FlatEntry& b) {
    const double identity = identity_likeness(a, b);
    if (a.content.empty() && b.content.empty()) return identity;
    if (a.named.empty() && b.named.empty()) // lists and prose, which nothing else names
        return 0.5 + 0.5 * likeness(a.content, b.content);
    return 0.6 * identity + 0.4 * likeness(a.content, b.content);
}

std::string plain_value(const model::Field& field, const model::Resume& resume) {
    if (const auto* text = std::get_if<model::Text>(&field.value)) return text->plain();
    if (const auto* dates = std::get_if<model::DateRange>(&field.value))
        return breaking(print(*dates, *resume.settings.dates_as, resume.words.dates));
    std::string all;
    for (const model::Text& item : std::get<std::vector<model::Text>>(field.value))
        all += (all.empty() ? "" : "; ") + item.plain();
    return all;
}

std::string label_of(const model::Field& field) {
    return field.name == trade::FieldName::group ? field.label.plain()
                                                 : std::string(trade::label_of(field.name));
}

Flat flatten(const model::Resume& resume) {
    return Flattener(resume).flatten();
}

}
