// Values of settings that people type who have read little, and those that they mean.
#pragma once

#include <string>
#include <string_view>

namespace quoin::model {

// `1 inch` of `margins` is `1`, `senior` of `stage` is `undergraduate`; empty if nothing is known.
std::string meant_by_setting(std::string_view label, std::string_view typed);

}
