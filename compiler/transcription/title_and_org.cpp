#include "compiler/transcription/title_and_org.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace quoin::transcription {

namespace {

constexpr double telling = 1.5; // a difference that is no accident
constexpr double later = 0.8;   // of a later comma than an earlier

std::string joined_parts(std::span<const std::string_view> parts) {
    std::string text;
    for (const std::string_view part : parts)
        text.append(text.empty() ? "" : ", ").append(part);
    return text;
}

struct CommaCut {
    std::string left, right;
    double difference = 0; // of how they lean; above 0: the role comes first
};

// One name with commas in it: cut where its two sides differ most.
std::optional<CommaCut> cut_at_comma(std::string_view text) {
    const auto parts = comma_parts(text);
    std::optional<CommaCut> best;
    for (std::size_t i = 1; i < parts.size() && i < 8; ++i) {
        CommaCut cut{joined_parts({parts.data(), i}),
                     joined_parts({parts.data() + i, parts.size() - i}), 0};
        cut.difference = leans_to_role(cut.left) - leans_to_role(cut.right);
        // a later comma is to tell more, for places and offices follow what they belong to
        if (!best || std::abs(cut.difference) > std::abs(best->difference) + later)
            best = std::move(cut);
    }
    return best;
}

// `Rower at the Harbor Club`
std::optional<CommaCut> cut_at_preposition(std::string_view text) {
    for (const std::string_view word : {" at ", " with "})
        if (const std::size_t at = text.find(word); at != text.npos) {
            CommaCut cut{std::string(text.substr(0, at)),
                         std::string(text.substr(at + word.size())), 0};
            cut.difference = leans_to_role(cut.left) - leans_to_role(cut.right);
            if (cut.difference > telling) return cut;
        }
    return std::nullopt;
}

// The last part of an employer's line may be the town: `Print Shop, Port Ansel`.
void take_town(TitleAndOrg& result) {
    const auto parts = comma_parts(result.org);
    if (parts.size() < 2 || !may_be_town(parts.back())) return;
    if (leans_to_role(parts.front()) >= (result.title.empty() ? 0 : telling)) return;
    result.town = parts.back();
    result.org = joined_parts({parts.data(), parts.size() - 1});
    result.sure = false;
}

TitleAndOrg of_one_name(const HeadPiece& piece, const HeadHabits& habits) {
    TitleAndOrg result;
    auto cut = cut_at_comma(piece.text);
    if (!cut || std::abs(cut->difference) < telling)
        if (const auto other = cut_at_preposition(piece.text)) cut = other;
    if (cut && std::abs(cut->difference) >= telling) {
        const bool role_first = cut->difference > 0;
        result.title = role_first ? cut->left : cut->right;
        result.org = role_first ? cut->right : cut->left;
        return result;
    }
    const double lean = leans_to_role(piece.text) + habits.lean(piece, 0);
    (lean >= 0 ? result.title : result.org) = piece.text;
    result.sure = std::abs(lean) > telling / 2;
    return result;
}

// What is neither belongs to what it stands beside, if no more than a comma or a dash parts them.
void join_or_leave(const std::vector<HeadPiece>& names, std::size_t at, std::size_t title,
                   std::size_t org, std::vector<std::string>& texts, TitleAndOrg& result) {
    const HeadPiece& piece = names[at];
    const bool last = at > title && at > org && at + 1 == names.size();
    const bool after_org = at == org + 1 && piece.row == names[org].row;
    if (result.town.empty() && may_be_town(piece.text) && (last || after_org)) {
        result.town = piece.text;
        result.sure = false;
        return;
    }
    const bool beside = at > 0 && piece.row == names[at - 1].row && !piece.joint.empty();
    if (beside && (at - 1 == title || at - 1 == org) && piece.strong == names[at - 1].strong) {
        texts[at - 1] += piece.joint + piece.text;
        return;
    }
    result.others.push_back(piece.text);
}

}

HeadHabits::Look HeadHabits::look_of(const HeadPiece& piece) {
    return {piece.strong, piece.slanted, piece.font};
}

void HeadHabits::learn(const HeadPieces& pieces) {
    if (pieces.names.size() < 2) return;
    for (std::size_t i = 0; i < std::min<std::size_t>(pieces.names.size(), 2); ++i) {
        const double lean = leans_to_role(pieces.names[i].text);
        if (std::abs(lean) < telling) continue;
        const double vote = lean > 0 ? 1 : -1;
        by_look_[look_of(pieces.names[i])] += vote;
        by_position_[i] += vote;
    }
}

void HeadHabits::learn_places(const HeadPieces& pieces) {
    for (const std::size_t row : pieces.place_rows)
        ++place_rows_[row];
}

bool HeadHabits::has_places_on(std::size_t row) const {
    const auto found = place_rows_.find(row);
    return found != place_rows_.end() && found->second > 1;
}

double HeadHabits::lean(const HeadPiece& piece, std::size_t position) const {
    double lean = 0;
    if (const auto found = by_look_.find(look_of(piece)); found != by_look_.end())
        lean += std::clamp(found->second, -3.0, 3.0) * 0.4;
    if (const auto found = by_position_.find(position); found != by_position_.end())
        lean += std::clamp(found->second, -2.0, 2.0) * 0.4;
    return lean;
}

void settle_places(HeadPieces& pieces, const HeadHabits& habits) {
    constexpr std::size_t most = 4; // words of a place
    if (!pieces.places.empty() || pieces.names.size() < 2) return;
    for (auto piece = pieces.names.begin(); piece != pieces.names.end(); ++piece) {
        if (leans_to_role(piece->text) >= telling) continue;
        const std::size_t words = word_count(piece->text);
        const bool below_school = piece != pieces.names.begin() && !piece->joint.empty() &&
                                  piece->row == (piece - 1)->row && names_school((piece - 1)->text);
        const bool usual = habits.has_places_on(piece->row) && words <= most;
        const bool town = pieces.names.size() > 2 && may_be_town(piece->text);
        if (!(piece->at_edge && (usual || town)) && !(below_school && town)) continue;
        pieces.places.push_back(piece->text);
        pieces.place_guessed = true;
        pieces.names.erase(piece);
        return;
    }
}

namespace {

TitleAndOrg of_names(const HeadPieces& pieces, const HeadHabits& habits) {
    const std::vector<HeadPiece>& names = pieces.names;
    TitleAndOrg result;
    if (names.empty()) return result;
    if (names.size() == 1) {
        result = of_one_name(names.front(), habits);
        if (pieces.places.empty()) take_town(result);
        return result;
    }
    const bool undated = names.size() == 2 && pieces.dates.empty() && pieces.places.empty();
    if (undated && may_be_town(names[1].text) && leans_to_role(names[0].text) < -0.5 &&
        leans_to_role(names[1].text) == 0) { // `Harbor Home Goods - Gullhaven`, above its positions
        result.org = names[0].text;
        result.town = names[1].text;
        result.sure = false;
        return result;
    }
    std::vector<double> leans;
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < names.size(); ++i) {
        leans.push_back(leans_to_role(names[i].text) + habits.lean(names[i], i) -
                        0.3 * static_cast<double>(i > 1));
        texts.push_back(names[i].text);
    }
    const auto title = static_cast<std::size_t>(std::ranges::max_element(leans) - leans.begin());
    leans[title] = 1e6;
    const auto org = static_cast<std::size_t>(std::ranges::min_element(leans) - leans.begin());
    leans[title] = leans_to_role(names[title].text) + habits.lean(names[title], title);
    result.sure = leans[title] - leans[org] >= telling;
    for (std::size_t i = 0; i < names.size(); ++i)
        if (i != title && i != org) join_or_leave(names, i, title, org, texts, result);
    result.title = texts[title];
    result.org = texts[org];
    if (pieces.places.empty() && result.town.empty()) take_town(result);
    return result;
}

// `120 hours`: how much of it there was, which names nothing.
bool tells_amount(const HeadPiece& piece) {
    constexpr std::array<std::string_view, 8> units = {"hours", "hrs",    "hr",      "weeks",
                                                       "days",  "shifts", "credits", "months"};
    const std::size_t space = piece.text.rfind(' ');
    return is_figure(piece.text.front()) && space != std::string::npos &&
           is_one_of(lower_case(trimmed(std::string_view(piece.text).substr(space), " .")), units);
}

}

TitleAndOrg title_and_org(const HeadPieces& pieces, const HeadHabits& habits) {
    HeadPieces names = pieces;
    std::erase_if(names.names, tells_amount);
    TitleAndOrg result = of_names(names, habits);
    for (const HeadPiece& piece : pieces.names)
        if (tells_amount(piece)) result.others.push_back(piece.text);
    return result;
}

}
