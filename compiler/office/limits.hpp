// The numbers that checks judge by, which an office may set otherwise: what each is stands above
// its row, so that one is added here, and read where it is judged by.
#pragma once

#include "compiler/trade/limits.hpp"

#include <string_view>

namespace quoin::office {

struct Limits { // as common practice has them
    double gpa_leave_out = 3.0, gpa_show = 3.5;
    double least_bullets = 1, most_bullets = trade::most_bullets;
    double bullet_lines = 2;
    double same_opening = 2;
    double most_courses = 8;
    double most_pages = 0; // 0: as the stage has it
    double page_filled = 200.0 / 3;
    double least_size = trade::size_bounds.least, most_size = trade::size_bounds.most;
    double least_margin = trade::margin_bounds.least, most_margin = trade::margin_bounds.most;
    double emphasis = 20;
    double first_look = trade::first_look;
    double updated_within = 6, present_within = 12;
    double job_years = 15, degree_years = 20;
};

using LimitOf = double Limits::*;

struct LimitRow {
    std::string_view label;
    std::string_view unit;
    trade::Interval range;  // that it may be set in
    std::string_view check; // that judges by it
    std::string_view does;
    LimitOf of;
    LimitOf most = nullptr; // of `3..5`: `of` is the least
    bool whole = false;     // no fraction
};

inline constexpr LimitRow limit_rows[] = {
    {"gpa-leave-out",
     "of 4",
     {1, 4},
     "gpa-low",
     "a GPA under it is better left out",
     &Limits::gpa_leave_out},
    {"gpa-show", "of 4", {1, 4}, "gpa-unsaid", "a GPA is shown from here on", &Limits::gpa_show},
    {"bullets",
     "bullets",
     {0, 12},
     "bullet-count",
     "least and most in an entry",
     &Limits::least_bullets,
     &Limits::most_bullets,
     true},
    {"bullet-lines",
     "lines",
     {1, 5},
     "two-lines",
     "the most that a bullet takes",
     &Limits::bullet_lines,
     nullptr,
     true},
    {"same-opening",
     "bullets",
     {1, 8},
     "repeated-opening",
     "how many may open with one verb",
     &Limits::same_opening,
     nullptr,
     true},
    {"most-courses",
     "courses",
     {1, 40},
     "course-count",
     "the most that are listed",
     &Limits::most_courses,
     nullptr,
     true},
    {"most-pages",
     "pages",
     {1, 20},
     "length",
     "the most that a résumé takes; unless it is set, one for a student and what 'pages' allows "
     "for others",
     &Limits::most_pages,
     nullptr,
     true},
    {"page-filled",
     "percent",
     {20, 95},
     "page-fill",
     "the least that text fills of one page",
     &Limits::page_filled},
    {"text-size", "pt", trade::size_bounds, "text-size", "least and most of running text",
     &Limits::least_size, &Limits::most_size},
    {"page-margins", "inches", trade::margin_bounds, "margins", "least and most",
     &Limits::least_margin, &Limits::most_margin},
    {"emphasis",
     "percent",
     {1, 60},
     "emphasis",
     "the most words that are bold, italic or underlined",
     &Limits::emphasis},
    {"first-look",
     "seconds",
     {3, 60},
     "first-look",
     "how long a reader gives the page at first",
     &Limits::first_look},
    {"updated-within",
     "months",
     {1, 48},
     "not-updated",
     "how old 'updated' may be",
     &Limits::updated_within,
     nullptr,
     true},
    {"present-within",
     "months",
     {1, 60},
     "stale-present",
     "how old 'updated' may be where something goes on to the present",
     &Limits::present_within,
     nullptr,
     true},
    {"job-years",
     "years",
     {1, 60},
     "long-ago",
     "how long ago a job may have ended",
     &Limits::job_years,
     nullptr,
     true},
    {"degree-years",
     "years",
     {1, 60},
     "long-ago",
     "how long ago a degree may have been earned",
     &Limits::degree_years,
     nullptr,
     true},
};

}
