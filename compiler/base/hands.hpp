// Work that several threads do side by side, each taking what no other has taken.
#pragma once

#include <cstddef>
#include <functional>

namespace quoin {

// `work` by so many threads, of which this one is the first; where the system gives no more of
// them, fewer do as well. What one of them throws is thrown here, when all are done.
void work_with_hands(std::size_t hands, const std::function<void()>& work);

}
