// Where the marked pages of one call go.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

struct MarkedRequest {
    const std::vector<std::string>& inputs;
    const std::string& marked; // a file for one résumé, or the folder that each goes to; or empty
    std::string_view suffix;   // fall.resume goes to fall.marked.pdf in a folder
    bool prints_more = false;  // standard output holds something already
};

// One for each input, none if nothing is marked; or what is wrong with the request.
std::optional<std::string> plan_marked(const MarkedRequest& request,
                                       std::vector<std::string>& targets);

}
