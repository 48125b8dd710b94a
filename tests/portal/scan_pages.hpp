// Pages made by hand for the tests of scans.
#pragma once

#include "compiler/portal/faults.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace quoin::portal {

using Words = std::vector<std::string>;

// A page of lines, each of words 5 pt a letter wide, with 3 pt between them.
struct PageBuilder {
    Reading reading{{{612, 792}}, {}};

    PageBuilder& line(double left, double top, const std::string& text, double height = 11,
                      double gap = 3) {
        ReadLine line{
            reading.pages.size() - 1, reading.lines.size(), {left, top, left, top + height}, {}};
        for (std::size_t begin = 0; begin < text.size();) {
            const std::size_t end = std::min(text.find(' ', begin), text.size());
            const double right = line.box.right + 5.0 * static_cast<double>(end - begin);
            line.words.push_back(
                {text.substr(begin, end - begin), {line.box.right, top, right, top + height}});
            line.box.right = right + (end < text.size() ? gap : 0);
            begin = end + 1;
        }
        reading.lines.push_back(std::move(line));
        return *this;
    }
    PageBuilder& page() {
        reading.pages.push_back({612, 792});
        return *this;
    }
};

// A document with nothing wrong, for tables that say what is changed in it.
inline Evidence faultless() {
    Evidence evidence;
    evidence.facts = {"Ottoline Brandt, résumé", 1, true, false, false, false, false};
    evidence.names.language = true;
    PageBuilder page;
    page.line(72, 50, "Ottoline Brandt", 20)
        .line(72, 75, "ottoline.brandt@ellerystate.example (360) 555-0142")
        .line(72, 100, "Education")
        .line(72, 115, "Ellery State College");
    evidence.by_place = evidence.by_file = page.reading;
    for (const ReadLine& line : page.reading.lines)
        evidence.tagged_text += line.text() + '\n';
    evidence.looks = {{{10.5, 0, 100}}, {}, 100};
    return evidence;
}

inline Words checks_of(const Evidence& evidence) {
    Words names;
    for (const ScanFault& fault : find_faults(evidence, find_all(evidence.by_place)))
        names.push_back(fault.check);
    return names;
}

inline Words checks_of(const Reading& reading) {
    Evidence evidence = faultless();
    evidence.by_place = evidence.by_file = reading;
    evidence.tagged_text.clear();
    return checks_of(evidence);
}

}
