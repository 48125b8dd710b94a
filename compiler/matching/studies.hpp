// What a résumé's studies show without saying so: whoever is at college has a high school diploma,
// and who studies nursing is in a nursing program.
#pragma once

#include "compiler/matching/texts.hpp"
#include "compiler/stages/model/resume.hpp"

#include <string>
#include <vector>

namespace quoin::matching {

class Studies {
public:
    // Both must outlive it.
    Studies(const model::Resume& resume, const std::vector<TextOfResume>& texts);

    // The degree that shows it; null if none does.
    const TextOfResume* shows(const std::vector<std::string>& lower) const;

private:
    std::vector<const TextOfResume*> at_college_;
};

}
