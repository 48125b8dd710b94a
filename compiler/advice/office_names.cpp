// Names that an office knows the spelling of, and what is nearly one of them.
#include "compiler/advice/office_words.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/suggest.hpp"

#include <array>
#include <unordered_map>
#include <unordered_set>

namespace quoin::advice {

namespace {

using NameWords = std::vector<std::string>;

// In small letters, `&` as `and`, without `the` before all.
NameWords name_words(std::string_view name) {
    NameWords words;
    for (const std::string_view piece : pieces_of(name, " ")) {
        std::string word;
        for (const char c : lower_case(piece))
            if (is_word_byte(c)) word += c;
        if (piece == "&") word = "and";
        if (!word.empty() && (word != "the" || !words.empty())) words.push_back(std::move(word));
    }
    return words;
}

class KnownSpellings {
public:
    explicit KnownSpellings(const std::vector<office::KnownName>& names) {
        for (const office::KnownName& known : names) {
            const NameWords words = name_words(known.name);
            right_.insert(known.name);
            whole_.emplace(joined(words, ""), &known);
            for (std::size_t i = 0; i < words.size(); ++i)
                but_one_[all_but(words, i)].push_back({words[i], &known});
        }
    }

    // What a name is nearly, but for its signs and capitals or for a slip in one word; null if it
    // is right as it is, or another name.
    const office::KnownName* nearly(const std::string& name) const {
        if (right_.contains(name)) return nullptr;
        const NameWords words = name_words(name);
        const auto alike = whole_.find(joined(words, ""));
        if (alike != whole_.end()) return alike->second;
        for (std::size_t i = 0; i < words.size() && words.size() > 1; ++i)
            if (const auto* known = near_word(words, i)) return known;
        return nullptr;
    }

private:
    struct OneWord {
        std::string word;
        const office::KnownName* name = nullptr;
    };

    static std::string all_but(NameWords words, std::size_t i) {
        words[i] = "\n";
        return joined(words, " ");
    }

    const office::KnownName* near_word(const NameWords& words, std::size_t i) const {
        constexpr std::size_t shortest = 5, most = 50; // letters; names that differ in one word
        const auto found = but_one_.find(all_but(words, i));
        if (found == but_one_.end() || words[i].size() < shortest || found->second.size() > most)
            return nullptr;
        for (const OneWord& one : found->second) {
            const std::array<std::string_view, 1> meant{one.word};
            if (nearest(words[i], meant)) return one.name;
        }
        return nullptr;
    }

    std::unordered_set<std::string> right_;
    std::unordered_map<std::string, const office::KnownName*> whole_;
    std::unordered_map<std::string, std::vector<OneWord>> but_one_;
};

struct NamedField {
    trade::FieldName field;
    std::vector<office::KnownName> office::Rules::*names;
};
constexpr std::array named_fields{NamedField{trade::FieldName::employer, &office::Rules::employers},
                                  NamedField{trade::FieldName::school, &office::Rules::schools},
                                  NamedField{trade::FieldName::courses, &office::Rules::courses},
                                  NamedField{trade::FieldName::course, &office::Rules::courses}};

void compare_name(const model::Text& text, const KnownSpellings& known, const ProofContext& context,
                  std::vector<Finding>& findings) {
    const std::string name = text.plain();
    const office::KnownName* meant = known.nearly(name);
    if (!meant) return;
    Finding& finding =
        report<messages::near_name>(findings, text.place(0, name.size()), in_quotes(name));
    finding.suggestion = fill<messages::write>(in_quotes(meant->name));
    add_office(finding, context.office->says(fill<messages::office_asks>(), {meant->line, {}}));
}

}

void office_names(const ProofContext& context, std::vector<Finding>& findings) {
    for (const NamedField& each : named_fields) {
        const auto& names = context.rules().*each.names;
        if (names.empty()) continue;
        const KnownSpellings known(names);
        for (const TextInResume& part : context.texts)
            if (part.field && part.field->name == each.field)
                compare_name(part.text, known, context, findings);
    }
}

}
