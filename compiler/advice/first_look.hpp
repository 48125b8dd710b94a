// What a reader must have found on the page by the end of a first look, and whether the model of
// compiler/stages/glance gets there.
#pragma once

#include "compiler/stages/glance/glance.hpp"
#include "compiler/stages/model/resume.hpp"

#include <string_view>
#include <vector>

namespace quoin::advice {

struct Landmark {
    std::string_view what; // "the latest role"
    const model::Field* field = nullptr;
    double at = glance::never; // seconds, when its last word is read
};

// Of those that the résumé has: name; the latest role, its employer and its dates; school, degree
// and its date (common practice).
std::vector<Landmark> landmarks(const model::Resume& resume, const std::vector<glance::Look>& looks,
                                const composition::Composition& composition);

}
