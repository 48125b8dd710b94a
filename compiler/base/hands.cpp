#include "compiler/base/hands.hpp"

#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace quoin {

namespace {

void start_others(std::size_t count, const std::function<void()>& work,
                  std::vector<std::jthread>& others) {
    try {
        while (others.size() < count)
            others.emplace_back(work);
    } catch (const std::system_error&) { // those that there are do it
    }
}

}

void work_with_hands(std::size_t hands, const std::function<void()>& work) {
    std::mutex mutex;
    std::exception_ptr thrown;
    const auto guarded = [&] {
        try {
            work();
        } catch (...) {
            const std::scoped_lock lock(mutex);
            if (!thrown) thrown = std::current_exception();
        }
    };
    {
        std::vector<std::jthread> others;
        if (hands > 1) start_others(hands - 1, guarded, others);
        guarded();
    }
    if (thrown) std::rethrow_exception(thrown);
}

}
