#include "compiler/english/word_list.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

namespace quoin::english {

TEST_CASE("the list of words: one that was asked often answers as a new one") {
    const std::filesystem::path file =
        std::filesystem::path(QUOIN_DATA_FOLDER) / "dictionaries/en_US.words";
    const WordList often(file);
    for (int i = 0; i < 10'000; ++i)
        often.class_of("counted");
    for (const std::string word : {"", "a", "the", "counted", "Port", "port", "manger", "zoology",
                                   "conuted", "zzz", "countedd", "co", "\t3", "counted\t"}) {
        CAPTURE(word);
        CHECK(often.class_of(word) == WordList(file).class_of(word));
    }
    CHECK(often.class_of("counted") != WordList::is_none);
    CHECK(often.class_of("conuted") == WordList::is_none);
    const WordList none("no-such-file");
    for (int i = 0; i < 10'000; ++i)
        REQUIRE(none.class_of("counted") == WordList::is_none);
}

}
