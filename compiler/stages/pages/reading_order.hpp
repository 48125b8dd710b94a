// Whether programs that order a page's text by where it stands read its columns one whole after the
// other.
//
// Two published ways are held to, each by a condition on blocks, runs of lines that stand close:
//
// - poppler's (TextPage::coalesce): where a band of white crosses both columns, and the blocks
// above
//   it and those below have their tops, feet or middles alike to within half an em, the four are a
//   table, and read by rows. And a block with nothing beside it but a gap of the other column is
//   taken for one of both, and parts that column.
// - pdfminer's (LTLayoutContainer.group_textboxes): the two blocks whose common box holds the least
//   white beside them are joined, and what they make with others, until all is one; of two the one
//   further up and left is read first. So whatever is joined must be neighbours in the order, the
//   first of them read first.
//
// Programs that keep the file's order are served by any page; those that go line by line take two
// columns for one, and no place of theirs helps.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"

namespace quoin::pages {

// The left column first; of one column it is so.
bool columns_read_whole(const composition::Composition& composition, const Pages& pages);

}
