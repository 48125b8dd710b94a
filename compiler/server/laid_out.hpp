// A document as it is laid out by the house: one blank line where there were several and above each
// section, a space behind a label's colon and a bullet's dash, known labels in small letters, long
// lines folded. No word is changed, nor the order: the tree is the same.
#pragma once

#include <string>

namespace quoin::server {

// Of such a text it is the text itself. What cannot be laid out anew stays as it is.
std::string laid_out(const std::string& text);

}
