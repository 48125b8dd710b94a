// Least distance programming by non-negative least squares: C. L. Lawson and R. J. Hanson, "Solving
// Least Squares Problems" (1974), chapter 23.
#include "compiler/stages/fit/nearest_point.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace quoin::fit {

namespace {

constexpr std::size_t matrix_rows = setting_dimensions + 1;
using MatrixColumn = std::array<double, matrix_rows>;

constexpr double nearly_zero = 1e-13;

double dot(const MatrixColumn& a, const MatrixColumn& b) {
    double sum = 0;
    for (std::size_t i = 0; i < matrix_rows; ++i)
        sum += a[i] * b[i];
    return sum;
}

void subtract(MatrixColumn& from, double factor, const MatrixColumn& what) {
    for (std::size_t i = 0; i < matrix_rows; ++i)
        from[i] -= factor * what[i];
}

// Each half-space as a column of unit normal, its bound below.
std::vector<MatrixColumn> columns_of(std::span<const HalfSpace> half_spaces) {
    std::vector<MatrixColumn> columns;
    for (const HalfSpace& half : half_spaces) {
        MatrixColumn column{};
        std::copy(half.normal.begin(), half.normal.end(), column.begin());
        const double length = std::sqrt(dot(column, column));
        if (length == 0) continue;
        column.back() = half.bound;
        for (double& value : column)
            value /= length;
        columns.push_back(column);
    }
    return columns;
}

struct Solution {
    std::vector<double> factors; // one for each passive column
    MatrixColumn residual{};     // target less the columns' sum
};

// Least squares over linearly independent columns, by Gram-Schmidt done twice over.
Solution least_squares(const std::vector<MatrixColumn>& columns,
                       const std::vector<std::size_t>& passive, const MatrixColumn& target) {
    const std::size_t count = passive.size();
    std::vector<MatrixColumn> basis;
    std::vector<std::vector<double>> upper(count, std::vector<double>(count, 0));
    std::vector<double> factors(count);
    Solution solution{{}, target};
    for (std::size_t j = 0; j < count; ++j) {
        MatrixColumn column = columns[passive[j]];
        for (int pass = 0; pass < 2; ++pass) {
            for (std::size_t i = 0; i < j; ++i) {
                const double share = dot(basis[i], column);
                upper[i][j] += share;
                subtract(column, share, basis[i]);
            }
        }
        upper[j][j] = std::sqrt(dot(column, column));
        for (double& value : column)
            value /= upper[j][j];
        factors[j] = dot(column, solution.residual);
        subtract(solution.residual, factors[j], column);
        basis.push_back(column);
    }
    for (std::size_t j = count; j-- > 0;) {
        for (std::size_t k = j + 1; k < count; ++k)
            factors[j] -= upper[j][k] * factors[k];
        factors[j] /= upper[j][j];
    }
    solution.factors = std::move(factors);
    return solution;
}

class NonNegativeLeastSquares {
public:
    explicit NonNegativeLeastSquares(std::vector<MatrixColumn> columns)
        : columns_(std::move(columns)), values_(columns_.size(), 0) {
        target_.back() = 1;
        residual_ = target_;
    }

    MatrixColumn residual() {
        for (std::size_t rounds = 0; rounds < 4 * columns_.size() && enter(); ++rounds)
            settle();
        return residual_;
    }

private:
    // The column that the residual leans on most becomes passive.
    bool enter() {
        std::size_t best = columns_.size();
        double lean = nearly_zero;
        for (std::size_t j = 0; j < columns_.size(); ++j) {
            if (std::find(passive_.begin(), passive_.end(), j) != passive_.end()) continue;
            if (const double here = dot(columns_[j], residual_); here > lean) {
                lean = here;
                best = j;
            }
        }
        if (best == columns_.size() || passive_.size() == matrix_rows) return false;
        passive_.push_back(best);
        return true;
    }

    // Steps towards the passive columns' least squares, dropping those that reach zero.
    void settle() {
        while (!passive_.empty()) {
            const Solution solution = least_squares(columns_, passive_, target_);
            double step = 1;
            for (std::size_t j = 0; j < passive_.size(); ++j) {
                const double old = values_[passive_[j]];
                if (solution.factors[j] <= 0)
                    step = std::min(step, old / (old - solution.factors[j]));
            }
            for (std::size_t j = 0; j < passive_.size(); ++j) {
                double& value = values_[passive_[j]];
                value += step * (solution.factors[j] - value);
            }
            if (step == 1) {
                residual_ = solution.residual;
                return;
            }
            std::erase_if(passive_, [&](std::size_t j) {
                if (values_[j] > nearly_zero) return false;
                values_[j] = 0;
                return true;
            });
        }
    }

    std::vector<MatrixColumn> columns_;
    std::vector<double> values_;
    std::vector<std::size_t> passive_;
    MatrixColumn target_{};
    MatrixColumn residual_{};
};

}

Vector nearest_point(std::span<const HalfSpace> half_spaces) {
    const MatrixColumn residual = NonNegativeLeastSquares(columns_of(half_spaces)).residual();
    Vector point{};
    for (std::size_t i = 0; i < point.size(); ++i)
        point[i] = -residual[i] / residual.back();
    return point;
}

}
