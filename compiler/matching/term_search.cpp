#include "compiler/matching/term_search.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/slips.hpp"
#include "compiler/english/verb_table.hpp"
#include "compiler/postings/acronyms.hpp"

#include <algorithm>
#include <iterator>

namespace quoin::matching {

namespace {

using Words = std::vector<std::string>;

constexpr std::size_t words_between = 2; // that the words of a term may have among them
constexpr std::size_t shortest_slip = 6; // letters of a word in which a slip is seen
constexpr int dearest_slip = 6;          // by english/slips.hpp: one of them

Words lower_words(std::string_view text) {
    Words lower;
    for (WordOfText& word : words_of(text))
        lower.push_back(std::move(word.lower));
    return lower;
}

void add_run_together(std::string& text, std::string_view word) {
    for (const char c : word)
        if (is_letter_or_figure(c) || static_cast<unsigned char>(c) >= 0x80 || c == '+' || c == '#')
            text += c;
}

std::string run_together(const Words& words) {
    std::string text;
    for (const std::string& word : words)
        add_run_together(text, word);
    return text;
}

// American spelling of what British and Canadian writers spell otherwise: colour, organise, centre,
// labelled, defence.
std::string american(std::string word) {
    const auto turn = [&](std::string_view from, std::string_view to) {
        const std::size_t at = word.rfind(from);
        if (at != word.npos && at >= 2) word.replace(at, from.size(), to);
    };
    turn("our", "or");
    turn("isation", "ization");
    turn("ise", "ize");
    turn("ising", "izing");
    turn("yse", "yze");
    turn("lled", "led");
    turn("lling", "ling");
    turn("ence", "ense");
    if (word.ends_with("tre")) word.replace(word.size() - 2, 2, "er");
    if (word.ends_with("ogue")) word.resize(word.size() - 2);
    return word;
}

// Where the last of `missing` stands when all do, in any order, from `first` to before `end`.
std::optional<std::size_t> last_of(Words missing, const TextOfResume& text, std::size_t first,
                                   std::size_t end) {
    for (std::size_t i = first; i < end; ++i) {
        const auto found = std::ranges::find(missing, text.words[i].stem);
        if (found == missing.end()) continue;
        missing.erase(found);
        if (missing.empty()) return i;
    }
    return std::nullopt;
}

// Blood of blood pressure is no blood that is drawn.
bool is_of_compound(const TextOfResume& text, std::size_t first) {
    if (first + 1 >= text.words.size()) return false;
    const WordOfText &word = text.words[first], &next = text.words[first + 1];
    const std::string pair = word.lower + ' ' + next.lower;
    return next.offset == word.offset + word.length + 1 &&
           (said_of(pair, english::named_compounds()) || said_of(pair, english::noun_compounds()));
}

// Borrowers are not shown by who borrows.
bool is_deed_of(const std::string& agent, const std::string& typed) {
    const auto of_somebody = [](std::string_view word) {
        if (word.ends_with('s')) word.remove_suffix(1);
        return word.ends_with("er") || word.ends_with("or");
    };
    return of_somebody(agent) && !of_somebody(typed) &&
           english::is_person_noun(agent.ends_with('s') ? agent.substr(0, agent.size() - 1) : agent,
                                   english::Lexicon{});
}

// Excel, not: excel at, Words; a sentence that begins with a name of one word may begin with any.
bool is_named(const TextOfResume& text, std::size_t first, const Words& name) {
    const bool sentence = text.where == Where::bullet || text.where == Where::prose;
    if (name.size() == 1 && ((first == 0 && sentence) || text.words[first].lower != name[0]))
        return false;
    return is_capital_letter(text.plain[text.words[first].offset]);
}

bool stands_at(const Words& words, const TextOfResume& text, std::size_t first) {
    return std::ranges::equal(words, std::span(text.words).subspan(first, words.size()), {}, {},
                              &WordOfText::lower);
}

}

TermSearch::TermSearch(const model::Resume& resume, const std::vector<TextOfResume>& texts,
                       const english::WordList& words)
    : texts_(texts), words_(words), studies_(resume, texts) {
    const auto both_ways = [&](std::string_view one, std::string_view other) {
        const Words first = lower_words(one), second = lower_words(other);
        if (first.empty() || second.empty()) return;
        other_forms_[stems_of(first)].push_back(second);
        other_forms_[stems_of(second)].push_back(first);
    };
    for (const TextOfResume& text : texts)
        for (const WordOfText& word : text.words)
            stems_.insert(word.stem);
    for (const TextOfResume& text : texts)
        for (const postings::Acronym& acronym : postings::acronyms_in(text.plain))
            both_ways(acronym.short_form, acronym.long_form);
    for (const model::Gloss& gloss : resume.settings.glosses)
        if (!gloss.expansion.empty()) both_ways(gloss.words, gloss.expansion);
}

std::vector<TermForm> TermSearch::forms_of(const postings::Term& term) const {
    const Words own = lower_words(term.words);
    std::vector<TermForm> forms{form_of(own, Nearness::exact)};
    const auto add = [&](Words lower, Nearness best) {
        if (!lower.empty()) forms.push_back(form_of(std::move(lower), best));
    };
    if (const auto found = other_forms_.find(stems_of(own)); found != other_forms_.end())
        for (const Words& other : found->second)
            add(other, Nearness::acronym);
    add(lower_words(term.other_form), Nearness::acronym);
    if (own.empty()) return forms;
    for (TermForm& form : other_forms_of(own, term.words))
        if (may_stand(form.stems)) forms.push_back(std::move(form));
    return forms;
}

bool TermSearch::may_stand(const Words& stems) const {
    return std::ranges::all_of(stems,
                               [&](const std::string& stem) { return stems_.contains(stem); });
}

// Where all stems stand closest together within a window, and of several such places the first.
std::optional<TermSearch::Found> TermSearch::find(const TextOfResume& text,
                                                  const TermForm& form) const {
    if (form.job && !text.job) return std::nullopt;
    const std::size_t size = form.stems.size(), all = text.words.size();
    std::optional<Found> closest;
    for (std::size_t first = 0; first < all; ++first) {
        if (!is_one_of(text.words[first].stem, form.stems)) continue;
        const std::size_t window = size == 1 ? 1 : size + words_between;
        const auto last = last_of(form.stems, text, first, std::min(all, first + window));
        if (!last || (form.named && !is_named(text, first, form.lower))) continue;
        if (size == 1 && (is_of_compound(text, first) ||
                          is_deed_of(form.lower.front(), text.words[first].lower)))
            continue;
        if (closest && closest->last - closest->first <= *last - first) continue;
        const bool same = *last - first + 1 == size && stands_at(form.lower, text, first);
        const Nearness how = same ? Nearness::exact : Nearness::form;
        closest = Found{first, *last, std::max(how, form.best)};
        if (*last - first + 1 == size) break;
    }
    return closest;
}

bool TermSearch::is_spelled_otherwise(const std::string& typed, const std::string& meant) const {
    if (typed == meant) return true;
    constexpr std::size_t most_apart = 3; // letters that a spelling adds or takes
    const bool may_be = !typed.empty() && !meant.empty() && typed.front() == meant.front() &&
                        typed.size() <= meant.size() + most_apart &&
                        meant.size() <= typed.size() + most_apart;
    if (may_be && american(typed) == american(meant)) return true; // first letters are the same
    return meant.size() >= shortest_slip && // what is dear to look up comes last
           english::slip_cost(typed, meant, dearest_slip) <= dearest_slip &&
           words_.class_of(typed) == english::WordList::is_none;
}

// Run together or apart otherwise than the posting has it, or its words spelled otherwise.
std::optional<TermSearch::Found> TermSearch::find_spelled(const TextOfResume& text,
                                                          const TermForm& form) const {
    const std::string meant = run_together(form.lower);
    if (meant.size() < 3) return std::nullopt;
    std::string typed;
    for (std::size_t first = 0; first < text.words.size(); ++first) {
        if (form.lower.size() == 1 && is_of_compound(text, first)) continue;
        typed.clear();
        for (std::size_t last = first;
             last < std::min(text.words.size(), first + form.lower.size() + 1); ++last) {
            add_run_together(typed, text.words[last].lower);
            if (typed.size() > meant.size() + 2) break;
            if (typed == meant ||
                (last - first + 1 == form.lower.size() && is_spelled_otherwise(typed, meant)))
                return Found{first, last, Nearness::spelling};
        }
    }
    return std::nullopt;
}

Showing TermSearch::showing(const TextOfResume& text, const Found& found) const {
    const WordOfText& first = text.words[found.first];
    const WordOfText& last = text.words[found.last];
    const std::size_t length = last.offset + last.length - first.offset;
    return {text.spot, text.where, found.how, text.text->place(first.offset, length),
            text.plain.substr(first.offset, length)};
}

std::vector<Showing> TermSearch::showings(const postings::Term& term) const {
    const std::vector<TermForm> forms = forms_of(term);
    std::vector<Showing> showings;
    for (const TextOfResume& text : texts_) {
        std::optional<Found> best;
        for (const TermForm& form : forms)
            if (const auto found = find(text, form); found && (!best || found->how < best->how))
                best = found;
        if (!best || best->how >= Nearness::near)
            if (const auto found = find_spelled(text, forms.front())) best = found;
        if (best) showings.push_back(showing(text, *best));
    }
    if (const TextOfResume* studies = studies_.shows(forms.front().lower))
        showings.push_back(showing(*studies, {0, studies->words.size() - 1, Nearness::implied}));
    return showings;
}

}
