// What a section holds, told from the labels of its entries and from its title.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/stages/model/text_pieces.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/section_titles.hpp"

#include <algorithm>
#include <map>

namespace quoin::model {
namespace {

struct LabelEvidence {
    std::map<trade::Holds, std::size_t> votes; // labels that may stand there, for each kind
    std::size_t known = 0; // labels of entries, or near enough to be slips of them
    std::size_t unknown = 0;
    std::size_t amounts = 0;     // of the unknown, those of a short value that opens with a figure
    bool names_an_entry = false; // `role`, `project` and the like
    bool bullets = false;

    bool tells_nothing() const { return known == 0 && unknown == 0; }
    // Labels of the writer's own outnumber the known ones, which will be so by chance.
    bool looks_grouped() const { return unknown > known && !names_an_entry; }
    // `Pediatrics: 120 hours`, and no line of another form
    bool lists_amounts() const {
        return known == 0 && amounts > 0 && amounts == unknown && !bullets;
    }
};

std::vector<std::string_view> entry_labels() {
    std::vector<std::string_view> labels;
    for (const trade::Word& word : trade::vocabulary())
        if (!word.kinds.empty()) labels.push_back(word.label);
    return labels;
}

// One vote for each kind that any of the words may stand in.
void vote(std::span<const std::string_view> labels, LabelEvidence& evidence) {
    for (const std::string_view name : trade::names_of<trade::Holds>()) {
        const trade::Holds kind = *trade::named<trade::Holds>(name);
        evidence.votes[kind] += std::ranges::any_of(labels, [kind](std::string_view label) {
            return trade::find_word(label)->kinds.has(kind);
        });
    }
}

// 120 hours, 1,200 miles; but not 2024 - 2025, 06/2026
bool is_amount(const syntax::Node& node) {
    constexpr std::size_t longest = 40;
    const JoinedValue value{node.value};
    const std::string_view text = value.text();
    const std::size_t end = text.find_first_not_of("0123456789.,+");
    return end != 0 && end != std::string_view::npos && end + 1 < text.size() &&
           text.size() <= longest && text[end] == ' ' && is_ascii_letter(text[end + 1]);
}

void weigh(const syntax::Node& node, LabelEvidence& evidence) {
    const trade::Word* word = trade::find_word(node.label.text);
    if (word && std::holds_alternative<trade::Directive>(word->means)) return;
    if (word && !word->kinds.empty()) {
        evidence.names_an_entry = evidence.names_an_entry || names_entry(*word);
    } else if (const auto guessed = trade::meant_by(node.label.text); !guessed.empty()) {
        ++evidence.known;
        return vote(guessed, evidence);
    } else if (const auto near = nearest(node.label.text, entry_labels())) {
        word = trade::find_word(*near);
    } else {
        ++evidence.unknown;
        evidence.amounts += is_amount(node);
        return;
    }
    ++evidence.known;
    vote({&word->label, 1}, evidence);
}

std::vector<trade::Holds> leading_kinds(const std::map<trade::Holds, std::size_t>& votes) {
    std::size_t most = 0;
    for (const auto& [kind, count] : votes)
        most = std::max(most, count);
    std::vector<trade::Holds> kinds;
    for (const auto& [kind, count] : votes)
        if (count == most) kinds.push_back(kind);
    return kinds;
}

}

std::optional<trade::Holds> infer_holds(std::span<const Nodes> blocks, const std::string& title) {
    LabelEvidence evidence;
    for (const Nodes block : blocks)
        for (const syntax::Node& node : block)
            if (node.kind == syntax::Node::Kind::field)
                weigh(node, evidence);
            else
                evidence.bullets = evidence.bullets || node.kind == syntax::Node::Kind::bullet;
    const auto usual = trade::usual_holds(title);
    if (evidence.tells_nothing()) return usual.value_or(trade::Holds::other);
    if (usual && has_groups(*usual) && !evidence.names_an_entry) return usual;
    if (evidence.lists_amounts()) return trade::Holds::skills;
    if (evidence.known == 0 && usual) return usual;
    if (!usual && evidence.looks_grouped()) return trade::Holds::skills;
    const auto kinds = leading_kinds(evidence.votes);
    if (usual && is_one_of(*usual, kinds)) return usual;
    return kinds.size() == 1 ? std::optional{kinds.front()} : std::nullopt;
}

}
