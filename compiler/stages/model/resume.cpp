// Looking up the fields of entries and of the heading.
#include "compiler/stages/model/resume.hpp"

#include <algorithm>

namespace quoin::model {
namespace {

const Field* first(const std::vector<Field>& fields, trade::FieldName name) {
    const auto found = std::ranges::find(fields, name, &Field::name);
    return found == fields.end() ? nullptr : &*found;
}

}

const Field* Entry::find(trade::FieldName name) const {
    return first(fields, name);
}

const Field* Resume::find(trade::FieldName name) const {
    return first(heading, name);
}

}
