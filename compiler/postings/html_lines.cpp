// Lines of a page of HTML, by libxml2's parser, which calls for each tag and each text; no tree is
// built. Elements that nest deeper than any page's are where reading stops.
#include "compiler/postings/lines.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/base/xml_text.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/hidden_styles.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/table_columns.hpp"
#include "compiler/postings/tag_attributes.hpp"

#include <libxml/HTMLparser.h>

#include <algorithm>
#include <memory>
#include <new>
#include <utility>

namespace quoin::postings {

namespace {

constexpr std::size_t deepest = 1000;
constexpr std::size_t longest_bold_heading = 60;
constexpr std::size_t longest_class_heading = 160; // a page's `header` may be more than one
constexpr std::string_view blanks = " \t\r\n\f";

struct Element {
    bool hidden = false;  // it, or what it stands in
    bool heading = false; // likewise
    bool minor = false;
    bool item = false;
    bool bold = false;
};

// An attribute that says so, or a style that shows nothing.
bool is_hidden_by(std::string_view name, std::string_view value) {
    if (name == "hidden") return true;
    if (name == "aria-hidden") return lower_case(value) == "true";
    if (name == "type") return lower_case(value) == "hidden";
    return name == "style" && hides(value);
}

// `section-title`, `h3`, `list-item`: what pages call the parts that they have no elements for.
bool is_called(std::string_view classes, List list) {
    const std::vector<std::string> words = parted(lower_case(classes), " -_\t\n");
    return !words.empty() && std::ranges::any_of(words, [&](const std::string& word) {
        return is_one_of(word, list);
    });
}

class PageReader {
public:
    std::vector<Line> read(std::string_view page) {
        const std::string html = with_few_attributes(page);
        htmlSAXHandler calls{};
        calls.startElement = [](void* self, const xmlChar* name, const xmlChar** attributes) {
            static_cast<PageReader*>(self)->start(view_of(name), attributes);
        };
        calls.endElement = [](void* self, const xmlChar* name) {
            static_cast<PageReader*>(self)->end(view_of(name));
        };
        calls.characters = [](void* self, const xmlChar* text, int length) {
            static_cast<PageReader*>(self)->add(
                view_of(text).substr(0, static_cast<std::size_t>(length)));
        };
        calls.ignorableWhitespace = calls.cdataBlock = calls.characters;
        const std::unique_ptr<htmlParserCtxt, void (*)(htmlParserCtxtPtr)> parser(
            htmlCreatePushParserCtxt(&calls, this, nullptr, 0, nullptr, XML_CHAR_ENCODING_UTF8),
            htmlFreeParserCtxt);
        if (!parser) throw std::bad_alloc();
        parser_ = parser.get();
        htmlCtxtUseOptions(parser_, HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING |
                                        HTML_PARSE_NONET);
        htmlParseChunk(parser_, html.data(), static_cast<int>(html.size()), 1);
        close_line();
        columns_.end_tables();
        return std::move(lines_);
    }

private:
    const Element* top() const { return elements_.empty() ? nullptr : &elements_.back(); }

    void start(std::string_view name, const xmlChar** attributes) {
        if (name == "br" || name == "hr") return close_line();
        Element element = top() ? *top() : Element{};
        const bool block = is_one_of(name, List::blocks_of_html);
        if (block) close_line();
        read_table(name);
        if (is_one_of(name, List::unseen_of_html)) element.hidden = true;
        if (block)
            element.item =
                name == "li" || name == "dd" || name == "tr" || (element.item && name == "p");
        for (; attributes != nullptr && *attributes != nullptr; attributes += 2)
            see(view_of(attributes[0]), view_of(attributes[1]), block, element);
        if (is_one_of(name, List::headings_of_html)) element.heading = true;
        if (name == "dt" || name == "th") element.heading = element.minor = true;
        element.bold = element.bold || name == "b" || name == "strong";
        elements_.push_back(element);
        names_.emplace_back(name);
        if (elements_.size() > deepest) xmlStopParser(parser_);
    }

    void see(std::string_view name, std::string_view value, bool block, Element& element) const {
        if (is_hidden_by(name, value) || (name == "class" && styles_.hide_class(value)) ||
            (name == "id" && styles_.hide_name(value)))
            element.hidden = true;
        if (!block || (name != "class" && name != "role")) return;
        if (is_called(value, List::classes_of_headings)) element.heading = true;
        if (is_called(value, List::classes_of_items)) element.item = true;
    }

    void end(std::string_view name) {
        if (names_.empty() || names_.back() != name) return; // of a line's end
        if (is_one_of(name, List::blocks_of_html)) close_line();
        if (name == "tr") columns_.end_row();
        if (name == "table") columns_.end_table();
        names_.pop_back();
        elements_.pop_back();
    }

    void add(std::string_view text) {
        const Element element = top() ? *top() : Element{};
        if (!names_.empty() && names_.back() == "style") styles_.read(text);
        if (element.hidden) return;
        const bool blank = text.find_first_not_of(blanks) == text.npos;
        if (!blank && text_.find_first_not_of(blanks) == text_.npos) {
            line_ = {{}, element.heading, element.minor, element.item, true, number()};
            all_bold_ = true;
        }
        if (!blank) {
            if (all_bold_ && !element.bold && is_run_in(text)) {
                if (element.item) {
                    if (is_letter_or_figure(trimmed(text_, blanks).back())) text_ += ": ";
                } else {
                    close_line();
                    line_ = {{}, element.heading, element.minor, false, false, number()};
                }
            }
            all_bold_ = all_bold_ && element.bold;
        }
        text_ += text;
    }

    // A few bold words with a sentence after them are its heading: `Requirements Two years`.
    bool is_run_in(std::string_view after) const {
        const std::string_view run = trimmed(text_, blanks), next = trimmed(after, blanks);
        if (run.size() > longest_bold_heading || run.empty() || next.empty()) return false;
        if (std::string_view(":.!?").find(run.back()) != std::string_view::npos ||
            run.ends_with("\u2026"))
            return true;
        return is_letter_or_figure(run.back()) && is_capital_letter(next.front());
    }

    void read_table(std::string_view name) {
        if (name == "table") columns_.start_table();
        if (name == "tr") columns_.start_row();
        if (name != "td" && name != "th") return;
        if (columns_.parted())
            close_line();
        else if (name == "td")
            part_cells();
        columns_.start_cell();
    }

    // The cells of a row say one thing, `Spanish - a plus`, but where the first names a part.
    void part_cells() {
        if (is_label(plain_line(text_))) {
            close_line();
            lines_.back().heading = lines_.back().minor = true;
            lines_.back().item = false;
            return;
        }
        if (text_.find_first_not_of(blanks) != text_.npos) text_ += " - ";
    }

    static bool is_label(std::string_view cell) {
        constexpr std::ptrdiff_t most_blanks_of_labels = 2;
        const std::ptrdiff_t blanks_in = std::ranges::count(cell, ' ');
        const Part part = part_headed(cell);
        return !cell.empty() && blanks_in <= most_blanks_of_labels && part.known &&
               (part.sure || blanks_in == 0);
    }

    void close_line() {
        for (char& c : text_)
            if (c == '\n' || c == '\r' || c == '\f') c = ' ';
        line_.text = plain_line(text_);
        text_.clear();
        line_.item = take_bullet(line_.text) || line_.item;
        if (line_.text.empty()) return;
        if (line_.text.size() > longest_class_heading) line_.heading = false;
        if (all_bold_ && !line_.item && line_.text.size() <= longest_bold_heading)
            line_.heading = true;
        lines_.push_back(std::move(line_));
    }

    std::uint32_t number() const {
        const int line = xmlSAX2GetLineNumber(parser_);
        return line > 0 ? static_cast<std::uint32_t>(line) : 0;
    }

    htmlParserCtxtPtr parser_ = nullptr;
    std::vector<Element> elements_;
    std::vector<std::string> names_; // of the elements
    std::vector<Line> lines_;
    TableColumns columns_{lines_};
    HiddenStyles styles_;
    Line line_;        // that is being read
    std::string text_; // of it
    bool all_bold_ = false;
};

}

bool is_html(std::string_view text) {
    constexpr std::size_t looked_at = 4096;
    const std::string start = lower_case(text.substr(0, looked_at));
    constexpr std::string_view opening[] = {"<!doctype html", "<html", "<head", "<body"};
    if (std::ranges::any_of(opening,
                            [&](std::string_view tag) { return start.find(tag) != start.npos; }))
        return true;
    constexpr std::string_view tags[] = {"</p>", "</li>", "</div>", "</h1>", "</h2>", "</span>"};
    return std::ranges::any_of(tags,
                               [&](std::string_view tag) { return start.find(tag) != start.npos; });
}

std::vector<Line> html_lines(std::string_view html) {
    return PageReader().read(html);
}

}
