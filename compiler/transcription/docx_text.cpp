// The text of a .docx (ECMA-376 part 1: WordprocessingML) to lines.
#include "compiler/transcription/read_old.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/transcription/flow.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/running_lines.hpp"
#include "compiler/transcription/style_table.hpp"
#include "compiler/transcription/xml_events.hpp"

#include <charconv>

namespace quoin::transcription {

namespace {

bool is_on(const XmlTag& tag) { // `<w:b/>`, `<w:b w:val="0"/>`
    const std::string_view value = tag.value("w:val");
    return value != "0" && value != "false" && value != "none";
}

double twentieths(std::string_view text) {
    return number_of(text).value_or(0) / 20;
}

// What the properties of a paragraph or of letters say, into a style.
void take_property(const XmlTag& tag, StyleLook& look) {
    if (tag.name == "w:b") look.strong = is_on(tag);
    if (tag.name == "w:i") look.slanted = is_on(tag);
    if (tag.name == "w:sz") look.size = number_of(tag.value("w:val")).value_or(22) / 2;
    if (tag.name == "w:outlineLvl")
        look.outline = static_cast<int>(number_of(tag.value("w:val")).value_or(9)) + 1;
    if (tag.name == "w:numId") look.listed = tag.value("w:val") != "0";
    if (tag.name == "w:spacing" && !tag.value("w:before").empty())
        look.above = twentieths(tag.value("w:before"));
    if (tag.name == "w:ind") {
        const std::string_view start = tag.value("w:start");
        look.left = twentieths(start.empty() ? tag.value("w:left") : start);
    }
}

class DocxStyles : public XmlHandler {
public:
    explicit DocxStyles(StyleTable& styles) : styles_(styles) {}

    void open(const XmlTag& tag) override {
        if (tag.name == "w:style") style_ = &styles_.at(tag.value("w:styleId"));
        if (!style_) return;
        if (tag.name == "w:basedOn") style_->parent = tag.value("w:val");
        take_property(tag, *style_);
    }
    void close(std::string_view name) override {
        if (name == "w:style") style_ = nullptr;
    }
    void text(std::string_view) override {}

private:
    StyleTable& styles_;
    StyleLook* style_ = nullptr;
};

class DocxBody : public XmlHandler {
public:
    DocxBody(const StyleTable& styles, Flow& flow) : styles_(styles), flow_(flow) {}

    void open(const XmlTag& tag) override {
        if (skipped_ > 0 || is_skipped(tag.name)) {
            ++skipped_;
            return;
        }
        if (tag.name == "w:drawing" || tag.name == "w:pict") ++drawings_;
        if (tag.name == "w:txbxContent") ++boxes_;
        if (tag.name == "w:p")
            open_paragraph();
        else if (tag.name == "w:r")
            letters_ = paragraph_;
        else if (tag.name == "w:pStyle")
            take_paragraph_style(tag);
        else if (tag.name == "w:rStyle")
            take_letter_style(tag);
        else if (tag.name == "w:ilvl")
            depth_ = static_cast<int>(number_of(tag.value("w:val")).value_or(0)) > 0 ? 2 : 1;
        else if (tag.name == "w:t" || tag.name == "w:tab" || tag.name == "w:br" ||
                 tag.name == "w:cr" || tag.name == "w:sym" || tag.name == "w:noBreakHyphen")
            open_text(tag);
        else if (in_run_properties_ || in_paragraph_properties_)
            take_property(tag, in_run_properties_ ? letters_ : own_);
        if (tag.name == "w:pPr") in_paragraph_properties_ = true;
        // those of a paragraph's end mark are of no letter
        if (tag.name == "w:rPr" && !in_paragraph_properties_) in_run_properties_ = true;
        open_table(tag.name);
    }

    void close(std::string_view name) override {
        if (skipped_ > 0) {
            --skipped_;
            return;
        }
        if (name == "w:t") in_text_ = false;
        if (name == "w:pPr") in_paragraph_properties_ = false;
        if (name == "w:rPr") in_run_properties_ = false;
        if (name == "w:p") flow_.end_paragraph();
        if (name == "w:tc") flow_.end_cell();
        if (name == "w:tr") flow_.end_row();
        if (name == "w:tbl") flow_.end_table();
    }

    void text(std::string_view text) override {
        if (!in_text_ || skipped_ > 0) return;
        begin();
        flow_.add_text(text, look());
    }

    std::size_t drawings() const { return drawings_; }
    std::size_t boxes() const { return boxes_; }

private:
    // Text that was deleted, codes of fields, a second form of what stands there already.
    static bool is_skipped(std::string_view name) {
        return name == "w:del" || name == "w:instrText" || name == "mc:Fallback" ||
               name == "w:moveFrom" || name == "w:delText" || name == "w:rPrChange" ||
               name == "w:pPrChange";
    }

    void open_paragraph() {
        flow_.end_paragraph();
        own_ = paragraph_ = {};
        depth_ = 1;
        begun_ = false;
        in_run_properties_ = in_paragraph_properties_ = false;
    }

    void take_paragraph_style(const XmlTag& tag) {
        paragraph_ = styles_.whole(tag.value("w:val"));
        paragraph_.name = tag.value("w:val");
    }

    void take_letter_style(const XmlTag& tag) {
        const StyleLook style = styles_.whole(tag.value("w:val"));
        if (style.strong) letters_.strong = style.strong;
        if (style.slanted) letters_.slanted = style.slanted;
        if (style.size) letters_.size = style.size;
    }

    void open_table(std::string_view name) {
        if (name == "w:tbl") flow_.begin_table();
        if (name == "w:tr") flow_.begin_row();
        if (name == "w:tc") flow_.begin_cell();
    }

    void open_text(const XmlTag& tag) {
        if (in_paragraph_properties_) return; // a tab stop
        if (tag.name == "w:t") in_text_ = true;
        if (tag.name == "w:t") return;
        begin();
        if (tag.name == "w:tab") flow_.add_tab();
        if (tag.name == "w:br" || tag.name == "w:cr") flow_.break_line();
        if (tag.name == "w:noBreakHyphen") flow_.add_text("-", look());
        if (tag.name == "w:sym") flow_.add_text("\u2022", look());
    }

    // The paragraph's own properties are known when its first letter is.
    void begin() {
        if (begun_ && flow_.in_paragraph()) return;
        begun_ = true;
        ParagraphLook look;
        look.listed = own_.listed.value_or(paragraph_.listed.value_or(false));
        look.left = own_.left.value_or(paragraph_.left.value_or(0));
        look.above = own_.above.value_or(paragraph_.above.value_or(0));
        look.depth = depth_;
        look.heading = own_.outline.value_or(paragraph_.outline.value_or(9)) == 1;
        flow_.begin_paragraph(look);
    }

    LetterLook look() const {
        LetterLook look;
        look.size = letters_.size.value_or(11);
        look.strong = letters_.strong.value_or(false);
        look.slanted = letters_.slanted.value_or(false);
        look.font = std::hash<std::string>{}(paragraph_.name);
        return look;
    }

    const StyleTable& styles_;
    Flow& flow_;
    StyleLook paragraph_, own_, letters_;
    int depth_ = 1;
    bool begun_ = false, in_text_ = false, in_run_properties_ = false;
    bool in_paragraph_properties_ = false;
    std::size_t skipped_ = 0, drawings_ = 0, boxes_ = 0;
};

bool read_body(const PackageParts& parts, std::string_view name, DocxBody& body) {
    const auto part = parts.find(name);
    return part == parts.end() || read_xml(part->second, body);
}

}

OldOrFault lines_of_docx(const PackageParts& parts) {
    if (!parts.contains("word/document.xml")) return fill<messages::no_text_part>();
    StyleTable table;
    DocxStyles styles(table);
    if (const auto part = parts.find("word/styles.xml"); part != parts.end())
        read_xml(part->second, styles);
    Flow flow;
    DocxBody body(table, flow);
    for (const auto& [name, bytes] : parts)
        if (name.starts_with("word/header")) read_xml(bytes, body);
    if (!read_body(parts, "word/document.xml", body)) return fill<messages::damaged_part>();
    for (const auto& [name, bytes] : parts)
        if (name.starts_with("word/foot") || name.starts_with("word/end")) read_xml(bytes, body);
    OldDocument document{flow.result(), {}, false};
    mark_running_lines(document.lines);
    if (body.drawings() > body.boxes())
        document.remarks.push_back(fill<messages::pictures>("a picture or drawing"));
    if (body.boxes() > 0) document.remarks.push_back(fill<messages::text_boxes>());
    return document;
}

}
