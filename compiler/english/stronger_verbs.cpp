// The verb that hides behind the weak one, or what is done to such an object (common practice).
#include "compiler/english/stronger_verbs.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

namespace w = word_class;

void add(std::vector<std::string>& verbs, std::string verb) {
    std::ranges::replace(verb, '-', ' ');
    add_once(verbs, verb, 3);
}

// Responsible for stocking, Helped count, Was able to keep: the verb is there already.
void add_hidden_verb(const Sentence& s, std::size_t i, std::vector<std::string>& verbs) {
    for (std::size_t k = i; k < i + 4; ++k) {
        if (s.is_word(k, {"to", "with", "in", "on"}) || s.is(k, w::adverb)) continue;
        const VerbForms& forms = s.forms(k);
        const bool bare = forms.base && (s.starts_object(k + 1) || mostly_verb(*forms.verb));
        if ((forms.gerund && !s.is_word(k, {"training"})) || bare) {
            const std::string past = std::string(forms.prefix) + past_form(forms.verb->base);
            if (past != "was" && past != "helped") add(verbs, capitalised(past));
        }
        if (s.is(k, w::determiner | w::possessive) || s.ends_phrase(k) || s.is_number(k)) return;
        if (k == i && !forms.none()) return;
    }
}

void add_for_object(const Sentence& s, std::size_t i, std::vector<std::string>& verbs) {
    std::string_view said = s.lexicon().said_of(s.word(i), List::done_to).value_or("");
    while (!said.empty()) {
        const std::size_t end = std::min(said.find(' '), said.size());
        add(verbs, std::string(said.substr(0, end)));
        said.remove_prefix(std::min(end + 1, said.size()));
    }
}

}

std::vector<std::string> stronger_for(const Sentence& sentence, const WeakPhrase& weak) {
    std::vector<std::string> verbs;
    add_hidden_verb(sentence, weak.last + 1, verbs);
    for (std::size_t i = weak.last + 1; i < sentence.size() && i < weak.last + 9; ++i)
        add_for_object(sentence, i, verbs);
    return verbs;
}

}
