// What a file of rules may say beside the numbers of limits.hpp: one row a label.
#pragma once

#include <string_view>

namespace quoin::office {

enum class LabelName {
    office,
    closing,
    stages, // `for`
    must,
    should,
    consider,
    off,
    always,
    avoid,
    prefer,
    phrase,
    advice,
    source,
    weight,
    order,
    themes,
    dates_as,
    employers,
    schools,
    courses
};

enum class Where {
    once,      // for the whole office, in no block
    anywhere,  // for all, or for the stages of its block
    opens,     // the first line of its block
    in_phrase, // below 'phrase'
};

struct LabelRow {
    std::string_view label;
    LabelName name;
    Where where;
    bool once_a_stage = false; // a second one says otherwise; what is none adds to what is there
};

inline constexpr LabelRow label_rows[] = {
    {"office", LabelName::office, Where::once},
    {"closing", LabelName::closing, Where::once},
    {"for", LabelName::stages, Where::opens},
    {"must", LabelName::must, Where::anywhere},
    {"should", LabelName::should, Where::anywhere},
    {"consider", LabelName::consider, Where::anywhere},
    {"off", LabelName::off, Where::anywhere},
    {"always", LabelName::always, Where::anywhere},
    {"avoid", LabelName::avoid, Where::anywhere},
    {"prefer", LabelName::prefer, Where::anywhere},
    {"phrase", LabelName::phrase, Where::anywhere},
    {"advice", LabelName::advice, Where::in_phrase},
    {"source", LabelName::source, Where::in_phrase},
    {"weight", LabelName::weight, Where::in_phrase},
    {"order", LabelName::order, Where::anywhere, true},
    {"themes", LabelName::themes, Where::anywhere, true},
    {"dates-as", LabelName::dates_as, Where::anywhere, true},
    {"employers", LabelName::employers, Where::anywhere},
    {"schools", LabelName::schools, Where::anywhere},
    {"courses", LabelName::courses, Where::anywhere},
};

}
