// Forms: which patterns arrange the heading and each kind of entry.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/theme/values.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::theme {

struct FormName {
    std::optional<trade::Holds> holds; // none: the heading
};

std::optional<FormName> read_form_name(const ThemeLine& line, Diagnostics& diagnostics);
// A line `way: NAME` sets `way`, to which the lines after it belong.
void read_form_line(const ThemeLine& line, const FormName& name,
                    const std::vector<std::string>& ways, std::optional<std::size_t>& way,
                    Form& form, Diagnostics& diagnostics);
// Reports each field that the form loses or prints twice, in any of the ways; `place` is the form's
// opening line.
void check_form(const Form& form, const FormName& name, const std::vector<std::string>& ways,
                Place place, Diagnostics& diagnostics);

}
