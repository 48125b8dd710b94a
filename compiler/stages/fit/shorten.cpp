// Runs are tried from the shortest up, those too narrow to save a line left out.
#include "compiler/stages/fit/shorten.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/counted_work.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace quoin::fit {

namespace {

struct Unit { // its spaces and separators left out
    std::size_t begin = 0, end = 0;
    bool stays = false;
};
using Chain = std::vector<Unit>; // in one text

bool may_go(const composition::Origin& origin) {
    return origin.part != composition::TextPart::fixed;
}

bool of_one_text(const composition::Origin& a, const composition::Origin& b) {
    return (a.part == composition::TextPart::words) == (b.part == composition::TextPart::words);
}

// How deep in parentheses and quotations the text is before each byte.
std::vector<int> depths(std::string_view text) {
    constexpr std::array<std::string_view, 3> opening = {"(", "[", "“"};
    constexpr std::array<std::string_view, 3> closing = {")", "]", "”"};
    std::vector<int> depths(text.size() + 1);
    int depth = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        depths[at] = depth;
        const auto stands_here = [&](std::string_view sign) {
            return text.substr(at).starts_with(sign);
        };
        if (std::ranges::any_of(opening, stands_here)) ++depth;
        if (std::ranges::any_of(closing, stands_here) && depth > 0) --depth;
    }
    depths.back() = depth;
    return depths;
}

// Byte offsets, in the text's order, of what follows each place where a line may end.
std::vector<std::size_t> line_ends_in(const composition::Paragraph& paragraph) {
    std::vector<std::size_t> run_begins;
    std::size_t size = 0;
    for (std::size_t run = 0; run < paragraph.runs.size(); ++run) {
        run_begins.push_back(size);
        if (run >= paragraph.label_runs) size += paragraph.runs[run].text.size();
    }
    std::vector<std::size_t> offsets;
    for (const composition::BreakPoint& point : paragraph.breaks) {
        const composition::Run& run = paragraph.runs[point.run];
        offsets.push_back(run_begins[point.run] + (point.glyph < run.glyphs.size()
                                                       ? run.glyphs[point.glyph].text_begin
                                                       : run.text.size()));
    }
    return offsets;
}

class Units {
public:
    explicit Units(const composition::Paragraph& paragraph)
        : origins_(paragraph.origins), text_(text_of(paragraph)), depths_(depths(text_)),
          line_ends_(line_ends_in(paragraph)) {}

    std::vector<Chain> chains() const {
        std::vector<Chain> chains;
        for (std::size_t first = 0; first < origins_.size();) {
            std::size_t past = first + 1;
            while (past < origins_.size() && may_go(origins_[past]) &&
                   of_one_text(origins_[first], origins_[past]))
                ++past;
            if (origins_[first].part == composition::TextPart::words)
                chains.push_back(words(first, past));
            if (origins_[first].part == composition::TextPart::item)
                chains.push_back(items(first, past));
            first = may_go(origins_[first]) ? past : first + 1;
        }
        return chains;
    }

private:
    bool marked(std::size_t offset) const {
        const auto after =
            std::ranges::upper_bound(origins_, offset, {}, &composition::Origin::begin);
        return after != origins_.begin() && std::prev(after)->marked;
    }

    Chain words(std::size_t first, std::size_t past) const {
        const std::size_t begin = origins_[first].begin, end = origins_[past - 1].end;
        Chain chain{{begin, end}};
        for (const std::size_t at : line_ends_) {
            if (at <= begin || at >= end || text_[at - 1] != ' ') continue;
            if (marked(at - 1) || depths_[at] > depths_[begin]) continue;
            const std::size_t visible = text_.find_last_not_of(' ', at - 1);
            if (visible == std::string::npos || visible < chain.back().begin) continue;
            chain.back().end = visible + 1;
            chain.push_back({at, end});
        }
        for (Unit& unit : chain)
            unit.stays =
                has_digit(std::string_view(text_).substr(unit.begin, unit.end - unit.begin));
        return chain;
    }

    Chain items(std::size_t first, std::size_t past) const {
        Chain chain;
        bool parted = true;
        for (std::size_t i = first; i < past; ++i) {
            const bool separator = origins_[i].part == composition::TextPart::separator;
            if (!separator && parted) chain.push_back({origins_[i].begin, 0});
            if (!separator) chain.back().end = origins_[i].end;
            parted = separator;
        }
        return chain;
    }

    const std::vector<composition::Origin>& origins_;
    std::string text_;
    std::vector<int> depths_;
    std::vector<std::size_t> line_ends_;
};

// What is left of one run; `begin` is where it begins in the paragraph's text.
struct Remains {
    composition::Run run;
    std::vector<std::uint32_t> glyph_at; // the new index of each glyph, and of their end
};

Remains remains_of(const composition::Run& run, std::size_t begin, TextRange range) {
    const std::size_t end = begin + run.text.size();
    const std::size_t from = std::clamp(range.begin, begin, end) - begin;
    const std::size_t to = std::clamp(range.end, begin, end) - begin;
    Remains left{run, {}};
    left.run.text.erase(from, to - from);
    left.run.glyphs.clear();
    for (fonts::Glyph glyph : run.glyphs) {
        left.glyph_at.push_back(static_cast<std::uint32_t>(left.run.glyphs.size()));
        if (glyph.text_begin >= from && glyph.text_begin < to) continue;
        if (glyph.text_begin >= to) glyph.text_begin -= static_cast<std::uint32_t>(to - from);
        left.run.glyphs.push_back(glyph);
    }
    left.glyph_at.push_back(static_cast<std::uint32_t>(left.run.glyphs.size()));
    return left;
}

// Natural width before each byte of the text, in em.
std::vector<double> widths_before(const composition::Paragraph& paragraph) {
    std::vector<double> widths;
    double width = 0;
    for (std::size_t r = paragraph.label_runs; r < paragraph.runs.size(); ++r) {
        const composition::Run& run = paragraph.runs[r];
        std::vector<double> advances(run.text.size());
        for (const fonts::Glyph& glyph : run.glyphs)
            if (glyph.text_begin < advances.size())
                advances[glyph.text_begin] += lines::advance(run, glyph);
        for (const double each : advances) {
            widths.push_back(width);
            width += each;
        }
    }
    widths.push_back(width);
    return widths;
}

std::vector<Shortening> by_length(const composition::Paragraph& paragraph) {
    const std::string text = text_of(paragraph);
    std::vector<std::size_t> characters(text.size() + 1); // before each byte
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length =
            std::min(first_character(std::string_view(text).substr(at)).length, text.size() - at);
        for (std::size_t i = 1; i <= length; ++i)
            characters[at + i] = characters[at] + 1;
        at += length;
    }
    std::vector<Shortening> all;
    for (const TextRange range : removable_runs(paragraph))
        all.push_back({0, characters[range.end] - characters[range.begin], range});
    std::stable_sort(all.begin(), all.end(), [](const Shortening& a, const Shortening& b) {
        return a.characters != b.characters ? a.characters < b.characters
                                            : a.range.begin > b.range.begin;
    });
    return all;
}

}

std::string text_of(const composition::Paragraph& paragraph) {
    std::string text;
    for (std::size_t run = paragraph.label_runs; run < paragraph.runs.size(); ++run)
        text += paragraph.runs[run].text;
    return text;
}

composition::Paragraph without(const composition::Paragraph& paragraph, TextRange range) {
    composition::Paragraph left = paragraph;
    left.origins.clear();
    left.breaks.clear();
    auto point = paragraph.breaks.begin();
    std::size_t begin = 0;
    for (std::uint32_t r = paragraph.label_runs; r < paragraph.runs.size(); ++r) {
        const composition::Run& run = paragraph.runs[r];
        Remains remains = remains_of(run, begin, range);
        for (; point != paragraph.breaks.end() && point->run == r; ++point) {
            const std::size_t at =
                begin + (point->glyph < run.glyphs.size() ? run.glyphs[point->glyph].text_begin
                                                          : run.text.size());
            const std::uint32_t glyph = remains.glyph_at[point->glyph];
            if ((at > range.begin && at <= range.end) || glyph == 0) continue;
            left.breaks.push_back(*point);
            left.breaks.back().glyph = glyph;
        }
        left.runs[r] = std::move(remains.run);
        begin += run.text.size();
    }
    return left;
}

std::vector<TextRange> removable_runs(const composition::Paragraph& paragraph) {
    const std::vector<Chain> chains = Units(paragraph).chains();
    std::size_t units = 0;
    for (const Chain& chain : chains)
        units += chain.size();
    std::vector<TextRange> runs;
    if (units > most_units) return runs;
    for (const Chain& chain : chains)
        for (std::size_t first = 1; first < chain.size(); ++first)
            for (std::size_t last = first; last < chain.size() && !chain[last].stays; ++last)
                runs.push_back({chain[first - 1].end, chain[last].end});
    return runs;
}

std::vector<Shortening> shortenings(const composition::Paragraph& paragraph, double measure,
                                    int most, std::size_t& bytes_left) {
    std::vector<Shortening> best;
    const int lines = lines::MeasuredParagraph(paragraph, measure).line_count(measure);
    const auto wanted = static_cast<std::size_t>(std::max(0, std::min(most, lines - 1)));
    if (wanted == 0) return best;
    const std::vector<double> widths = widths_before(paragraph);
    for (Shortening each : by_length(paragraph)) {
        if (best.size() == wanted) break;
        // a line holds its room and the spaces that hang past it, less than an em
        const auto lines_left = static_cast<double>(lines - 1 - static_cast<int>(best.size()));
        const double width = widths[each.range.end] - widths[each.range.begin];
        if (widths.back() - width >
            lines_left * (measure - paragraph.indent + paragraph.turn_over + 1))
            continue;
        if (bytes_left < widths.size()) {
            bytes_left = 0;
            break;
        }
        bytes_left -= widths.size();
        count_work(Work::removals, widths.size());
        const composition::Paragraph shorter = without(paragraph, each.range);
        each.lines = lines - lines::MeasuredParagraph(shorter, measure).line_count(measure);
        for (auto saved = static_cast<int>(best.size()) + 1;
             saved <= each.lines && best.size() < wanted; ++saved) {
            best.push_back(each);
            best.back().lines = saved;
        }
    }
    return best;
}

}
