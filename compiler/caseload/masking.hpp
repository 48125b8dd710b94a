// What may not go out: addresses of mail, telephone numbers and, where nobody is to be known,
// names.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>

namespace quoin::caseload {

class Masking {
public:
    // No name of these goes out either, nor a link, which is often made of one.
    void hide_name(std::string_view name);

    // Linear in the text.
    std::string masked(std::string_view text) const;

private:
    std::string_view masked_word(std::string_view word) const;
    bool is_name(std::string_view word) const;

    bool hides_names_ = false;
    std::set<std::string, std::less<>> names_; // words of them, folded
};

}
