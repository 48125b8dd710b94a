// A résumé and a posting, read and brought together: what of the résumé serves the posting best.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/typeset.hpp"
#include "compiler/tailoring/tailor.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>

namespace quoin::commands {

struct ForPosting {
    model::Resume resume; // as selected, whole
    tailoring::Demand demand;
    tailoring::Tailored tailored;
};

struct ForPostingTools {
    const stages::Choices& choices;
    const std::filesystem::path& data;
    fonts::Fonts& fonts;
};

// `posting` as read_posting_at has it. Null after an error, which is reported.
std::unique_ptr<ForPosting> for_posting(Sources& sources, std::uint32_t file,
                                        const std::string& posting, const ForPostingTools& tools,
                                        Diagnostics& diagnostics);

}
