// What is wrong and where. A diagnostic is data; its text form is made in one place.
#pragma once

#include "compiler/base/edit.hpp"
#include "compiler/base/place.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin {

class Sources;

enum class Severity { error, warning, note };

struct Diagnostic {
    Severity severity = Severity::error;
    Place place;
    std::string text; // lower case start, no full stop: found, expected, the mend
    Edits mend = {};  // which `quoin mend` may make, for it changes no meaning; mostly empty

    bool operator==(const Diagnostic&) const = default;
};

class Diagnostics {
public:
    void error(Place place, std::string text, Edits mend = {});
    void warning(Place place, std::string text, Edits mend = {});
    void note(Place place, std::string text);

    bool has_errors() const;
    std::size_t count(Severity severity) const;
    const std::vector<Diagnostic>& all() const { return all_; }
    void sort(); // by file, line, column; equal places keep the order they were found in

private:
    std::vector<Diagnostic> all_;
};

// "file:line:column: error: text" (GNU Coding Standards, section 4.4); with an excerpt, the source
// line and a caret below it on two further lines.
std::string format(const Diagnostic& diagnostic, const Sources& sources, bool with_excerpt = false);

// "file:line:column:", as much of it as the place knows.
std::string location(const Place& place, const Sources& sources);
// A line feed, the source line, and where the place has a column a caret on a line of its own.
std::string excerpt(const Place& place, const Sources& sources);

}
