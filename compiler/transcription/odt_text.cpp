// The text of an .odt (OpenDocument 1.3 part 3) to lines.
#include "compiler/transcription/read_old.hpp"

#include "compiler/transcription/flow.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/running_lines.hpp"
#include "compiler/transcription/style_table.hpp"
#include "compiler/transcription/xml_events.hpp"

#include <algorithm>
#include <utility>

namespace quoin::transcription {

namespace {

class OdtStyles {
public:
    explicit OdtStyles(StyleTable& styles) : styles_(styles) {}

    void open(const XmlTag& tag) {
        if (tag.name == "style:style") {
            style_ = &styles_.at(tag.value("style:name"));
            style_->parent = tag.value("style:parent-style-name");
            if (const auto level = number_of(tag.value("style:default-outline-level")))
                style_->outline = static_cast<int>(*level);
        } else if (style_ && tag.name == "style:text-properties") {
            take_letters(tag);
        } else if (style_ && tag.name == "style:paragraph-properties") {
            if (const auto left = points_of(tag.value("fo:margin-left"))) style_->left = left;
            if (const auto above = points_of(tag.value("fo:margin-top"))) style_->above = above;
        }
    }
    void close(std::string_view name) {
        if (name == "style:style") style_ = nullptr;
    }

private:
    void take_letters(const XmlTag& tag) {
        const std::string_view weight = tag.value("fo:font-weight");
        const std::string_view slant = tag.value("fo:font-style");
        if (!weight.empty()) style_->strong = weight == "bold" || weight >= "600";
        if (!slant.empty()) style_->slanted = slant != "normal";
        if (const auto size = points_of(tag.value("fo:font-size"))) style_->size = size;
    }

    StyleTable& styles_;
    StyleLook* style_ = nullptr;
};

class OdtReader : public XmlHandler {
public:
    OdtReader(StyleTable& table, Flow& flow) : table_(table), styles_(table), flow_(flow) {}

    void open(const XmlTag& tag) override {
        styles_.open(tag);
        if (skipped_ > 0 || is_skipped(tag.name)) {
            ++skipped_;
            return;
        }
        if (tag.name == "draw:image") ++pictures_;
        if (tag.name == "draw:text-box") ++boxes_;
        if (tag.name == "text:list") ++list_depth_;
        if (tag.name == "text:list-item" || tag.name == "text:list-header") fresh_item_ = true;
        if (tag.name == "text:p" || tag.name == "text:h")
            open_paragraph(tag);
        else if (tag.name == "text:span")
            open_span(tag);
        else if (flow_.in_paragraph())
            open_blank(tag);
        open_table(tag.name);
    }

    void close(std::string_view name) override {
        styles_.close(name);
        if (skipped_ > 0) {
            --skipped_;
            return;
        }
        if (name == "text:list" && list_depth_ > 0) --list_depth_;
        if (name == "text:p" || name == "text:h") {
            flow_.end_paragraph();
            spans_ = outer_.empty() ? Spans{} : std::move(outer_.back());
            if (!outer_.empty()) outer_.pop_back();
        }
        if (name == "text:span" && spans_.size() > 1) spans_.pop_back();
        if (name == "table:table-cell") flow_.end_cell();
        if (name == "table:table-row") flow_.end_row();
        if (name == "table:table") flow_.end_table();
    }

    void text(std::string_view text) override {
        if (skipped_ == 0 && !spans_.empty()) flow_.add_text(text, spans_.back());
    }

    std::size_t pictures() const { return pictures_; }
    std::size_t boxes() const { return boxes_; }

private:
    static bool is_skipped(std::string_view name) {
        return name == "office:annotation" || name == "text:tracked-changes" ||
               name == "office:meta" || name == "office:scripts" || name == "svg:title" ||
               name == "svg:desc" || name == "office:forms";
    }

    void open_paragraph(const XmlTag& tag) {
        const StyleLook style = table_.whole(tag.value("text:style-name"));
        ParagraphLook look;
        look.left = style.left.value_or(0) + 18 * static_cast<double>(list_depth_);
        look.above = style.above.value_or(0);
        look.listed = list_depth_ > 0 && std::exchange(fresh_item_, false);
        look.depth = list_depth_ > 1 ? 2 : 1;
        look.heading =
            tag.name == "text:h" && number_of(tag.value("text:outline-level")).value_or(1) < 2;
        flow_.begin_paragraph(look);
        LetterLook letters;
        letters.font = std::hash<std::string_view>{}(tag.value("text:style-name"));
        outer_.push_back(std::exchange(spans_, {with(style, letters)}));
    }

    void open_span(const XmlTag& tag) {
        if (spans_.empty()) return;
        spans_.push_back(with(table_.whole(tag.value("text:style-name")), spans_.back()));
    }

    static LetterLook with(const StyleLook& style, LetterLook look) {
        look.size = style.size.value_or(look.size);
        look.strong = style.strong.value_or(look.strong);
        look.slanted = style.slanted.value_or(look.slanted);
        return look;
    }

    void open_blank(const XmlTag& tag) {
        constexpr double most_blanks = 100;
        if (tag.name == "text:tab") flow_.add_tab();
        if (tag.name == "text:line-break") flow_.break_line();
        if (tag.name != "text:s" || spans_.empty()) return;
        const double count =
            std::clamp(number_of(tag.value("text:c")).value_or(1), 1.0, most_blanks);
        if (count > 3)
            flow_.add_tab();
        else
            flow_.add_text(" ", spans_.back());
    }

    void open_table(std::string_view name) {
        if (name == "table:table") flow_.begin_table();
        if (name == "table:table-row") flow_.begin_row();
        if (name == "table:table-cell") flow_.begin_cell();
    }

    StyleTable& table_;
    OdtStyles styles_;
    Flow& flow_;
    using Spans = std::vector<LetterLook>;
    Spans spans_;              // open, the paragraph's own first
    std::vector<Spans> outer_; // of the paragraphs that boxes with text stand in
    std::size_t list_depth_ = 0, skipped_ = 0, pictures_ = 0, boxes_ = 0;
    bool fresh_item_ = false;
};

}

OldOrFault lines_of_odt(const PackageParts& parts) {
    const auto content = parts.find("content.xml");
    if (content == parts.end()) return fill<messages::no_text_part>();
    StyleTable table;
    Flow flow;
    OdtReader reader(table, flow);
    // heads and feet of pages stand among the styles
    if (const auto styles = parts.find("styles.xml"); styles != parts.end())
        read_xml(styles->second, reader);
    if (!read_xml(content->second, reader)) return fill<messages::damaged_part>();
    OldDocument document{flow.result(), {}, false};
    mark_running_lines(document.lines);
    if (reader.pictures() > 0)
        document.remarks.push_back(fill<messages::pictures>("a picture or drawing"));
    if (reader.boxes() > 0) document.remarks.push_back(fill<messages::text_boxes>());
    return document;
}

}
