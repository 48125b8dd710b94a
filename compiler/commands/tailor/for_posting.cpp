#include "compiler/commands/tailor/for_posting.hpp"

#include "compiler/base/data_places.hpp"
#include "compiler/commands/posting/posting_source.hpp"
#include "compiler/english/word_list.hpp"
#include "compiler/matching/coverage.hpp"
#include "compiler/tailoring/asked.hpp"

#include <utility>

namespace quoin::commands {

std::unique_ptr<ForPosting> for_posting(Sources& sources, std::uint32_t file,
                                        const std::string& posting, const ForPostingTools& tools,
                                        Diagnostics& diagnostics) {
    auto resume = stages::selected_resume(sources, file, tools.choices, tools.data, diagnostics);
    const auto asked = read_posting_at(posting, sources, diagnostics);
    if (!resume || !asked) return nullptr;
    const auto theme =
        stages::theme_for(*resume, tools.choices, sources, file, tools.data, diagnostics);
    if (!theme) return nullptr;
    const english::WordList words(word_list_in(tools.data));
    tailoring::Demand demand = tailoring::asked_of(matching::cover(*resume, *asked, words));
    auto tailored =
        tailoring::tailor(*resume, demand, {*theme, tools.data, tools.fonts}, diagnostics);
    if (!tailored) return nullptr;
    return std::make_unique<ForPosting>(
        ForPosting{*std::move(resume), std::move(demand), *std::move(tailored)});
}

}
