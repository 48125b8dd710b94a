// A term that is said over and over, for a portal's search and against its reader.
#include "compiler/advice/stuffing.hpp"

#include "compiler/advice/messages.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace quoin::advice {

namespace {

constexpr std::size_t most_texts = 4; // bullets and items that may name one thing
constexpr std::size_t most_in_one = 2;

struct Said {
    std::string words; // as said first
    Place last;
    std::size_t texts = 0;
    std::size_t text = 0; // the last that says it, from 1
    std::size_t in_this = 0, most_in_this = 0;
};

using SaidByStems = std::map<std::vector<std::string>, Said>;

// One word may well be the page's subject; a term of several is said once or twice.
void count_terms(const model::Text& text, std::size_t number, SaidByStems& said) {
    for (const postings::Phrase& phrase : postings::phrases_in(text.plain())) {
        if (phrase.lower.size() < 2) continue;
        std::vector<std::string> stems;
        for (const std::string& word : phrase.lower)
            stems.push_back(postings::stem_of(word));
        Said& one = said[stems];
        if (one.words.empty()) one.words = phrase.words;
        one.last = text.place(phrase.extent.offset, phrase.extent.length);
        one.in_this = one.text == number ? one.in_this + 1 : 1;
        one.texts += one.text == number ? 0 : 1;
        one.text = number;
        one.most_in_this = std::max(one.most_in_this, one.in_this);
    }
}

}

void stuffing(const ProofContext& context, std::vector<Finding>& findings) {
    SaidByStems said;
    std::size_t number = 0;
    visit_texts(context.resume, [&](const TextInResume& one) {
        const bool listed = one.field && one.field->name == trade::FieldName::group;
        const bool prose = one.field && one.field->name == trade::FieldName::text;
        if (one.bullet || listed || prose) count_terms(one.text, ++number, said);
    });
    for (const auto& [stems, one] : said)
        if (one.texts > most_texts || one.most_in_this > most_in_one)
            report<messages::said_over_and_over>(findings, one.last, one.words,
                                                 std::max(one.texts, one.most_in_this));
}

}
