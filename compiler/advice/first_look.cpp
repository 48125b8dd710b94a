#include "compiler/advice/first_look.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/stages/composition/printed_words.hpp"

#include <algorithm>

namespace quoin::advice {

namespace {

double reached(const model::Field& field, const std::vector<glance::Look>& looks,
               const composition::Composition& composition) {
    double last = glance::never;
    for (const auto& words : composition::printed_words(field.place, composition)) {
        const double at = glance::reached_at(looks, words.paragraph, words.begin, words.end);
        if (at != glance::never) last = last == glance::never ? at : std::max(last, at);
    }
    return last;
}

}

std::vector<Landmark> landmarks(const model::Resume& resume, const std::vector<glance::Look>& looks,
                                const composition::Composition& composition) {
    using enum trade::FieldName;
    std::vector<Landmark> found;
    const auto add = [&](std::string_view what, const model::Field* field) {
        if (field) found.push_back({what, field, reached(*field, looks, composition)});
    };
    add("the name", resume.find(name));
    if (const auto jobs = positions(resume, {trade::Holds::experience}); !jobs.empty()) {
        add("the latest role", jobs.front().find(role));
        add("its employer", jobs.front().find(employer));
        add("its dates", jobs.front().find(dates));
    }
    if (*resume.settings.stage == trade::Stage::experienced) return found; // work comes first
    if (const auto schools = positions(resume, {trade::Holds::education}); !schools.empty()) {
        add("the school", schools.front().find(school));
        add("the degree", schools.front().find(degree));
        add("the degree's date", schools.front().find(graduation));
    }
    return found;
}

}
