#include "compiler/stages/model/other_languages.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <iterator>

namespace quoin::model {

void OtherLanguages::read() {
    if (std::exchange(read_, true)) return;
    Diagnostics unheard; // a file that is not whole is told where a résumé asks for it
    for (page_words::Words& words : page_words::read_all_words(sources_, folder_, unheard)) {
        dates_.emplace_back(words.dates);
        std::ranges::move(words.titles, std::back_inserter(titles_));
    }
}

const std::vector<LocalDates>& OtherLanguages::dates() {
    read();
    return dates_;
}

std::optional<trade::Holds> OtherLanguages::holds(std::string_view title) {
    read();
    const std::string wanted = folded(title);
    const auto found = std::ranges::find_if(titles_, [&](const page_words::SectionTitle& known) {
        return folded(known.title) == wanted;
    });
    return found == titles_.end() ? std::nullopt : std::optional{found->holds};
}

}
