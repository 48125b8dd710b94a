// Labelled postings: how many of an adviser's terms `match` looks for, how many of the heaviest are
// right, and whether where they stand is told right.
#include "compiler/base/source.hpp"
#include "compiler/matching/coverage.hpp"
#include "compiler/postings/posting.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

namespace fs = std::filesystem;
using quoin::postings::Posting;
using quoin::postings::Term;

namespace {

struct Label {
    std::string term, weight, standing, kind;
};

std::vector<Label> labels_of(const fs::path& file) {
    std::vector<Label> labels;
    std::ifstream lines(file);
    for (std::string line; std::getline(lines, line);) {
        std::vector<std::string> cells;
        for (std::size_t at = 0; at <= line.size();) {
            const std::size_t tab = std::min(line.find('\t', at), line.size());
            cells.push_back(line.substr(at, tab - at));
            at = tab + 1;
        }
        REQUIRE(cells.size() == 4);
        labels.push_back({cells[0], cells[1], cells[2], cells[3]});
    }
    return labels;
}

Posting read(const fs::path& file) {
    static const quoin::english::WordList words(std::string(QUOIN_DATA_FOLDER) +
                                                "/dictionaries/en_US.words");
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto index = sources.read_input(file.string(), diagnostics, quoin::TextOf::elsewhere);
    REQUIRE(index);
    const std::string& text = sources.file(*index).text;
    return quoin::postings::read_posting(quoin::postings::is_html(text)
                                             ? quoin::postings::html_lines(text)
                                             : quoin::postings::text_lines(text),
                                         *index, words);
}

// Without words that weigh nothing.
std::set<std::string> stems(const std::string& term) {
    static const std::set<std::string> weightless{
        "the",       "a",        "of",      "and",       "skill",        "skills", "experience",
        "knowledge", "course",   "courses", "program",   "software",     "system", "systems",
        "card",      "training", "degree",  "certified", "certification"};
    std::set<std::string> all, weighty;
    std::string word;
    for (const char c : quoin::postings::plain_line(term) + ' ') {
        if (c != ' ' && c != ',' && c != '(' && c != ')' && c != '"') {
            word += c;
            continue;
        }
        if (word.empty()) continue;
        std::ranges::transform(word, word.begin(), [](char letter) {
            return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
        });
        all.insert(quoin::postings::stem_of(word));
        if (!weightless.contains(word)) weighty.insert(quoin::postings::stem_of(word));
        word.clear();
    }
    return weighty.empty() ? all : weighty;
}

bool is_same(const std::string& one, const std::string& other) {
    const std::set<std::string> a = stems(one), b = stems(other);
    const auto within = [](const std::set<std::string>& small, const std::set<std::string>& large) {
        return std::ranges::includes(large, small) && large.size() - small.size() <= 1 &&
               !small.empty() && (large.size() <= 2 || small.size() >= 2);
    };
    return a == b || within(a, b) || within(b, a);
}

bool names(const Term& term, const std::string& label) {
    return is_same(term.words, label) ||
           (!term.other_form.empty() && is_same(term.other_form, label));
}

// Of those that `match` looks for.
const Term* find(const Posting& posting, const std::string& label) {
    const Term* found = nullptr;
    std::size_t looked_for = 0;
    for (const Term& term : posting.terms) {
        if (!term.listed || looked_for++ == quoin::matching::most_terms) break;
        if (!names(term, label)) continue;
        if (stems(term.words) == stems(label)) return &term;
        if (found == nullptr) found = &term;
    }
    return found;
}

struct Tally {
    int right = 0, all = 0;

    void add(bool holds) {
        ++all;
        right += holds ? 1 : 0;
    }
    double share() const { return all == 0 ? 1 : static_cast<double>(right) / all; }
};

struct Verdicts {
    Tally must, should, standing, kind, top;
    int boilerplate = 0;
};

constexpr std::size_t top = 20;

bool has_label(const Term& term, const std::vector<Label>& labels, const std::string& weight) {
    return std::ranges::any_of(labels, [&](const Label& label) {
        return (label.weight == weight || (weight == "right" && label.kind != "-")) &&
               names(term, label.term);
    });
}

void judge(const fs::path& file, const std::vector<Label>& labels, Verdicts& verdicts) {
    const Posting posting = read(file);
    for (const Label& label : labels) {
        if (label.kind == "-") continue;
        const Term* term = find(posting, label.term);
        (label.weight == "must" ? verdicts.must : verdicts.should).add(term != nullptr);
        if (term == nullptr) {
            MESSAGE(file.filename().string() << ": missed " << label.weight << " " << label.term);
            continue;
        }
        verdicts.standing.add(name_of(term->standing) == label.standing);
        verdicts.kind.add(name_of(term->kind).starts_with(label.kind));
    }
    for (std::size_t i = 0; i < std::min(top, posting.terms.size()); ++i) {
        const Term& term = posting.terms[i];
        if (!term.listed) break; // it is only said
        if (has_label(term, labels, "right")) {
            verdicts.top.add(true);
        } else if (has_label(term, labels, "never")) {
            ++verdicts.boilerplate;
            verdicts.top.add(false);
        } else if (!has_label(term, labels, "either")) {
            verdicts.top.add(false);
        }
    }
}

Verdicts judge_folder(const std::string& half) {
    Verdicts verdicts;
    std::vector<fs::path> files;
    for (const auto& entry :
         fs::directory_iterator(fs::path(QUOIN_SOURCE_FOLDER) / "tests/postings/labelled" / half))
        if (entry.path().extension() != ".tsv") files.push_back(entry.path());
    std::ranges::sort(files);
    for (const fs::path& file : files)
        judge(file, labels_of(fs::path(file).replace_extension(".labels.tsv")), verdicts);
    const std::string table = fmt::format(
        "{}: {} postings\n  must found      {:.3f} of {}\n  should found    {:.3f} of {}\n"
        "  standing right  {:.3f} of {}\n  kind right      {:.3f} of {}\n"
        "  right in the first {}  {:.3f} of {}, boilerplate {}\n",
        half, files.size(), verdicts.must.share(), verdicts.must.all, verdicts.should.share(),
        verdicts.should.all, verdicts.standing.share(), verdicts.standing.all,
        verdicts.kind.share(), verdicts.kind.all, top, verdicts.top.share(), verdicts.top.all,
        verdicts.boilerplate);
    MESSAGE(table);
    return verdicts;
}

}

// What is asked is 0.92 of must, 0.9 of where they stand, 0.75 of the first twenty, no boilerplate.
// Fourteen of these, read for the first time, came to 0.93, 0.98, 0.93 and none.
TEST_CASE("labelled postings: those looked at") {
    const Verdicts verdicts = judge_folder("tuning");
    CHECK(verdicts.must.share() >= 0.94);
    CHECK(verdicts.should.share() >= 0.89);
    CHECK(verdicts.standing.share() >= 0.975);
    CHECK(verdicts.kind.share() >= 0.95);
    CHECK(verdicts.top.share() >= 0.96);
    CHECK(verdicts.boilerplate <= 1);
}
