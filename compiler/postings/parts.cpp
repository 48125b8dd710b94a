// A heading says what stands below it, a sentence may say otherwise for itself.
#include "compiler/postings/parts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/postings/headings.hpp"
#include "compiler/postings/lists.hpp"

#include <algorithm>
#include <array>

namespace quoin::postings {

namespace {

constexpr std::size_t longest_label = 48; // bytes before the colon of `Requirements: …`
constexpr std::size_t longest_lead_in = 200;

bool has_any(std::string_view lower, List list) {
    return std::ranges::any_of(listed(lines_of(list)),
                               [&](std::string_view phrase) { return has_phrase(lower, phrase); });
}

struct PhrasesSeen { // phrases of a list that are in a sentence
    int sure = 0, unsure = 0;

    // Under a heading that asks for something, a sentence asks.
    bool enough(bool asked) const {
        return asked ? sure > 1 || (sure > 0 && unsure > 1) : sure > 0 || unsure > 2;
    }
    bool some() const { return sure > 0 || unsure > 1; }
};

PhrasesSeen seen_of(std::string_view lower, List list) {
    PhrasesSeen signs;
    each_listed(lines_of(list), [&](std::string_view phrase, std::string_view said) {
        if (has_phrase(lower, phrase)) ++(said == "surely" ? signs.sure : signs.unsure);
    });
    return signs;
}

// No degree needed; no prior knowledge of boats is expected.
bool waives(std::string_view lower) {
    constexpr std::string_view waived[] = {"needed", "required", "necessary", "expected"};
    return lower.starts_with("no ") &&
           std::ranges::any_of(waived, [&](std::string_view w) { return has_phrase(lower, w); });
}

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
    if (waives(lower) || has_any(lower, List::said_not_asked))
        statement.left_out = LeftOut::not_asked;
    for (const Row& row : rows) {
        const PhrasesSeen signs = seen_of(lower, row.list);
        if (!statement.left_out && signs.enough(part.known)) statement.left_out = row.reason;
        statement.doubtful = statement.doubtful || signs.some();
        statement.touched = statement.touched || signs.sure + signs.unsure > 0;
    }
}

Standing standing_of(std::string_view lower, const Part& part) {
    const bool preferred = has_any(lower, List::said_preferred);
    if (preferred || part.standing == Standing::preferred) return Standing::preferred;
    if (part.standing == Standing::required) return Standing::required;
    if (has_any(lower, part.known ? List::said_surely_required : List::said_required))
        return Standing::required;
    if (part.standing == Standing::duties || has_any(lower, List::said_duties))
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

class PartReader {
public:
    explicit PartReader(std::span<const Line> lines) : lines_(lines) {}

    std::vector<Statement> read() {
        for (std::size_t i = 0; i < lines_.size(); ++i)
            read_line(i);
        if (!any_part_) call_the_rest_duties();
        for (Statement& statement : statements_)
            statement.outside = any_part_ && !statement.headed;
        return std::move(statements_);
    }

private:
    bool leads_in(std::size_t i) const { // to the items below
        const std::string_view text = lines_[i].text;
        return !lines_[i].item && text.size() <= longest_lead_in && text.ends_with(':') &&
               i + 1 < lines_.size();
    }

    // A list under a heading that says nothing known: by its items, else duties come first, then
    // what is required, then what is preferred (common practice).
    Part usual_next(std::size_t i) const {
        const auto told = part_of_items(lines_.subspan(i + 1));
        const bool asks = told && told->standing == Standing::required;
        if (asks && last_ == Standing::required) return {true, false, Standing::preferred};
        if (told) return *told;
        if (!last_) return {true, false, Standing::duties};
        if (*last_ == Standing::duties) return {true, false, Standing::required};
        return {true, false, Standing::preferred};
    }

    // A paragraph most of whose sentences say what `you` do.
    bool tells_you(std::size_t i) const {
        if (i >= lines_.size() || lines_[i].heading || lines_[i].item) return false;
        const auto sentences = sentences_of(lines_[i].text);
        const auto told = std::ranges::count_if(sentences, [](std::string_view sentence) {
            const std::string lower = comparable(sentence);
            return lower.starts_with("you ") || lower.starts_with("you'") ||
                   lower.find(", you ") != lower.npos || lower.starts_with("as a");
        });
        return static_cast<std::size_t>(told) * 2 >= sentences.size();
    }

    void open_part(std::size_t i) {
        const bool below_item = i + 1 < lines_.size() && lines_[i + 1].item;
        const bool title = i == 0 && !below_item && !lines_[i].text.ends_with(':');
        const Part headed = title ? Part{} : part_headed(lines_[i].text);
        named_ = headed.known && !headed.not_read; // such a heading asks for nothing itself
        if (!headed.known && lines_[i].minor && part_.known) return;
        part_ = headed;
        if (!headed.known && below_item) part_ = usual_next(i);
        if (!headed.known && !below_item && !title && tells_you(i + 1))
            part_ = {true, false, Standing::duties};
    }

    void read_line(std::size_t i) {
        const Line& line = lines_[i];
        if (line.heading || leads_in(i)) {
            open_part(i);
            any_part_ = any_part_ || (part_.known && !part_.not_read);
            items_ = false;
            if (!named_) add(line.text, line, part_, true);
            return;
        }
        if (!line.item && line.parted && items_) part_ = {}; // the list is over
        items_ = items_ || line.item;
        if (line.item && part_.known && !part_.not_read) last_ = part_.standing;
        read_text(line, part_);
    }

    // `Requirements: …` says what its own line is, and so does `How to apply. …`.
    void read_text(const Line& line, Part part) {
        std::string_view text = line.text;
        if (const Label label = label_of(text); label.length > 0) {
            const Part labelled = part_headed(text.substr(0, label.length));
            const bool topic = line.item && part.known && // of an item: Baking experience - rye
                               (labelled.not_read || labelled.standing == part.standing);
            if (labelled.known && (label.sure || labelled.not_read) && !part.not_read && !topic) {
                part = labelled;
                text.remove_prefix(label.length + label.sign);
            }
        }
        bool goes_on = false; // what a semicolon parts, and a paragraph under no heading
        for (const std::string_view sentence : sentences_of(text)) {
            add(sentence, line, part, false);
            if (goes_on) inherit();
            goes_on = sentence.ends_with(';') || (!part.known && !line.item && !any_part_);
        }
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

    void add(std::string_view text, const Line& line, const Part& part, bool heading) {
        const std::string lower = comparable(text);
        Statement statement{std::string(text), {},    {},    heading, line.item,
                            part.known,        false, false, false,   line.number};
        statement.standing = heading ? Standing::elsewhere : standing_of(lower, part);
        if (part.not_read)
            statement.left_out = LeftOut::heading;
        else
            judge_asking(statement, lower, part);
        statements_.push_back(std::move(statement));
    }

    std::span<const Line> lines_;
    std::vector<Statement> statements_;
    Part part_;
    bool items_ = false; // of this part there were some
    bool named_ = false;
    std::optional<Standing> last_; // of the lists that ask for something
    bool any_part_ = false;        // that asks for something
};

bool ends_abbreviation(std::string_view before) {
    constexpr std::string_view short_forms[] = {"e.g", "i.e", "etc", "dr",  "mr",  "mrs",  "ms",
                                                "st",  "vs",  "inc", "co",  "no",  "dept", "approx",
                                                "lb",  "lbs", "hr",  "hrs", "min", "yr",   "yrs"};
    const std::size_t blank = before.find_last_of(" (");
    const std::string last = lower_case(blank == before.npos ? before : before.substr(blank + 1));
    const bool initial = last.size() == 1 && is_ascii_letter(last[0]);
    return initial || last.ends_with(".m") ||
           std::ranges::find(short_forms, last) != std::end(short_forms);
}

}

std::string_view name_of(Standing standing) {
    constexpr std::array<std::string_view, 4> names{"required", "preferred", "duties", "elsewhere"};
    return names[static_cast<std::size_t>(standing)];
}

std::string_view name_of(LeftOut reason) {
    constexpr std::array<std::string_view, 6> names{"pay and benefits",
                                                    "equal opportunity",
                                                    "how to apply",
                                                    "of the employer",
                                                    "under a heading that asks for nothing",
                                                    "not asked for"};
    return names[static_cast<std::size_t>(reason)];
}

std::vector<std::string_view> sentences_of(std::string_view text) {
    std::vector<std::string_view> sentences;
    std::size_t begin = 0;
    const auto close = [&](std::size_t end) {
        const std::string_view sentence = trimmed(text.substr(begin, end - begin));
        if (!sentence.empty()) sentences.push_back(sentence);
        begin = end;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool before_blank = i + 1 < text.size() && text[i + 1] == ' ';
        const bool stop =
            c == '!' || c == '?' || (c == '.' && !ends_abbreviation(text.substr(begin, i - begin)));
        if (before_blank && (c == ';' || stop)) close(i + 1);
        if (text.substr(i).starts_with("\u2026 ")) close(i + 3);
    }
    close(text.size());
    return sentences;
}

std::vector<Statement> statements(std::span<const Line> lines) {
    return PartReader(lines).read();
}

}
