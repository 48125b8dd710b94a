// Whether an answer will do, by the readers and checks that the whole résumé will be read with.
#pragma once

#include "compiler/english/language.hpp"
#include "compiler/interview/draft_source.hpp"
#include "compiler/office/office.hpp"
#include "compiler/stages/model/dates.hpp"

#include <filesystem>
#include <set>
#include <string>
#include <vector>

namespace quoin::interview {

struct Judgement {
    std::vector<std::string> said; // what is wrong; empty: nothing
    bool readable = true;          // no: it would keep the page from being made
};

class Judge {
public:
    // `data` is quoin's own folder; `today` tells what is past; null: no office's rules.
    Judge(const std::filesystem::path& data, const english::Language& language,
          const model::Date& today, const office::Office* office = nullptr)
        : data_(data), language_(language), today_(today), office_(office) {}

    Judgement judge(const Plan& plan, const Draft& draft, const Spot& spot) const;
    // The answers that cannot be read as what they should be.
    std::set<Spot> unreadable(const Plan& plan, const Draft& draft) const;
    // Whether what an entry's dates tell of goes on; none if they cannot be read, or are not there.
    std::optional<bool> goes_on(std::string_view dates) const;

private:
    const std::filesystem::path& data_;
    const english::Language& language_;
    model::Date today_;
    const office::Office* office_;
};

}
