// What is wrong and where. A diagnostic is data; its text form is made in one place.
#pragma once

#include "compiler/source/place.hpp"

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

    bool operator==(const Diagnostic&) const = default;
};

class Diagnostics {
public:
    void error(Place place, std::string text);
    void warning(Place place, std::string text);
    void note(Place place, std::string text);

    bool has_errors() const;
    const std::vector<Diagnostic>& all() const { return all_; }
    void sort(); // by file, line, column; equal places keep the order they were found in

private:
    std::vector<Diagnostic> all_;
};

// "file:line:column: error: text" (GNU Coding Standards, section 4.4); with `excerpt`, the source
// line and a caret below it on two further lines.
std::string format(const Diagnostic& diagnostic, const Sources& sources, bool excerpt = false);

// A message of grammar/messages.hpp with its `{}` replaced by what was found, cut to a readable
// length.
std::string worded(std::string_view message, std::string_view found);

}
