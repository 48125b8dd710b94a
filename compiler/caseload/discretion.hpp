// A caseload made fit to be shown: no address of mail and no telephone number is in it and, where
// nobody is to be known, no name.
#pragma once

#include "compiler/caseload/cache.hpp"
#include "compiler/caseload/caseload.hpp"

#include <string>

namespace quoin::caseload {

void hide_contacts(Caseload& caseload);

// Numbers for names. The order is drawn anew in every term, so that none tells of a list of names;
// the cache keeps who has which until the term ends. False if it cannot: the numbers are this
// run's.
bool hide_names(Caseload& caseload, Cache* cache);

}
