// What kind of thing a phrase of a posting is: by its words, and by those it stands among.
#pragma once

#include "compiler/postings/parts.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

namespace quoin::postings {

Kind kind_of(const Phrase& phrase, const Statement& statement);

}
