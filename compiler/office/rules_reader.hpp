// How a file of rules is read: what read.cpp, which takes lines and blocks apart, and
// statements.cpp, which knows each label, share. Not for other rooms.
#pragma once

#include "compiler/base/message.hpp"
#include "compiler/office/labels.hpp"
#include "compiler/office/messages.hpp"
#include "compiler/office/read.hpp"
#include "compiler/office/values.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <bitset>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace quoin::office {

using Stages = std::bitset<stage_count>;
using Items = std::vector<RuleItem>;

struct Statement {
    const syntax::Node* node = nullptr;
    const LabelRow* row = nullptr; // null: a limit
    const LimitRow* limit = nullptr;
    std::vector<const syntax::Node*> below; // of a phrase: advice, source, weight
    Stages stages;                          // all of them: outside of any block

    std::uint32_t line() const { return node->place.line; }
};

struct Said { // where, and what, for who says otherwise
    std::uint32_t line = 0;
    std::string what;
};

class RulesReader {
public:
    RulesReader(std::uint32_t file, const Known& known, Diagnostics& diagnostics)
        : file_(file), known_(known), diagnostics_(diagnostics) {}

    void read(const syntax::Tree& tree);
    Office take() { return std::move(office_); }

private:
    void read_block(const syntax::Block& block);
    void add_statement(const syntax::Node& node, Stages& stages, bool is_first,
                       const LabelRow* before);
    Stages stages_of(const syntax::Node& node);
    void refuse_label(const syntax::Node& node);
    void run(const Statement& one);
    struct Handler;
    static const Handler handlers[];

    void name_office(const Statement& one);
    void close(const Statement& one);
    void set_limit(const Statement& one);
    void rule_checks(const Statement& one);
    void forbid_accepting(const Statement& one);
    void avoid(const Statement& one);
    void prefer(const Statement& one);
    void add_phrase(const Statement& one);
    void add_to(OfficePhrase& phrase, const Statement& one, const syntax::Node& node);
    void allow_themes(const Statement& one);
    template<auto allowed>
    void allow_named(const Statement& one);
    template<auto names>
    void know_names(const Statement& one);
    void check_whole();
    void check_stage(const Rules& rules);

    std::optional<Items> items(const syntax::Node& node, ItemForm form) {
        return read_rule_items(node.value, form, diagnostics_);
    }
    bool is_known_check(const RuleItem& item);
    bool is_first(const Statement& one, const std::string& key, const std::string& shown,
                  const std::string& what, const Place& place);
    void fault_once(const std::string& key, std::uint32_t line, std::string text);
    void each(const Stages& stages, const auto& change) {
        for (std::size_t stage = 0; stage < stage_count; ++stage)
            if (stages[stage]) change(office_.by_stage[stage]);
    }

    std::uint32_t file_;
    const Known& known_;
    Diagnostics& diagnostics_;
    Office office_;
    std::vector<Statement> statements_;
    std::map<std::pair<std::string, std::size_t>, Said> said_; // by what it is of, and its stage
    std::map<std::pair<std::string, std::uint32_t>, Place> places_;
    std::set<std::string> told_;
};

const LabelRow* label_row(std::string_view label); // null if there is none

}
