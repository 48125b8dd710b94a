// The tree of a file, made line by line of what the actions in parse.cpp find; nothing else
// includes this.
#pragma once

#include "compiler/base/ascii.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/syntax/line_mends.hpp"
#include "compiler/stages/syntax/line_warnings.hpp"
#include "compiler/stages/syntax/line_words.hpp"
#include "compiler/stages/syntax/messages.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/stages/syntax/pushed_in.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "grammar/lines.hpp"
#include "grammar/messages.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace quoin::syntax {

namespace lines = grammar::lines;
namespace pegtl = tao::pegtl;

// A file of another kind given by mistake has something wrong on every line.
inline constexpr std::size_t most_faults = 200;

class TreeBuilder {
public:
    TreeBuilder(const SourceFile& source, std::uint32_t file, Braces braces,
                const PulledOut& pulled, Diagnostics& diagnostics)
        : source_(source), braces_(braces), pulled_(pulled), diagnostics_(diagnostics) {
        tree_.file = file;
        for (const auto& [first, last] : pulled_.blocks)
            tell_pushed_in(first, last);
    }

    void comment(const Slice& text) {
        if (!node_ && opens_title(text)) titled_comment_ = text;
        const bool titled = titled_comment_ && titled_comment_->place.line == text.place.line;
        warn_of_numbered_comment(node_            ? &*node_
                                 : block_.empty() ? nullptr
                                                  : &block_.back(),
                                 text, diagnostics_);
        if (braces_ == Braces::tags && !titled)
            warn_of_foreign_heading(source_.line(text.place.line), text.place, diagnostics_);
        Node node = on_line(text.place, Node::Kind::comment);
        if (!text.text.empty()) node.value.slices.push_back(text);
        // Between a line and its fold it stands after both.
        (node_ ? comments_ : block_).push_back(std::move(node));
    }

    void begin_field(const Slice& label) {
        node_ = on_line(label.place, Node::Kind::field);
        give_label(*node_, label);
    }

    void begin_bare() {
        node_ = Node{};
        node_->kind = Node::Kind::bare;
    }

    // `role = Tutor`: what the rule matched ends in the sign that should be a colon.
    void begin_mistyped_field(const Slice& found) {
        std::size_t sign = found.text.size() - 1;
        while (sign > 0 && continues_character(found.text[sign]))
            --sign;
        const std::string_view label = trimmed(std::string_view{found.text}.substr(0, sign));
        begin_field({std::string(label), found.place});
        node_->label.place.length = static_cast<std::uint32_t>(label.size());
    }

    // `name = "Ottoline Brandt"`, as files of settings have it, is told whole; that `skills` has a
    // section of its own is told by who knows where it stands.
    void begin_equals_field(const Slice& found) {
        const std::string_view line = source_.line(found.place.line);
        const std::string_view value =
            trimmed(line.substr(found.place.column - 1 + found.text.size()));
        begin_mistyped_field(found);
        enclosed_ = unenclosed(value) != value;
        if (trade::means_section(node_->label.text)) return;
        if (!enclosed_) return report<lines::equals_for_colon>(found);
        ++faults_;
        const std::string right = node_->spelled + ": " + std::string(unenclosed(value));
        Place whole = found.place;
        whole.length = static_cast<std::uint32_t>(line.size() - found.place.column + 1);
        diagnostics_.error(found.place, fill<messages::setting_line>(in_quotes(found.text), right),
                           {{whole, right}});
    }

    // `**Role:** Tutor`. False where no label is known by that name: then it is text of its own.
    bool begin_marked_field(const Slice& found) {
        const std::string_view label = trimmed(found.text, around_label);
        if (!is_label_or_guess(folded_label(label))) return false;
        report<lines::marked_label>(found);
        begin_field({std::string(label), found.place});
        node_->label.place.column += static_cast<std::uint32_t>(found.text.find(label));
        node_->label.place.length = static_cast<std::uint32_t>(label.size());
        return true;
    }

    // `* Education`, as outlines have titles, is one.
    void begin_foreign_bullet(const Slice& sign) {
        const Slice line{std::string(trimmed(source_.line(sign.place.line))), sign.place};
        titled_ = trimmed(line.text).size() > sign.text.size() && opens_title(line);
        if (titled_)
            open_titled(line);
        else
            report<lines::foreign_bullet>(sign);
        begin_mistyped_bullet(sign);
    }

    void begin_mistyped_bullet(const Slice& sign) {
        node_ = on_line(sign.place, Node::Kind::bullet);
        node_->level = sign.text == "--" ? 2 : 1;
    }

    void drop_node() {
        node_.reset();
        titled_ = enclosed_ = false;
    }

    void begin_bullet(const Slice& dashes) {
        node_ = on_line(dashes.place, Node::Kind::bullet);
        node_->level = static_cast<int>(dashes.text.size());
    }

    void slice(Slice text) {
        Node& node = *node_;
        if (node.kind == Node::Kind::bare && node.value.empty())
            node.place = on_line(text.place, node.kind).place;
        else if (!node.value.empty() && braces_ == Braces::tags)
            warn_of_indented_label(node, text, diagnostics_);
        node.value.slices.push_back(std::move(text));
    }

    // A row of `=` is of a merge only if one began above it.
    void conflict(const Slice& line) {
        in_conflict_ = in_conflict_ || line.text.starts_with('<');
        if (!in_conflict_ && line.text.starts_with('=')) return report<lines::line_of_dashes>(line);
        report<lines::conflict_line>(line);
    }

    void tag(const Slice& word) {
        const bool leaves_out = word.text.starts_with('!');
        node_->tags.push_back({word.text.substr(leaves_out ? 1 : 0), leaves_out, word.place});
    }

    void end_node() {
        Node node = *std::exchange(node_, std::nullopt);
        if (std::exchange(titled_, false)) return;
        if (std::exchange(enclosed_, false)) take_out_of(node);
        const auto label = std::exchange(awaits_value_, std::nullopt);
        if (label && node.kind == Node::Kind::bare) give_label(node, *label);
        if (node.kind == Node::Kind::bare && !read_pictured_bullet(node)) read_odd_label(node);
        if (is_slip_of_section(node)) mend_section(node);
        const bool section = node.kind == Node::Kind::field && node.label.text == "section";
        if (titled_comment_ && !section) open_titled(*titled_comment_);
        titled_comment_.reset();
        if (section)
            open_section(std::move(node));
        else if (node.kind == Node::Kind::bare && opens_title(node.value.slices.front()))
            open_titled(node.value.slices.front());
        else if (list_ && node.kind == Node::Kind::bullet)
            add_to_list(std::move(node));
        else
            take(std::move(node));
        std::move(comments_.begin(), comments_.end(), std::back_inserter(block_));
        comments_.clear();
    }

    void end_block() {
        end_list();
        if (block_.empty()) return;
        auto& blocks = tree_.sections.empty() ? tree_.heading : tree_.sections.back().blocks;
        blocks.push_back(std::exchange(block_, {}));
    }

    void fault(Severity severity, const Place& place, std::string text,
               MakeMend make_mend = nullptr) {
        if (++faults_ > most_faults) return;
        Edits mend;
        if (make_mend) mend = make_mend(source_.line(place.line), place);
        if (severity == Severity::warning)
            diagnostics_.warning(place, std::move(text), std::move(mend));
        else
            diagnostics_.error(place, std::move(text), std::move(mend));
    }

    template<typename Rule>
    void report(const Slice& found, Severity severity = Severity::error) {
        fault(severity, found.place, worded<grammar::message<Rule>>(found.text), make_mend<Rule>);
    }

    // `Education:` with nothing behind it is a title, `Responsibilities:` opens bullets that need
    // no label; of another label the value is missing.
    void field_without_value(const Slice& found) {
        const std::string label = folded_label(found.text.substr(0, found.text.find(':')));
        if (trade::means_bullets(label))
            return fault(Severity::error, found.place,
                         fill<messages::bullets_need_no_label>(in_quotes(found.text)),
                         take_out_line);
        if (!trade::find_word(label) && opens_title(found)) return open_titled(found);
        if (!trade::find_word(label) && has_dash_below(found.place.line)) return begin_list(found);
        if (braces_ == Braces::tags && is_label_or_guess(label) &&
            is_value_alone(source_.line(found.place.line + 1)))
            return await_value(found);
        report<lines::field_without_value>(found);
    }

    // What it holds is told from its entries all the same.
    void open_untitled(const Slice& found) {
        if (braces_ == Braces::text) return;
        open_section(section_node(found.place));
    }

    Tree finish() {
        end_block();
        if (faults_ > most_faults)
            diagnostics_.note({.file = tree_.file},
                              fill<messages::faults_left_out>(faults_, most_faults));
        return std::move(tree_);
    }

    // What a rule matched, up to the end of its first line.
    template<typename Input>
    Slice matched(const Input& in) const {
        const pegtl::position at = in.position();
        const std::string text = in.string();
        std::string line = text.substr(0, text.find('\n'));
        const auto number = static_cast<std::uint32_t>(at.line);
        const Place place{tree_.file, number,
                          static_cast<std::uint32_t>(at.column) + pulled_.shift_of(number),
                          static_cast<std::uint32_t>(line.size())};
        return {std::move(line), place};
    }

private:
    static void take_out_of(Node& node) {
        if (node.value.slices.size() != 1) return;
        Slice& slice = node.value.slices.front();
        if (unenclosed(slice.text) == slice.text) return;
        take_off_front(slice, 1);
        slice.text.pop_back();
        --slice.place.length;
    }

    // One message for a block, for it has one cause.
    void tell_pushed_in(std::uint32_t first, std::uint32_t last) {
        Edits mend;
        for (std::uint32_t line = first; line <= last; ++line)
            if (const std::uint32_t shift = pulled_.shift_of(line); shift > 0)
                mend.push_back({{tree_.file, line, 1, shift}, ""});
        const std::uint32_t shift = pulled_.shift_of(first);
        const std::string_view words = trimmed(source_.line(first).substr(shift));
        const Place place{tree_.file, first, shift + 1, static_cast<std::uint32_t>(words.size())};
        ++faults_;
        const bool item = source_.line(first).starts_with('-');
        const bool alone = first == last;
        diagnostics_.error(place,
                           item    ? fill<messages::item_of_list>(in_quotes(words), last)
                           : alone ? worded<grammar::message<lines::fold_of_nothing>>(words)
                                   : fill<messages::pushed_in>(in_quotes(words), last),
                           std::move(mend));
    }

    // `✅ Logged 40 samples`, in a section: a picture opens no bullet.
    bool read_pictured_bullet(Node& node) {
        Slice& first = node.value.slices.front();
        const std::string_view picture = picture_of_bullet(first.text);
        if (braces_ == Braces::text || tree_.sections.empty() || picture.empty()) return false;
        const std::size_t text = first.text.find_first_not_of("\uFE0F \t", picture.size());
        if (text == std::string::npos) return false;
        Slice sign{std::string(picture), first.place};
        sign.place.length = static_cast<std::uint32_t>(picture.size());
        ++faults_;
        Place all = first.place;
        all.length = static_cast<std::uint32_t>(text);
        diagnostics_.error(sign.place, worded<grammar::message<lines::foreign_bullet>>(sign.text),
                           {{all, "- "}});
        node.kind = Node::Kind::bullet;
        take_off_front(first, text);
        return true;
    }

    // `Phone Number*: 360 555 0142`, `✆ Phone: 360 555 0142`
    void read_odd_label(Node& node) {
        if (braces_ == Braces::text) return;
        const std::string& text = node.value.slices.front().text;
        const std::string label(label_amid_signs(text));
        if (!label.empty())
            make_field(node, label, text.find(':'),
                       text.find_first_not_of(" \t", text.find(':') + 1));
    }

    // A guess is told by who knows what it means here, with all that stands before the colon.
    void make_field(Node& node, const std::string& label, std::size_t colon, std::size_t value) {
        Slice& first = node.value.slices.front();
        give_label(node, {label, first.place});
        node.label.place.length = static_cast<std::uint32_t>(colon);
        if (trade::find_word(node.label.text)) {
            ++faults_;
            diagnostics_.error(
                node.label.place,
                worded<grammar::message<lines::marked_label>>(first.text.substr(0, colon + 1)),
                {{node.label.place, label}});
        }
        take_off_front(first, value);
    }

    void take(Node node) {
        end_list();
        block_.push_back(std::move(node));
    }

    bool has_dash_below(std::uint32_t line) const {
        return trimmed(source_.line(line + 1)).starts_with("- ");
    }

    // `Name:`, and what it is on the line below
    void await_value(const Slice& found) {
        const std::string typed(trimmed(found.text));
        const auto end = found.place.column + static_cast<std::uint32_t>(typed.size());
        const std::uint32_t line = found.place.line;
        ++faults_;
        diagnostics_.error(
            found.place,
            fill<messages::value_below>(in_quotes(typed), typed, trimmed(source_.line(line + 1))),
            {{{tree_.file, line, end,
               static_cast<std::uint32_t>(source_.line(line).size()) + 2 - end},
              " "}});
        awaits_value_ = Slice{typed.substr(0, typed.find(':')), found.place};
        awaits_value_->place.length = static_cast<std::uint32_t>(awaits_value_->text.size());
    }

    static void give_label(Node& node, const Slice& label) {
        node.kind = Node::Kind::field;
        node.spelled = label.text;
        node.label = {folded_label(label.text), label.place};
    }

    // `Lab:`, and what is in it on bullets below: read as the one line that it should be.
    void begin_list(const Slice& found) {
        const std::string label(trimmed(found.text.substr(0, found.text.find(':'))));
        fault(Severity::error, found.place,
              fill<messages::list_below>(in_quotes(found.text), label));
        list_ = on_line(found.place, Node::Kind::field);
        give_label(*list_, {label, found.place});
    }

    void add_to_list(Node bullet) {
        auto& slices = list_->value.slices;
        if (!slices.empty()) slices.back().text += ',';
        std::ranges::move(bullet.value.slices, std::back_inserter(slices));
    }

    void end_list() {
        if (!list_) return;
        Node node = *std::exchange(list_, std::nullopt);
        if (!node.value.slices.empty()) block_.push_back(std::move(node));
    }

    void open_section(Node node) {
        end_block();
        tree_.sections.push_back({std::move(node), {}});
    }

    // A title and nothing else, as it is typed by who does not know `section:`: in the heading,
    // below a blank line, or in capitals.
    bool opens_title(const Slice& line) const {
        const std::uint32_t number = line.place.line;
        const std::string_view title = bare_title(line.text);
        if (braces_ == Braces::text || title.empty()) return false;
        if (says_section(line.text) && title != line.text) return true;
        const bool ruled = line.text.front() == '~' && line.text.back() == '~'; // ~ education ~
        const bool may_be_small =
            ruled || (line.text.ends_with(':') && !trade::find_word(lower_case(title)));
        if (is_small_letter(title.front()) && !may_be_small) return false;
        const bool stands_apart = tree_.sections.empty() || number == 1 ||
                                  trimmed(source_.line(number - 1)).empty() ||
                                  std::ranges::none_of(title, is_small_letter);
        return stands_apart && trade::is_section_title(title);
    }

    void open_titled(const Slice& line) {
        const std::string_view whole = source_.line(line.place.line);
        const std::string title = capitalised(std::string(bare_title(whole)));
        const Place place{line.place.file, line.place.line, 1,
                          static_cast<std::uint32_t>(whole.size())};
        ++faults_;
        diagnostics_.error(place, fill<messages::title_alone>(in_quotes(whole), title),
                           {{place, "section: " + title}});
        Node node = section_node(place);
        node.value.slices.push_back({title, place});
        node.value.slices.front().place.column +=
            static_cast<std::uint32_t>(whole.find(bare_title(whole)));
        node.value.slices.front().place.length = static_cast<std::uint32_t>(title.size());
        open_section(std::move(node));
    }

    // `sections: Experience`, `secton: Skills`; in a list of skills, a group may have such a label.
    bool is_slip_of_section(const Node& node) const {
        constexpr std::array<std::string_view, 1> section{"section"};
        return braces_ == Braces::tags && node.kind == Node::Kind::field &&
               node.label.text != section.front() && slip_of(node.label.text, section) &&
               (tree_.sections.empty() || trade::is_section_title(node.value.joined()));
    }

    void mend_section(Node& node) {
        ++faults_;
        diagnostics_.error(node.label.place,
                           fill<messages::title_alone>(in_quotes(source_.line(node.place.line)),
                                                       node.value.joined()),
                           {{node.label.place, "section"}});
        node.label.text = node.spelled = "section";
    }

    Node on_line(const Place& place, Node::Kind kind) const {
        Node node;
        node.kind = kind;
        node.place = {place.file, place.line, 1,
                      static_cast<std::uint32_t>(source_.line(place.line).size())};
        return node;
    }

    const SourceFile& source_;
    Braces braces_;
    const PulledOut& pulled_;
    Diagnostics& diagnostics_;
    Tree tree_;
    Block block_;                         // the lines since the last blank one
    std::optional<Node> node_;            // the line being read
    std::optional<Slice> titled_comment_; // `# Education`, until a line says whether it is one
    std::optional<Node> list_;            // a label with its list on the lines below
    std::optional<Slice> awaits_value_;   // a label with its value on the line below
    std::vector<Node> comments_;          // that stand between the line being read and its folds
    std::size_t faults_ = 0;
    bool in_conflict_ = false;
    bool enclosed_ = false; // the value being read is in quotes or brackets, which is told
    bool titled_ = false;   // the line being read is a title, which is told
};

}
