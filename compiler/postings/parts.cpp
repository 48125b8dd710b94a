// A heading says what stands below it, a sentence may say otherwise for itself.
#include "compiler/postings/parts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/denials.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/part_odds.hpp"
#include "compiler/postings/said_phrases.hpp"
#include "compiler/postings/stretches.hpp"

#include <algorithm>
#include <array>

namespace quoin::postings {

namespace {

constexpr std::size_t longest_label = 48; // bytes before the colon of `Requirements: …`

// Whether a statement asks for nothing, or may.
void judge_asking(Statement& statement, std::string_view lower, const Part& part) {
    struct Row {
        List list;
        LeftOut reason;
    };
    constexpr Row rows[] = {{List::said_of_pay, LeftOut::pay},
                            {List::said_of_equality, LeftOut::equality},
                            {List::said_of_applying, LeftOut::applying},
                            {List::said_of_the_employer, LeftOut::employer}};
    if (asks_for_nothing(lower)) statement.left_out = LeftOut::not_asked;
    const bool work = part.known && part.standing == Standing::duties && !part.not_read;
    for (const Row& row : rows) {
        if (work && row.reason == LeftOut::applying && !says_any(lower, List::applicants_own))
            continue; // Help clients with résumés
        const PhrasesSeen signs = seen_of(lower, row.list);
        if (!statement.left_out && signs.enough(part.known)) statement.left_out = row.reason;
        statement.doubtful = statement.doubtful || signs.some();
        statement.touched = statement.touched || signs.sure + signs.unsure > 0;
    }
}

Standing standing_of(std::string_view lower, const Part& part) {
    const bool preferred = says_preferred(lower);
    const bool sure = says_any(lower, List::said_surely_required);
    if (preferred || (part.standing == Standing::preferred && !sure)) return Standing::preferred;
    if (part.standing == Standing::required) return Standing::required;
    if (sure || (!part.known && says_any(lower, List::said_required))) return Standing::required;
    if (part.standing == Standing::duties || says_any(lower, List::said_duties))
        return Standing::duties;
    return Standing::elsewhere;
}

struct Label { // `Requirements: `, `How to apply. `, `You bring - `
    std::size_t length = 0, sign = 0;
    bool sure = false;
};

Label label_of(std::string_view text) {
    Label first;
    for (const std::string_view sign : {": ", ". ", " - ", " \u2013 ", " \u2014 ", "\u2014"}) {
        const std::size_t end = text.substr(0, longest_label + sign.size()).find(sign);
        if (end == text.npos || (first.length > 0 && end > first.length)) continue;
        first = {end, sign.size(), sign != ". "};
    }
    return first;
}

// What is surely to be left out is; what likely is stands nowhere.
Part part_of(const PartChances& chances) {
    constexpr double surely = 0.75, likely = 0.6, rather = 0.5;
    if (chances[0] >= likely)
        return {chances[0] >= surely, chances[0] >= surely, Standing::elsewhere, false};
    const auto kind = static_cast<std::size_t>(likeliest_read(chances));
    return {chances[kind] >= rather, false, static_cast<Standing>(kind - 1), false};
}

class PartReader {
public:
    explicit PartReader(std::span<const Line> lines) : lines_(lines) {}

    std::vector<Statement> read() {
        const std::vector<Stretch> stretches = stretches_of(lines_);
        const std::vector<PartChances> chances = chances_of(stretches, lines_);
        for (std::size_t i = 0; i < stretches.size(); ++i)
            read_stretch(stretches[i], chances[i]);
        if (!any_part_) call_the_rest_duties();
        for (Statement& statement : statements_)
            statement.outside = any_part_ && !statement.headed;
        return std::move(statements_);
    }

private:
    void read_stretch(const Stretch& stretch, const PartChances& chances) {
        constexpr double doubt = 0.2;
        const Part part = stretch.title ? Part{} : part_of(chances);
        unsure_ = chances[0] >= doubt;
        any_part_ = any_part_ || (part.known && !part.not_read);
        const bool named = stretch.headed && part_headed(stretch.heading()).known;
        bool goes_on = false; // what a semicolon parts
        for (const Piece& piece : stretch.pieces) {
            if (piece.heading) {
                const bool its_own = &piece == &stretch.pieces.front();
                if (!its_own || !named) add(piece, part, stretch.headed);
                continue;
            }
            read_sentence(piece, part, stretch.headed);
            if (goes_on) inherit();
            goes_on = piece.text.ends_with(';');
        }
    }

    // `Preferred: …` of an item says what it is.
    void read_sentence(Piece piece, Part part, bool headed) {
        const Line& line = lines_[piece.line];
        const bool begins = line.item && std::string_view(line.text).starts_with(piece.text);
        if (const Label label = begins ? label_of(piece.text) : Label{}; label.length > 0) {
            const Part labelled = part_headed(piece.text.substr(0, label.length));
            const bool topic = part.known && // of an item: Baking experience - rye
                               (labelled.not_read || labelled.standing == part.standing);
            if (labelled.known && labelled.sure && (label.sure || labelled.not_read) &&
                !part.not_read && !topic) {
                part = labelled;
                piece.text.remove_prefix(label.length + label.sign);
            }
        }
        add(piece, part, headed);
    }

    // From the clause before, unless it says more for itself.
    void inherit() {
        const Statement& before = statements_[statements_.size() - 2];
        Statement& last = statements_.back();
        if (last.standing == Standing::elsewhere ||
            (before.standing == Standing::preferred && before.text.ends_with(';')))
            last.standing = before.standing;
    }

    // Of a posting in prose: what is not asked for is what there is to do.
    void call_the_rest_duties() {
        for (Statement& statement : statements_)
            if (statement.standing == Standing::elsewhere && !statement.heading)
                statement.standing = Standing::duties;
    }

    void add(const Piece& piece, const Part& part, bool headed) {
        const Line& line = lines_[piece.line];
        const std::string lower = comparable(piece.text);
        Statement statement;
        statement.text = piece.text;
        statement.heading = piece.heading;
        statement.item = line.item;
        statement.headed = part.known;
        statement.line = line.number;
        statement.unsure = unsure_;
        const bool topic = piece.heading && part.known && !part.not_read && line.minor;
        statement.standing = topic           ? part.standing
                             : piece.heading ? Standing::elsewhere
                                             : standing_of(lower, part);
        judge_asking(statement, lower, part);
        if (part.not_read && (headed || !statement.left_out))
            statement.left_out = headed ? LeftOut::heading : LeftOut::wording;
        statements_.push_back(std::move(statement));
    }

    std::span<const Line> lines_;
    std::vector<Statement> statements_;
    bool any_part_ = false; // that asks for something
    bool unsure_ = false;   // of the stretch being read
};

}

std::string_view name_of(Standing standing) {
    constexpr std::array<std::string_view, 4> names{"required", "preferred", "duties", "elsewhere"};
    return names[static_cast<std::size_t>(standing)];
}

std::string_view name_of(LeftOut reason) {
    constexpr std::array<std::string_view, 7> names{"pay and benefits",
                                                    "equal opportunity",
                                                    "how to apply",
                                                    "of the employer",
                                                    "under a heading that asks for nothing",
                                                    "not asked for",
                                                    "asks for nothing, by its wording"};
    return names[static_cast<std::size_t>(reason)];
}

std::vector<Statement> statements(std::span<const Line> lines) {
    return PartReader(lines).read();
}

}
