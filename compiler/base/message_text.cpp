// Messages with what was found put into them.
#include "compiler/base/message_text.hpp"

namespace quoin {

std::string fill(std::string_view message, std::initializer_list<std::string_view> found) {
    std::string text;
    for (const std::string_view piece : found) {
        const auto gap = message.find("{}");
        if (gap == std::string_view::npos) break;
        text.append(message.substr(0, gap)).append(piece);
        message.remove_prefix(gap + 2);
    }
    return text.append(message);
}

}
