// Fuzz target: any bytes as a posting, in text and in HTML.
#include "compiler/base/source.hpp"
#include "compiler/postings/posting.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("posting", std::string(data, data + size), diagnostics,
                                  quoin::TextOf::elsewhere);
    if (!file) return 0;
    const std::string& text = sources.file(*file).text;
    for (const auto& lines :
         {quoin::postings::text_lines(text), quoin::postings::html_lines(text)}) {
        const auto posting = quoin::postings::read_posting(lines, *file, words);
        for (const auto& term : posting.terms)
            if (term.words.empty() || !(term.weight >= 0 && term.weight <= 1)) std::abort();
    }
    return 0;
}
