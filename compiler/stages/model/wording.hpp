// The words in which messages name what was found and what was expected.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::model {

using quoin::did_you_mean;
using quoin::in_quotes;
using quoin::listed;

}
