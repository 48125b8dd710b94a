// The choice against an integer programme that the GNU Linear Programming Kit solves: the second
// opinion where all choices are too many to try.
#include "compiler/tailoring/choose.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/tailoring/problems.hpp"

#include <doctest/doctest.h>
#include <glpk.h>

#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

namespace {

using quoin::tailoring::none;
using quoin::tailoring::Piece;
using quoin::tailoring::Problem;

// A column of 0 or 1 for each piece, and two for each term: that it is shown once, and twice.
class Programme {
public:
    explicit Programme(const Problem& problem)
        : problem_(problem), programme_(glp_create_prob(), glp_delete_prob) {
        glp_set_obj_dir(programme_.get(), GLP_MAX);
        glp_add_cols(programme_.get(), column(problem.pieces.size(), 2 * problem.terms.size()) - 1);
        for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
            glp_set_col_kind(programme_.get(), column(p), GLP_BV);
            glp_set_obj_coef(programme_.get(), column(p), double(problem.pieces[p].worth));
        }
        Row capacity;
        for (std::size_t p = 0; p < problem.pieces.size(); ++p)
            capacity.emplace_back(column(p), double(problem.pieces[p].height));
        add(capacity, double(problem.capacity));
        add_rules();
        add_terms();
    }

    // What no choice is worth more than.
    double bound() {
        glp_iocp way;
        glp_init_iocp(&way);
        way.msg_lev = GLP_MSG_OFF;
        way.presolve = GLP_ON;
        way.cov_cuts = way.mir_cuts = way.gmi_cuts = GLP_ON;
        way.tm_lim = 20000;
        double bound = -1;
        way.cb_info = &bound;
        way.cb_func = [](glp_tree* tree, void* into) {
            const int best = glp_ios_best_node(tree);
            if (best != 0) *static_cast<double*>(into) = glp_ios_node_bound(tree, best);
        };
        glp_term_out(GLP_OFF);
        if (glp_intopt(programme_.get(), &way) == 0 && glp_mip_status(programme_.get()) == GLP_OPT)
            bound = glp_mip_obj_val(programme_.get());
        return bound;
    }

private:
    using Row = std::vector<std::pair<int, double>>;

    static int column(std::size_t index, std::size_t beyond = 0) {
        return static_cast<int>(index + beyond + 1);
    }

    void add(const Row& row, double most) { // that its sum is no more
        std::vector<int> columns{0};
        std::vector<double> factors{0};
        for (const auto& [index, factor] : row) {
            columns.push_back(index);
            factors.push_back(factor);
        }
        const int at = glp_add_rows(programme_.get(), 1);
        glp_set_row_bnds(programme_.get(), at, GLP_UP, 0, most);
        glp_set_mat_row(programme_.get(), at, static_cast<int>(row.size()), columns.data(),
                        factors.data());
    }

    void add_rules() {
        const auto parts = parts_of(problem_);
        for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
            const Piece& piece = problem_.pieces[p];
            if (piece.within == none) {
                if (piece.must) add({{column(p), -1}}, -1);
            } else {
                add({{column(p), 1}, {column(piece.within), -1}}, 0);
                if (piece.must) add({{column(p), -1}, {column(piece.within), 1}}, 0);
            }
            Row few{{column(p), double(piece.least)}}, many{{column(p), -double(piece.most)}};
            for (const std::size_t part : parts[p]) {
                few.emplace_back(column(part), -1);
                many.emplace_back(column(part), 1);
            }
            if (piece.least > 0) add(few, 0);
            if (piece.most != none) add(many, 0);
        }
    }

    void add_terms() {
        for (std::size_t t = 0; t < problem_.terms.size(); ++t) {
            const int once = column(problem_.pieces.size(), 2 * t), twice = once + 1;
            glp_set_obj_coef(programme_.get(), once, double(problem_.terms[t].first));
            glp_set_obj_coef(programme_.get(), twice, double(problem_.terms[t].second));
            glp_set_col_bnds(programme_.get(), once, GLP_DB, 0, 1);
            glp_set_col_bnds(programme_.get(), twice, GLP_DB, 0, 1);
            Row shown{{once, 1}, {twice, 1}};
            for (std::size_t p = 0; p < problem_.pieces.size(); ++p)
                for (const std::size_t term : problem_.pieces[p].shows)
                    if (term == t) shown.emplace_back(column(p), -1);
            add(shown, 0);
        }
    }

    const Problem& problem_;
    std::unique_ptr<glp_prob, void (*)(glp_prob*)> programme_;
};

}

TEST_CASE("choosing: within a hundredth of what an integer programme finds") {
    double worst = 1;
    for (int seed = 0; seed < quoin::tries(100); ++seed) {
        quoin::tailoring_tests::Maker maker(static_cast<unsigned>(seed));
        const Problem problem = maker.problem({6, 4, 7, 22, 0.25});
        CAPTURE(seed);
        const auto chosen = quoin::tailoring::choose(problem);
        const double bound = Programme(problem).bound();
        REQUIRE(chosen);
        const double found = double(chosen->worth);
        CHECK(found >= 0.99 * bound);
        CHECK(found <= bound * (1 + 1e-9));
        CHECK(double(chosen->bound) >= bound * (1 - 1e-9));
        worst = std::min(worst, found / bound);
    }
    MESSAGE("the least is " << worst << " of the bound");
}
