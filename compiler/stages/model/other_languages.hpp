// The words of the languages that a résumé is not in, for what is typed in one of them all the
// same: read once, where first something cannot be understood without.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/stages/model/local_dates.hpp"
#include "compiler/stages/page_words/words.hpp"
#include "compiler/trade/kinds.hpp"

#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::model {

class OtherLanguages {
public:
    OtherLanguages(Sources& sources, std::filesystem::path folder)
        : sources_(sources), folder_(std::move(folder)) {}

    const std::vector<LocalDates>& dates();

    // What a section of such a title holds in one of them: education, of `Ausbildung`.
    std::optional<trade::Holds> holds(std::string_view title);

private:
    void read();

    Sources& sources_;
    std::filesystem::path folder_;
    bool read_ = false;
    std::vector<LocalDates> dates_;
    std::vector<page_words::SectionTitle> titles_;
};

}
