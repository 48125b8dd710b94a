// Degrees by their names: whether a name is one of the usual ones, and which was meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

struct DegreeReading {
    enum class Verdict {
        well_formed,  // or nothing that can be judged
        malformed,    // `usual` is how it is written
        type_missing, // a field of study, and not which degree
    };
    Verdict verdict = Verdict::well_formed;
    std::string usual;
    std::string fault;      // what is wrong, for a message
    bool form_alone = true; // `usual` is surely the same degree, written right
};

// Of two degrees in one name both are read.
DegreeReading read_degree(std::string_view name);

// Names to choose from: each rank of each kind that there is.
std::vector<std::string> usual_degrees();

// A certificate, a semester abroad and the like: its name is the school's own.
bool is_no_degree(std::string_view name);

}
