#include "compiler/english/stems.hpp"

#include "compiler/base/kept.hpp"

#include <libstemmer.h>

#include <new>

namespace quoin::english {

Stemmer::Stemmer() : stemmer_(sb_stemmer_new("english", "UTF_8"), sb_stemmer_delete) {
    if (!stemmer_) throw std::bad_alloc();
}

std::string Stemmer::stem(std::string_view word) const {
    thread_local KeptByWord<std::string> kept;
    return kept.of(word, [&](std::string_view one) { return read_stem(one); });
}

std::string Stemmer::read_stem(std::string_view word) const {
    const auto* bytes = reinterpret_cast<const sb_symbol*>(word.data());
    const sb_symbol* stem = sb_stemmer_stem(stemmer_.get(), bytes, static_cast<int>(word.size()));
    if (stem == nullptr) throw std::bad_alloc();
    return {reinterpret_cast<const char*>(stem),
            static_cast<std::size_t>(sb_stemmer_length(stemmer_.get()))};
}

}
