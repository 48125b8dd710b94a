// Degrees by their names: whether a name is one of the usual ones, and which was meant.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

struct DegreeReading {
    enum class Verdict {
        well_formed,  // or nothing that can be judged
        malformed,    // `usual` is how it is written
        type_missing, // a field of study, and not which degree
    };
    Verdict verdict = Verdict::well_formed;
    std::string usual;
    std::string fault;      // what is wrong, for a message
    bool form_alone = true; // `usual` is the same degree, written right
};

DegreeReading read_degree(std::string_view name);

}
