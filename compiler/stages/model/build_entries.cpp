// A block of lines as an entry: its fields, its bullets, its further positions.
#include "compiler/stages/model/build_steps.hpp"

#include "compiler/base/suggest.hpp"
#include "compiler/stages/model/bare_advice.hpp"
#include "compiler/stages/model/guesses.hpp"
#include "compiler/stages/model/messages.hpp"
#include "compiler/stages/model/odd_values.hpp"
#include "compiler/trade/guessed_labels.hpp"

#include <algorithm>
#include <array>
#include <deque>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace quoin::model {
namespace {

// The line that takes the place of a bullet in a section without bullets.
std::string instead_of_bullet(trade::Holds holds, const std::string& text) {
    switch (holds) {
    case trade::Holds::skills:
    case trade::Holds::languages:
        return "Label: " + text;
    case trade::Holds::credentials:
        return "credential: " + text;
    case trade::Holds::publications:
        return "publication: " + text;
    default:
        return "text: " + text;
    }
}

class EntryBuilder {
public:
    EntryBuilder(trade::Holds holds, bool one_line, const LocalDates& dates,
                 Diagnostics& diagnostics)
        : holds_(holds), one_line_(one_line), dates_(dates), diagnostics_(diagnostics) {}

    void add(const syntax::Node& node) {
        if (node.kind == syntax::Node::Kind::comment) return;
        if (empty_) entry_.place = node.place;
        empty_ = false;
        const syntax::Node* above = std::exchange(above_, &node);
        if (node.kind == syntax::Node::Kind::bare) {
            faulty_ = true;
            std::ranges::copy(report_bare_line(node, place_below(above), diagnostics_),
                              std::back_inserter(taken_));
            return;
        }
        if (node.kind == syntax::Node::Kind::bullet) return add_bullet(node);
        if (is_label(node, "for")) return add_for(node);
        if (report_empty_value(node, diagnostics_)) {
            faulty_ = true;
            return;
        }
        const trade::Word* word = trade::find_word(node.label.text);
        const bool directive = word && std::holds_alternative<trade::Directive>(word->means);
        if (has_groups(holds_) && !directive) return add_group(node);
        if (!word || !word->kinds.has(holds_)) return report_misplaced(node, word);
        if (names_entry(*word) && report_several(node, place_below(above), diagnostics_)) {
            faulty_ = true;
            return;
        }
        add_field(*word, node, diagnostics_);
    }

    std::optional<Entry> finish() {
        if (empty_) return std::nullopt;
        if (entry_.fields.empty() && entry_.bullets.empty() && tags_line_ && !faulty_)
            diagnostics_.error(tags_line_->label.place, fill<messages::for_no_entry>());
        return std::move(entry_);
    }

private:
    BarePlace place_below(const syntax::Node* above) const {
        return {holds_, above, [this](std::string_view label) { return is_taken(label); }, dates_};
    }

    Entry& current() { return entry_.further.empty() ? entry_ : entry_.further.back(); }

    void add_bullet(const syntax::Node& node) {
        if (!has_bullets(holds_))
            return fault(node.place,
                         fill<messages::no_bullets>(
                             section_of(holds_), instead_of_bullet(holds_, node.value.joined())));
        warn_of_odd_bullet(node, holds_, diagnostics_);
        auto& bullets = current().bullets;
        if (node.level == 2 && bullets.empty())
            return fault(node.place, fill<messages::second_level_alone>());
        bullets.push_back({read_text(node.value, diagnostics_), node.level, read_tags(node.tags),
                           node.value.place()});
    }

    void add_for(const syntax::Node& node) {
        if (current().tags != Tags{})
            return fault(node.label.place, fill<messages::for_stands_twice>());
        tags_line_ = &node;
        if (auto tags = read_tags_line(node, diagnostics_))
            current().tags = *std::move(tags);
        else
            faulty_ = true;
    }

    void add_group(const syntax::Node& node) {
        warn_of_odd_field(node, diagnostics_);
        auto field = read_group(node, diagnostics_);
        if (!field)
            faulty_ = true;
        else if (!goes_on_with_group(*field))
            entry_.fields.push_back(*std::move(field));
    }

    // Lines without a label below each other are one group.
    bool goes_on_with_group(Field& further) {
        if (!further.label.spans.empty() || entry_.fields.empty()) return false;
        Field& above = entry_.fields.back();
        if (!above.label.spans.empty() || above.tags != further.tags) return false;
        std::ranges::move(std::get<std::vector<Text>>(further.value),
                          std::back_inserter(std::get<std::vector<Text>>(above.value)));
        return true;
    }

    void add_guessed(std::string_view meant, const syntax::Node& node) {
        Diagnostics found;
        report_guess(node, meant, found);
        add_field(*trade::find_word(meant), node, found);
        report_together(found, diagnostics_);
    }

    void add_field(const trade::Word& word, const syntax::Node& node, Diagnostics& diagnostics) {
        warn_of_odd_field(node, diagnostics);
        auto field = read_field(word, node, dates_, diagnostics);
        if (!field) {
            faulty_ = true;
            return;
        }
        if (field->name == trade::FieldName::role && holds_ == trade::Holds::experience) {
            if (has_role_ && !rewords_role(*field)) open_further(node);
            has_role_ = true;
        }
        if (standing_.add(word, field->tags, node, fill<messages::new_entry>(), diagnostics))
            current().fields.push_back(*std::move(field));
        else
            faulty_ = true;
    }

    void open_further(const syntax::Node& node) {
        entry_.further.emplace_back().place = node.place;
        standing_ = {};
    }

    // `role: A {lab}` with `role: B {!lab}` right below it is one position in two wordings.
    bool rewords_role(const Field& role) {
        const Entry& position = current();
        if (!position.bullets.empty() || role.tags.empty()) return false;
        const Field& above = position.fields.back();
        return above.name == trade::FieldName::role && !above.tags.empty();
    }

    void report_misplaced(const syntax::Node& node, const trade::Word* word) {
        const std::string label = in_quotes(node.label.text);
        const auto meant = trade::meant_in(holds_, node.label.text);
        if (meant && is_taken(*meant) && !trade::find_word(*meant)->repeats)
            return report_unknown(node);
        if (meant) return add_guessed(*meant, node);
        if (!word) return report_unknown(node);
        if (const auto* directive = std::get_if<trade::Directive>(&word->means)) {
            if (*directive == trade::Directive::include)
                return fault(node.label.place, fill<messages::include_in_entry>());
            return fault(node.label.place, fill<messages::belongs_under_its_title>(label));
        }
        if (word->kinds.empty())
            return fault(node.label.place,
                         fill<messages::belongs_in_heading>(
                             label, word->is_setting() ? "setting" : "contact field"));
        fault(node.label.place,
              fill<messages::not_in_section>(label, section_of(holds_), kinds_with(*word),
                                             listed(labels_of(holds_))));
    }

    void report_unknown(const syntax::Node& node) {
        const auto candidates = labels_of(holds_);
        const bool other = report_other_meaning(node, holds_, one_line_, diagnostics_);
        const auto meant = slip_of(node.label.text, candidates); // employeer
        if (meant && !is_taken(*meant) && !other) return add_guessed(*meant, node);
        faulty_ = true;
        if (other) return;
        std::string mend = did_you_mean(node.label.text, candidates);
        if (mend.empty()) mend = did_you_mean(node.label.text, other_labels);
        if (mend.empty() && report_own_label(node, holds_, diagnostics_)) return;
        if (mend.empty()) {
            const bool noted = holds_ == trade::Holds::experience && is_taken("note");
            mend = fill<messages::expected_labels>(listed(candidates)) +
                   instead_of_label(node, noted ? trade::Holds::other : holds_);
            taken_.push_back("note");
        }
        fault(node.label.place, fill<messages::unknown_label_in>(in_quotes(node.label.text),
                                                                 section_of(holds_), mend));
    }

    void fault(Place place, std::string text, Edits mend = {}) {
        faulty_ = true;
        diagnostics_.error(place, std::move(text), std::move(mend));
    }

    bool is_taken(std::string_view label) const {
        const trade::Word* word = trade::find_word(label);
        return std::ranges::find(taken_, label) != taken_.end() || standing_.has(*word);
    }

    static constexpr std::array<std::string_view, 5> other_labels{"section", "holds", "column",
                                                                  "for", "include"};

    trade::Holds holds_;
    bool one_line_;
    const LocalDates& dates_;
    Diagnostics& diagnostics_;
    Entry entry_;
    Standing standing_;                   // of the position that is being read
    std::vector<std::string_view> taken_; // by lines that go without their label
    const syntax::Node* tags_line_ = nullptr;
    const syntax::Node* above_ = nullptr; // the line before, but for comments
    bool has_role_ = false;
    bool empty_ = true;
    bool faulty_ = false;
};

}

std::optional<Entry> build_entry(Nodes block, trade::Holds holds, const LocalDates& dates,
                                 Diagnostics& diagnostics) {
    EntryBuilder builder{holds, block.size() == 1, dates, diagnostics};
    std::deque<syntax::Node> whole_lines; // of pieces, for the builder looks back at them
    const bool has_place = trade::find_word("place")->kinds.has(holds);
    while (!block.empty()) {
        const std::size_t pieces = has_place ? count_pieces(block, false) : 0;
        const bool range = block.size() > 1 && are_range(block[0], block[1]);
        if (range)
            report_range(block[0], block[1], holds, diagnostics);
        else if (pieces > 0)
            whole_lines.push_back(report_pieces(block.first(pieces), false, diagnostics));
        else
            builder.add(block.front());
        if (!range && pieces > 0) builder.add(whole_lines.back());
        block = block.subspan(range ? 2 : std::max<std::size_t>(pieces, 1));
    }
    return builder.finish();
}

}
