// The file's tables are looked up where they lie; words and entries are in order, and halved again
// and again.
#include "compiler/english/word_contexts.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace quoin::english {
namespace {

constexpr double step = 15, near_step = 25; // as make_contexts.py has them

// What is left of the file, table by table.
class Tables {
public:
    explicit Tables(std::string_view bytes) : bytes_(bytes) {}

    template<typename Number>
    std::span<const Number> next(std::size_t count) {
        const std::string_view table = letters(count * sizeof(Number));
        return {reinterpret_cast<const Number*>(table.data()), count};
    }
    std::string_view letters(std::size_t count) {
        if (count > bytes_.size()) throw std::runtime_error("the contexts of words are cut short");
        const std::string_view table = bytes_.substr(0, count);
        bytes_.remove_prefix(count);
        return table;
    }

private:
    std::string_view bytes_;
};

}

WordContexts::WordContexts(const std::filesystem::path& file) : file_(file) {
    if (file_.bytes().empty()) return;
    Tables tables(file_.bytes());
    const auto head = tables.next<std::uint32_t>(5);
    const std::array<Group*, 3> groups{&meant_, &behind_, &near_};
    ends_ = tables.next<std::uint32_t>(head[0] + 1);
    for (Group* group : groups)
        group->begins = tables.next<std::uint32_t>(head[0] + 1);
    for (std::size_t i = 0; i < groups.size(); ++i)
        groups[i]->words = tables.next<Number>(head[i + 1]);
    for (std::size_t i = 0; i < groups.size(); ++i)
        groups[i]->counts = tables.next<std::uint8_t>(head[i + 1]);
    likelihood_ = tables.next<std::uint8_t>(head[0]);
    backoff_ = tables.next<std::uint8_t>(head[0]);
    letters_ = tables.letters(head[4]);
    figure_ = number_of("five");
    joint_ = number_of("and");
    end_ = number_of("</s>");
}

WordContexts::Meant WordContexts::Group::of(Number key) const {
    const std::size_t begin = begins[key], length = begins[key + 1u] - begin;
    return {words.subspan(begin, length), counts.subspan(begin, length)};
}

std::optional<std::uint8_t> WordContexts::Group::count(Number key, Number word) const {
    const Meant entries = of(key);
    const auto found = std::ranges::lower_bound(entries.words, word);
    if (found == entries.words.end() || *found != word) return std::nullopt;
    return entries.why[static_cast<std::size_t>(found - entries.words.begin())];
}

std::optional<WordContexts::Number> WordContexts::number_of(std::string_view text) const {
    std::size_t low = 0, high = likelihood_.size();
    while (low < high) {
        const std::size_t middle = low + (high - low) / 2;
        if (word(static_cast<Number>(middle)) < text)
            low = middle + 1;
        else
            high = middle;
    }
    const auto found = static_cast<Number>(low);
    if (low == likelihood_.size() || word(found) != text) return std::nullopt;
    return found;
}

std::string_view WordContexts::word(Number number) const {
    return letters_.substr(ends_[number], ends_[number + 1u] - ends_[number]);
}

WordContexts::Meant WordContexts::meant_for(Number typed) const {
    return meant_.of(typed);
}

double WordContexts::likelihood(Number word) const {
    return -likelihood_[word] / step;
}

double WordContexts::likelihood_behind(Number before, Number word) const {
    if (const auto count = behind_.count(before, word)) return -*count / step;
    return likelihood(word) - backoff_[before] / step;
}

double WordContexts::nearness(Number word, Number other) const {
    return near_.count(word, other).value_or(0) / near_step;
}

}
