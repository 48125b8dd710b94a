#include "compiler/trade/weights.hpp"

namespace quoin::trade {

std::string_view name_of(Weight weight) {
    switch (weight) {
    case Weight::must:
        return "must";
    case Weight::should:
        return "should";
    case Weight::consider:
        break;
    }
    return "consider";
}

}
