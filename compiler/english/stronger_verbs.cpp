// The verb that hides behind the weak one; else that of its object, where the object is a deed;
// else what is surely done to such an object by who answers for it. Nothing that says more than
// that.
#include "compiler/english/stronger_verbs.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/verb_table.hpp"

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
        if (forms.gerund || bare) {
            const std::string past = std::string(forms.prefix) + past_form(forms.verb->base);
            if (past != "was" && past != "helped") add(verbs, capitalised(past));
        }
        if (s.is(k, w::determiner | w::possessive) || s.ends_phrase(k) || s.is_number(k)) return;
        if (k == i && !forms.none()) return;
    }
}

// The last of the bare words after articles and numbers: `the annual safety inspection of`.
std::size_t head_of_object(const Sentence& s, std::size_t i) {
    while (s.is(i, w::preposition | w::determiner | w::possessive | w::number) || s.is_figure(i))
        ++i;
    std::size_t head = i;
    while (s.token(head + 1).kind == TokenKind::word && s.classes(head + 1) == 0)
        ++head;
    return head;
}

// Inspected, of inspection; Audited, of audit where that is what was done.
void add_verb_of_noun(const Sentence& s, std::size_t head, std::vector<std::string>& verbs) {
    const auto base = said_of(s.word(head), verbs_of_nouns());
    if (!base) return;
    const VerbForms forms = verb_forms(*base, s.lexicon());
    if (!forms.none() && forms.verb->transitive) add(verbs, capitalised(past_form(*base)));
}

void add_for_object(const Sentence& s, std::size_t head, std::vector<std::string>& verbs) {
    const auto said = s.lexicon().said_of(s.word(head), List::done_to);
    if (!said) return;
    for (const std::string_view verb : pieces_of(*said, " "))
        add(verbs, std::string(verb));
}

// Who is responsible for something does all of it; who helped may have done a part.
bool answers_for(const Sentence& s, const WeakPhrase& weak) {
    for (std::size_t i = weak.first; i <= weak.last; ++i)
        if (s.is_word(i, {"responsible", "charge", "tasked", "duties", "responsibilities", "dealt",
                          "deal", "deals", "dealing"}))
            return true;
    return false;
}

}

std::vector<std::string> stronger_for(const Sentence& sentence, const WeakPhrase& weak) {
    std::vector<std::string> verbs;
    add_hidden_verb(sentence, weak.last + 1, verbs);
    if (!verbs.empty()) return verbs;
    const std::size_t head = head_of_object(sentence, weak.last + 1);
    add_verb_of_noun(sentence, head, verbs);
    if (verbs.empty() && answers_for(sentence, weak)) add_for_object(sentence, head, verbs);
    return verbs;
}

}
