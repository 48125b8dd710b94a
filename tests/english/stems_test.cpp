// Words and stems of Snowball's sample vocabulary for English (snowballstem.org).
#include "compiler/english/stems.hpp"

#include <doctest/doctest.h>

TEST_CASE("stems: those of Snowball's sample vocabulary") {
    const quoin::english::Stemmer stemmer;
    for (const char* word : {"consign", "consigned", "consigning", "consignment"})
        CHECK(stemmer.stem(word) == "consign");
    for (const char* word : {"consist", "consistency", "consistently"})
        CHECK(stemmer.stem(word) == "consist");
    CHECK(stemmer.stem("knightly") == "knight");
    CHECK(stemmer.stem("") == "");
}

TEST_CASE("stems: words of one field have one") {
    const quoin::english::Stemmer stemmer;
    CHECK(stemmer.stem("ecology") == stemmer.stem("ecological"));
    CHECK(stemmer.stem("biology") == stemmer.stem("biological"));
    CHECK(stemmer.stem("ecology") != stemmer.stem("economy"));
}
