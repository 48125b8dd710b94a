// The rules of one career office, as its file `office.rules` gives them: values that checks judge
// by and reports name. They hold no place in any Sources, so that one reading serves many résumés.
#pragma once

#include "compiler/office/limits.hpp"
#include "compiler/trade/kinds.hpp"
#include "compiler/trade/weights.hpp"

#include <array>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::office {

constexpr std::size_t stage_count = 5; // of trade::Stage

struct Asked { // the line that asks for something, and the reason it gives, which may be none
    std::uint32_t line = 0;
    std::string reason = {};
};

struct CheckRule {
    std::optional<trade::Weight> weight; // none: off
    Asked asked;
};

struct WordToAvoid {
    std::string words;
    std::string advice; // may be none
    std::uint32_t line = 0;
};

struct PreferredVerb {
    std::string verb;            // as written, mostly in the past
    std::vector<std::string> of; // words of a bullet that it is offered for; none: for any
    std::uint32_t line = 0;
};

struct OfficePhrase {
    std::string words; // matched by their stems
    std::string advice;
    std::string source; // may be none
    trade::Weight weight = trade::Weight::should;
    std::uint32_t line = 0;
};

struct KnownName { // as it is spelled
    std::string name;
    std::uint32_t line = 0;
};

template<typename Value>
struct Allowed { // empty: anything
    std::vector<Value> values = {};
    Asked asked = {};
};

template<typename Value>
using ByName = std::map<std::string, Value, std::less<>>;

struct Rules { // that hold at one stage
    Limits limits;
    ByName<Asked> limits_set;     // by the label of their row
    ByName<CheckRule> checks;     // by the check's name
    ByName<Asked> not_acceptable; // checks that 'accept' does not set aside
    std::vector<WordToAvoid> avoid;
    std::vector<PreferredVerb> prefer;
    std::vector<OfficePhrase> phrases;
    Allowed<trade::Holds> order; // of sections; those not named stand where they like
    Allowed<std::string> themes;
    Allowed<trade::DateForm> date_forms;
    std::vector<KnownName> employers, schools, courses;

    const Asked* set_by(LimitOf limit) const; // null: common practice has it so
};

struct Office {
    std::string name = "the career office";
    std::string closing; // for the end of a marked page; may be none
    std::filesystem::path path;
    std::array<Rules, stage_count> by_stage;

    const Rules& at(trade::Stage stage) const { return by_stage[static_cast<std::size_t>(stage)]; }
    std::string where(std::uint32_t line) const; // "office.rules:12": no path, for pages travel
    // "Marrow Bay career office DOES, office.rules:12: REASON"
    std::string says(std::string_view does, const Asked& asked) const;
};

const LimitRow& row_of(LimitOf limit);                             // by its least or its most
std::string value_text(const LimitRow& row, const Limits& limits); // "3 to 5 bullets"

}
