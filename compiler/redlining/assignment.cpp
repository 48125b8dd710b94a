#include "compiler/redlining/assignment.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>

namespace quoin::redlining {

namespace {

constexpr std::size_t longest_compared_whole = 48;
constexpr std::size_t most_with_a_word = 12; // in one list; a word that more have tells nothing

// The assignment of each row to a column of its own that is worth most, by shortest augmenting
// paths with potentials (Kuhn 1955, Munkres 1957; in this form Jonker & Volgenant, Computing 38,
// 1987). At most as many rows as columns. Row and column 0 stand for none.
class Assignment {
public:
    Assignment(std::size_t rows, std::size_t columns, const std::vector<double>& worth)
        : rows_(rows), columns_(columns), worth_(worth), row_price_(rows + 1),
          column_price_(columns + 1), row_of_(columns + 1), before_(columns + 1) {}

    std::vector<std::size_t> columns_of_rows() {
        for (std::size_t row = 1; row <= rows_; ++row)
            take_back(path_for(row));
        std::vector<std::size_t> found(rows_);
        for (std::size_t column = 1; column <= columns_; ++column)
            if (row_of_[column] != 0) found[row_of_[column] - 1] = column - 1;
        return found;
    }

private:
    // To a free column.
    std::size_t path_for(std::size_t row) {
        row_of_[0] = row;
        std::vector<double> least(columns_ + 1, std::numeric_limits<double>::infinity());
        std::vector<bool> reached(columns_ + 1);
        std::size_t column = 0;
        do {
            reached[column] = true;
            column = next_column(column, least, reached);
        } while (row_of_[column] != 0);
        return column;
    }

    std::size_t next_column(std::size_t column, std::vector<double>& least,
                            const std::vector<bool>& reached) {
        const std::size_t row = row_of_[column];
        std::size_t nearest = 0;
        double step = std::numeric_limits<double>::infinity();
        for (std::size_t j = 1; j <= columns_; ++j) {
            if (reached[j]) continue;
            const double by =
                -worth_[(row - 1) * columns_ + j - 1] - row_price_[row] - column_price_[j];
            if (by < least[j]) {
                least[j] = by;
                before_[j] = column;
            }
            if (least[j] < step) {
                step = least[j];
                nearest = j;
            }
        }
        reprice(step, least, reached);
        return nearest;
    }

    void reprice(double step, std::vector<double>& least, const std::vector<bool>& reached) {
        for (std::size_t j = 0; j <= columns_; ++j)
            if (reached[j]) {
                row_price_[row_of_[j]] += step;
                column_price_[j] -= step;
            } else {
                least[j] -= step;
            }
    }

    void take_back(std::size_t column) {
        while (column != 0) {
            row_of_[column] = row_of_[before_[column]];
            column = before_[column];
        }
    }

    std::size_t rows_, columns_;
    const std::vector<double>& worth_;
    std::vector<double> row_price_, column_price_;
    std::vector<std::size_t> row_of_, before_; // of each column
};

using Likeness = std::function<double(std::size_t, std::size_t)>;

// Those that say the same, the first with the first.
void pair_equals(const std::vector<Item>& first, const std::vector<Item>& second,
                 std::vector<IndexPair>& pairs) {
    std::map<std::string_view, std::vector<std::size_t>> waiting;
    for (std::size_t j = second.size(); j-- > 0;)
        waiting[second[j].key].push_back(j);
    for (std::size_t i = 0; i < first.size(); ++i) {
        const auto found = waiting.find(first[i].key);
        if (found == waiting.end() || found->second.empty()) continue;
        pairs.emplace_back(i, found->second.back());
        found->second.pop_back();
    }
}

std::vector<std::size_t> left_over(std::size_t count, const std::vector<IndexPair>& pairs,
                                   std::size_t IndexPair::*side) {
    std::vector<bool> taken(count);
    for (const IndexPair& pair : pairs)
        taken[pair.*side] = true;
    std::vector<std::size_t> left;
    for (std::size_t i = 0; i < count; ++i)
        if (!taken[i]) left.push_back(i);
    return left;
}

using WordHolders = std::map<std::string_view, std::vector<std::size_t>>;

WordHolders holders_of(const std::vector<Item>& items, const std::vector<std::size_t>& of) {
    WordHolders holders;
    for (const std::size_t i : of)
        for (const std::string& word : items[i].words)
            if (auto& all = holders[word];
                all.size() <= most_with_a_word && (all.empty() || all.back() != i))
                all.push_back(i);
    return holders;
}

std::vector<std::size_t> sharing_a_word(const Item& item, const WordHolders& holders) {
    std::vector<std::size_t> found;
    for (const std::string& word : item.words)
        if (const auto held = holders.find(word);
            held != holders.end() && held->second.size() <= most_with_a_word)
            found.insert(found.end(), held->second.begin(), held->second.end());
    std::ranges::sort(found);
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

void pair_greedily(const std::vector<Item>& first, const std::vector<Item>& second,
                   const std::vector<std::size_t>& rows, const std::vector<std::size_t>& columns,
                   const Likeness& likeness, double least, std::vector<IndexPair>& pairs) {
    const WordHolders holders = holders_of(second, columns);
    std::vector<std::tuple<double, std::size_t, std::size_t>> candidates;
    for (const std::size_t i : rows)
        for (const std::size_t j : sharing_a_word(first[i], holders))
            if (const double by = likeness(i, j); by >= least) candidates.emplace_back(-by, i, j);
    std::ranges::sort(candidates);
    std::vector<bool> row_taken(first.size()), column_taken(second.size());
    for (const auto& [by, i, j] : candidates) {
        if (row_taken[i] || column_taken[j]) continue;
        row_taken[i] = column_taken[j] = true;
        pairs.emplace_back(i, j);
    }
}

}

std::vector<IndexPair> best_pairs(std::size_t first, std::size_t second, const Likeness& likeness,
                                  double least) {
    const bool turned = first > second;
    const std::size_t rows = std::min(first, second), columns = std::max(first, second);
    std::vector<double> worth(rows * columns);
    for (std::size_t row = 0; row < rows; ++row)
        for (std::size_t column = 0; column < columns; ++column) {
            const double by = turned ? likeness(column, row) : likeness(row, column);
            if (by >= least) worth[row * columns + column] = by;
        }
    const std::vector<std::size_t> found = Assignment(rows, columns, worth).columns_of_rows();
    std::vector<IndexPair> pairs;
    for (std::size_t row = 0; row < rows; ++row)
        if (worth[row * columns + found[row]] > 0)
            pairs.emplace_back(turned ? found[row] : row, turned ? row : found[row]);
    std::ranges::sort(pairs);
    return pairs;
}

std::vector<IndexPair> pairs_of(const std::vector<Item>& first, const std::vector<Item>& second,
                                const Likeness& likeness, double least) {
    std::vector<IndexPair> pairs;
    pair_equals(first, second, pairs);
    const auto rows = left_over(first.size(), pairs, &IndexPair::first);
    const auto columns = left_over(second.size(), pairs, &IndexPair::second);
    if (std::max(rows.size(), columns.size()) > longest_compared_whole) {
        pair_greedily(first, second, rows, columns, likeness, least, pairs);
    } else {
        const auto of_left = [&](std::size_t i, std::size_t j) {
            return likeness(rows[i], columns[j]);
        };
        for (const auto& [i, j] : best_pairs(rows.size(), columns.size(), of_left, least))
            pairs.emplace_back(rows[i], columns[j]);
    }
    std::ranges::sort(pairs);
    return pairs;
}

std::vector<std::size_t> out_of_order(const std::vector<std::size_t>& numbers) {
    constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::vector<std::size_t> ends, before(numbers.size(), none); // indices, by length; by index
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const auto at = std::ranges::lower_bound(ends, numbers[i], {},
                                                 [&](std::size_t index) { return numbers[index]; });
        if (at != ends.begin()) before[i] = *(at - 1);
        if (at == ends.end())
            ends.push_back(i);
        else
            *at = i;
    }
    std::vector<bool> in_order(numbers.size());
    for (std::size_t i = ends.empty() ? none : ends.back(); i != none; i = before[i])
        in_order[i] = true;
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        if (!in_order[i]) out.push_back(i);
    return out;
}

}
