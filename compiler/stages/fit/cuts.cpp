// Pieces first, then the least that does the rest, each plan checked on the page itself.
#include "compiler/stages/fit/cuts.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/fit/cheapest.hpp"
#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/fit/shorten.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

namespace quoin::fit {

namespace {

constexpr double per_point = 1e9; // heights are whole numbers while they are chosen among

std::string joined_lines(const composition::Paragraph& paragraph,
                         std::span<const lines::Line> lines) {
    std::string text;
    for (const lines::Line& line : lines) {
        for (std::uint32_t r = line.begin.run; r < paragraph.runs.size() && r <= line.end.run;
             ++r) {
            const composition::Run& run = paragraph.runs[r];
            const auto byte = [&](std::uint32_t glyph) {
                return glyph < run.glyphs.size() ? run.glyphs[glyph].text_begin : run.text.size();
            };
            const std::size_t from = r == line.begin.run ? byte(line.begin.glyph) : 0;
            const std::size_t to = r == line.end.run ? byte(line.end.glyph) : run.text.size();
            text += run.text.substr(from, to - from);
        }
    }
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

// Where bytes [begin, end) of the text stand in the source, one place a line.
std::vector<Place> places_of(const composition::Paragraph& paragraph, TextRange range) {
    std::vector<Place> places;
    for (const composition::Origin& origin : paragraph.origins) {
        if (origin.end <= range.begin || origin.begin >= range.end || origin.place.line == 0)
            continue;
        if (origin.part == composition::TextPart::separator) continue;
        Place place = origin.place;
        if (place.length == origin.end - origin.begin) {
            const std::size_t from = std::max(range.begin, origin.begin);
            place.column += static_cast<std::uint32_t>(from - origin.begin);
            place.length = static_cast<std::uint32_t>(std::min(range.end, origin.end) - from);
        }
        if (place.length == 0) continue; // a fold
        if (!places.empty() && places.back().file == place.file &&
            places.back().line == place.line && place.column >= places.back().column)
            places.back().length = place.column + place.length - places.back().column;
        else
            places.push_back(place);
    }
    if (places.empty()) places.push_back(paragraph.place);
    return places;
}

class Planner {
public:
    Planner(const composition::Composition& composition, const theme::Theme& theme,
            const model::Settings& settings)
        : composition_(composition),
          choices_(choices_of(theme, settings, characters_in_em(composition))),
          least_(least_setting(choices_)),
          measure_((least_.paper_width - 2 * least_.side_margin) / least_.size),
          pages_(static_cast<std::size_t>(std::max(*settings.pages, 1))), rest_(composition) {
        for (const composition::Paragraph& paragraph : composition.paragraphs)
            counts_.push_back(lines::MeasuredParagraph(paragraph, measure_).line_count(measure_));
    }

    Cuts run() {
        Cuts cuts;
        cuts.pieces = needed_pieces();
        cuts.enough = cuts.either = fits(cuts.pieces);
        if (cuts.either) {
            cuts.words = trims({}).value_or(std::vector<Cut>{});
        } else if (auto words = trims(cuts.pieces)) {
            cuts.words = std::move(*words);
            cuts.enough = true;
        }
        cuts.all_tried = bytes_left_ > 0;
        const auto by_place = [](const Cut& a, const Cut& b) { return a.paragraph < b.paragraph; };
        std::stable_sort(cuts.pieces.begin(), cuts.pieces.end(), by_place);
        std::stable_sort(cuts.words.begin(), cuts.words.end(), [](const Cut& a, const Cut& b) {
            return a.characters * static_cast<std::size_t>(b.lines) <
                   b.characters * static_cast<std::size_t>(a.lines);
        });
        return cuts;
    }

private:
    const std::vector<composition::Paragraph>& paragraphs() const {
        return composition_.paragraphs;
    }

    // The height that is too much for each column with these cuts made, in pt.
    std::vector<double> beyond(const std::vector<Cut>& cuts) {
        std::vector<int> counts = counts_;
        for (std::size_t p = 0; p < counts.size(); ++p)
            rest_.paragraphs[p].gap = paragraphs()[p].gap;
        for (const Cut& cut : cuts) {
            if (cut.kind == Cut::Kind::words) {
                counts[cut.paragraph] -= cut.lines;
                continue;
            }
            const std::size_t next = cut.paragraph + cut.paragraphs;
            std::fill(counts.begin() + cut.paragraph,
                      counts.begin() + static_cast<std::ptrdiff_t>(next), 0);
            if (cut.kind == Cut::Kind::entry && next < counts.size() &&
                paragraphs()[next].style != theme::StyleName::section)
                rest_.paragraphs[next].gap = rest_.paragraphs[cut.paragraph].gap; // its place
        }
        std::vector<double> heights;
        for (const Column& column : make_columns(rest_, counts)) {
            constexpr double trace = 1e-6; // pt: sums round unlike
            const bool fit = page_count(column, least_) <= pages_;
            heights.push_back(fit ? 0 : std::max(height_beyond(column, least_, pages_), trace));
        }
        return heights;
    }

    bool fits(const std::vector<Cut>& cuts) {
        return std::ranges::all_of(beyond(cuts), [](double height) { return height <= 0; });
    }

    bool stands_in(const composition::Paragraph& paragraph, std::size_t column,
                   std::size_t columns) const {
        return columns == 1 || (paragraph.region == composition::Region::side) == (column == 1);
    }

    Cut whole(Cut::Kind kind, std::size_t first, std::size_t past) const {
        Cut cut;
        cut.kind = kind;
        cut.paragraph = static_cast<std::uint32_t>(first);
        cut.paragraphs = static_cast<std::uint32_t>(past - first);
        cut.lines = std::accumulate(counts_.begin() + static_cast<std::ptrdiff_t>(first),
                                    counts_.begin() + static_cast<std::ptrdiff_t>(past), 0);
        for (std::size_t p = first; p < past; ++p) {
            cut.characters += characters_in(text_of(paragraphs()[p]));
            cut.places.push_back(paragraphs()[p].place);
        }
        return cut;
    }

    // In the order they are offered in.
    std::vector<Cut> pieces() const {
        std::vector<Cut> entries, bullets;
        for (std::size_t p = 0, past = 0; p < paragraphs().size(); p = past) {
            const composition::Paragraph& first = paragraphs()[p];
            const auto goes_on = [&](const composition::Paragraph& next) {
                return first.entry != 0 && next.entry == first.entry &&
                       (first.spare || next.bullet == first.bullet);
            };
            for (past = p + 1; past < paragraphs().size() && goes_on(paragraphs()[past]);)
                ++past;
            if (first.spare)
                entries.push_back(whole(Cut::Kind::entry, p, past));
            else if (first.bullet > trade::most_bullets && first.gap == theme::GapName::bullet)
                bullets.push_back(whole(Cut::Kind::bullet, p, past));
        }
        std::reverse(bullets.begin(), bullets.end());
        std::stable_sort(bullets.begin(), bullets.end(), [this](const Cut& a, const Cut& b) {
            return paragraphs()[a.paragraph].bullet > paragraphs()[b.paragraph].bullet;
        });
        std::move(bullets.begin(), bullets.end(), std::back_inserter(entries));
        return entries;
    }

    std::vector<Cut> needed_pieces() {
        std::vector<Cut> taken = pieces();
        if (!fits(taken)) return taken;
        std::size_t few = 0, many = taken.size(); // too few, and enough
        while (many - few > 1) {
            const std::size_t middle = (few + many) / 2;
            const std::vector<Cut> first(taken.begin(),
                                         taken.begin() + static_cast<std::ptrdiff_t>(middle));
            (fits(first) ? many : few) = middle;
        }
        taken.resize(many);
        if (taken.size() > most_lines_to_trim) return taken;
        for (std::size_t i = 0; i < taken.size();) {
            std::vector<Cut> fewer = taken;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            if (fits(fewer))
                taken = std::move(fewer);
            else
                ++i;
        }
        return taken;
    }

    // A bullet by itself: not its entry's first, no inner ones left without it.
    bool may_go_whole(std::size_t p) const {
        const composition::Paragraph& at = paragraphs()[p];
        if (at.bullet == 0 || at.gap != theme::GapName::bullet) return false;
        const auto same = [&](std::size_t other) {
            return other < paragraphs().size() && paragraphs()[other].entry == at.entry &&
                   paragraphs()[other].bullet == at.bullet;
        };
        if (p > 0 && same(p - 1)) return true; // an inner one
        return at.bullet > 1 && !same(p + 1);
    }

    Cut words(std::size_t p, const Shortening& shortening) const {
        const composition::Paragraph& paragraph = paragraphs()[p];
        Cut cut;
        cut.paragraph = static_cast<std::uint32_t>(p);
        cut.lines = shortening.lines;
        cut.characters = shortening.characters;
        TextRange shown = shortening.range;
        const std::string text = text_of(paragraph);
        while (shown.begin < shown.end &&
               (text[shown.begin] == ' ' || is_separator(paragraph, shown.begin)))
            ++shown.begin;
        cut.words = text.substr(shown.begin, shown.end - shown.begin);
        cut.places = places_of(paragraph, shown);
        const std::vector<lines::Line> lines =
            lines::MeasuredParagraph(paragraph, measure_).lines(measure_);
        cut.last_lines = joined_lines(
            paragraph, std::span(lines).last(static_cast<std::size_t>(shortening.lines)));
        return cut;
    }

    static bool is_separator(const composition::Paragraph& paragraph, std::size_t byte) {
        return std::ranges::any_of(paragraph.origins, [&](const composition::Origin& origin) {
            return origin.begin <= byte && byte < origin.end &&
                   origin.part == composition::TextPart::separator;
        });
    }

    void add_offers(std::size_t p, std::vector<Offer>& offers, std::vector<Cut>& cuts) {
        const double line = least_.leading * paragraphs()[p].size * least_.size;
        const auto add = [&](Cut cut, double saved) {
            offers.push_back({p, std::llround(std::floor(saved * per_point)),
                              static_cast<std::int64_t>(cut.characters)});
            cuts.push_back(std::move(cut));
        };
        for (const Shortening& each :
             shortenings(paragraphs()[p], measure_, most_lines_to_trim, bytes_left_))
            add(words(p, each), each.lines * line);
        if (!may_go_whole(p)) return;
        const double gap =
            least_.gaps[static_cast<std::size_t>(theme::GapName::bullet)] * least_.size;
        add(whole(Cut::Kind::bullet, p, p + 1), counts_[p] * line + gap);
    }

    // The least for what is too much with `pieces` gone; none if nothing is enough.
    std::optional<std::vector<Cut>> trims(const std::vector<Cut>& pieces) {
        std::vector<Cut> all;
        const std::vector<double> heights = beyond(pieces);
        for (std::size_t column = 0; column < heights.size(); ++column) {
            if (heights[column] <= 0) continue;
            auto more = trims_in(column, heights, pieces);
            if (!more) return std::nullopt;
            std::move(more->begin(), more->end(), std::back_inserter(all));
        }
        return all;
    }

    std::optional<std::vector<Cut>> trims_in(std::size_t column, const std::vector<double>& heights,
                                             const std::vector<Cut>& pieces) {
        double need = heights[column];
        if (need > most_lines_to_trim * least_.leading * least_.size) return std::nullopt;
        std::vector<bool> gone(paragraphs().size());
        for (const Cut& piece : pieces)
            for (std::uint32_t i = 0; i < piece.paragraphs; ++i)
                gone[piece.paragraph + i] = true;
        std::vector<Offer> offers;
        std::vector<Cut> cuts;
        for (std::size_t p = 0; p < paragraphs().size(); ++p)
            if (!gone[p] && stands_in(paragraphs()[p], column, heights.size()))
                add_offers(p, offers, cuts);
        while (true) {
            const auto taken = cheapest(offers, std::llround(std::ceil(need * per_point)));
            if (!taken) return std::nullopt;
            std::vector<Cut> plan = pieces;
            for (const std::size_t index : *taken)
                plan.push_back(cuts[index]);
            const double still = beyond(plan)[column];
            plan.erase(plan.begin(), plan.begin() + static_cast<std::ptrdiff_t>(pieces.size()));
            if (still <= 0) return plan;
            need += std::max(still, 0.01); // pt
        }
    }

    const composition::Composition& composition_;
    SettingChoices choices_;
    PageSetting least_;
    double measure_;
    std::size_t pages_;
    composition::Composition rest_; // the same, with the gaps that a plan leaves
    std::vector<int> counts_;
    std::size_t bytes_left_ = most_measured;
};

}

Cuts cheapest_cuts(const composition::Composition& composition, const theme::Theme& theme,
                   const model::Settings& settings) {
    return Planner(composition, theme, settings).run();
}

}
