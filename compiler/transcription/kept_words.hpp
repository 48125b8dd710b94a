// Nothing is lost: the words of the old page against those of the draft.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::transcription {

// How often each word is there, without the signs around it, in small letters.
class WordBag {
public:
    void add(std::string_view text);

    // The words of a text that are not in the bag, which loses those that are; neighbours stay
    // together, and ` … ` stands between others.
    std::string take_out(std::string_view text);

private:
    std::map<std::string, std::size_t, std::less<>> words_;
};

}
