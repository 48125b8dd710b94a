#include "compiler/commands/proof/proof_means.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/office_rules.hpp"
#include "compiler/commands/set/source_date.hpp"

namespace quoin::commands {

ProofMeans::ProofMeans(const advice::OfficeChoice& office)
    : data_(data_folder()), language_(data_), offices_(themes_in(data_), office) {}

ExitCode ProofMeans::open(const std::vector<std::string>& inputs, std::string_view verb) {
    if (!read_offices(offices_, inputs, verb)) return ExitCode::wrong_use;
    fonts_ = open_fonts(data_);
    return fonts_ ? ExitCode::done : ExitCode::errors;
}

advice::ProofTools ProofMeans::tools(const std::optional<std::int64_t>& epoch) {
    return {data_, *fonts_, language_, reading_day(epoch), &offices_};
}

}
