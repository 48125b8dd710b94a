// What a line adds to its column is counted for the paragraph it is of.
#include "compiler/tailoring/measuring.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/tailoring/problem.hpp"

#include <algorithm>
#include <map>

namespace quoin::tailoring {

namespace {

class Measurer {
public:
    Measurer(const composition::Composition& composition, const Tightest& tightest)
        : composition_(composition), tightest_(tightest), heights_(composition.paragraphs.size()) {
        for (const fit::Column& column : tightest.columns)
            for (std::size_t i = 1; i < column.lines.size(); ++i) {
                const bool again =
                    column.lines[i].paragraph->section == 0 && &column != &tightest.columns.front();
                if (!again)
                    heights_[column.lines[i].paragraph_index] +=
                        fit::to_baseline(column, i).at(tightest.setting);
            }
    }

    Measures run(const model::Resume& resume) {
        measures_.sections.resize(resume.sections.size());
        for (std::size_t p = 0; p < heights_.size(); ++p)
            count(composition_.paragraphs[p], heights_[p]);
        for (SectionHeights& section : measures_.sections)
            even_out(section);
        return std::move(measures_);
    }

private:
    void count(const composition::Paragraph& paragraph, double height) {
        if (paragraph.section == 0) {
            measures_.top += height;
            return;
        }
        SectionHeights& section = measures_.sections[paragraph.section - 1];
        if (paragraph.entry == 0) {
            section.heading += height;
            return;
        }
        const std::uint32_t first =
            first_.try_emplace(paragraph.section, paragraph.entry).first->second;
        const std::size_t number = paragraph.entry - first;
        if (section.positions.size() <= number) section.positions.resize(number + 1);
        PositionHeights& position = section.positions[number];
        ++position.paragraphs;
        if (paragraph.bullet == 0) {
            position.head += height;
            return;
        }
        if (position.bullets.size() < paragraph.bullet) position.bullets.resize(paragraph.bullet);
        position.bullets[paragraph.bullet - 1] += height;
    }

    // From the baseline of a section's heading to that of its first line, less a line.
    double to_first_line() const {
        const bool beside =
            std::ranges::any_of(composition_.paragraphs, &composition::Paragraph::in_margin);
        return beside ? -tightest_.setting.leading * tightest_.setting.size
                      : tightest_.gap(theme::GapName::heading);
    }

    // The first entry stands close below its heading, or beside it; without it, the next one would.
    void even_out(SectionHeights& section) const {
        if (section.positions.empty()) return;
        const bool lines = section.positions.size() > 1 && section.positions[0].paragraphs == 1 &&
                           section.positions[1].paragraphs == 1;
        const double more =
            to_first_line() - tightest_.gap(lines ? theme::GapName::line : theme::GapName::entry);
        section.heading += more;
        section.positions.front().head -= more;
    }

    const composition::Composition& composition_;
    const Tightest& tightest_;
    std::vector<double> heights_;                  // one a paragraph
    std::map<std::uint32_t, std::uint32_t> first_; // entry, by section
    Measures measures_;
};

}

Tightest::Tightest(const composition::Composition& composition, const theme::Theme& theme,
                   const model::Settings& settings)
    : setting(fit::least_setting(
          fit::choices_of(theme, settings, fit::characters_in_em(composition)))) {
    const double measure = fit::full_measure(setting);
    std::vector<int> counts;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        counts.push_back(lines::MeasuredParagraph(paragraph, measure).line_count(measure));
    columns = fit::make_columns(composition, counts);
}

double Tightest::room() const {
    return setting.paper_height - setting.top_margin - setting.bottom_margin;
}

double Tightest::gap(theme::GapName name) const {
    return setting.gaps[static_cast<std::size_t>(name)] * setting.size;
}

double Tightest::ends() const {
    const fit::Column& column = columns.front();
    if (column.lines.empty()) return 0;
    fit::Height ends = fit::to_first_baseline(column, 0, 0);
    return ends.add(fit::below_baseline(column, column.lines.size() - 1)).at(setting);
}

Measures measure(const model::Resume& resume, const composition::Composition& composition,
                 const Tightest& tightest) {
    return Measurer(composition, tightest).run(resume);
}

std::vector<std::size_t> first_positions(const model::Section& section) {
    std::vector<std::size_t> numbers;
    std::size_t number = 0;
    for (const model::Entry& entry : section.entries) {
        numbers.push_back(number);
        if (!composition::prints_nothing(entry)) number += 1 + entry.further.size();
    }
    return numbers;
}

}
