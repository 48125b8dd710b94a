// Checks of whose name and whose details stand on the page: the writer's own in one form, and
// nobody else's.
#include "compiler/advice/check.hpp"
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace quoin::advice {

namespace {

constexpr std::size_t shortest_name_part = 4; // of a name, for a slip in it to be told

std::vector<std::string> parts_of_name(const model::Resume& resume) {
    std::vector<std::string> parts;
    const std::string name = plain_in(resume.find(trade::FieldName::name));
    for (const WordAt& word : words_in(name))
        parts.emplace_back(word.word);
    return parts;
}

// One letter more, less or other, or two of them swapped.
bool is_one_edit(std::string_view a, std::string_view b) {
    if (a.size() > b.size()) std::swap(a, b);
    if (b.size() - a.size() > 1 || a == b) return false;
    std::size_t begin = 0;
    while (begin < a.size() && a[begin] == b[begin])
        ++begin;
    const std::string_view rest_a = a.substr(begin), rest_b = b.substr(begin);
    if (a.size() < b.size()) return rest_a == rest_b.substr(1);
    if (rest_a.substr(1) == rest_b.substr(1)) return true;
    return rest_a.size() > 1 && rest_a[0] == rest_b[1] && rest_a[1] == rest_b[0] &&
           rest_a.substr(2) == rest_b.substr(2);
}

std::string letters_alone(std::string_view word) { // okonjolund of Okonjo-Lund
    std::string plain = plain_letters(word);
    std::erase_if(plain, [](char c) { return !is_small_letter(c); });
    return plain;
}

// The part of the name that a word is a slip for.
const std::string* slipped_part(std::string_view word, const std::vector<std::string>& parts) {
    const std::string plain = letters_alone(word);
    if (plain.size() < shortest_name_part) return nullptr;
    const std::string* meant = nullptr;
    for (const std::string& part : parts) {
        const std::string own = letters_alone(part);
        if (own == plain) return nullptr;
        if (own.size() >= shortest_name_part && is_one_edit(plain, own)) meant = &part;
    }
    return meant;
}

bool is_own_part(std::string_view word, const std::vector<std::string>& parts) {
    const std::string plain = plain_letters(word);
    return std::ranges::any_of(
        parts, [&](const std::string& part) { return plain_letters(part) == plain; });
}

// `A.`, of Adaeze
bool is_own_initial(std::string_view text, const WordAt& word,
                    const std::vector<std::string>& parts) {
    return word.word.size() == 1 && !parts.empty() && word.word[0] == parts.front()[0] &&
           text.substr(word.offset + 1).starts_with('.');
}

// `Kasimir Thandeka` beside Casimir Thandeka: a slip with another part of the name next to it.
// In a title or a link one part by itself will do, if it is no word of its own.
void look_for_slips(const TextInResume& part, const std::vector<std::string>& parts, bool alone,
                    const english::Language& language, std::vector<Finding>& findings) {
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!is_capital_letter(words[i].word.front())) continue;
        const bool beside = (i > 0 && (is_own_part(words[i - 1].word, parts) ||
                                       is_own_initial(part.plain, words[i - 1], parts))) ||
                            (i + 1 < words.size() && is_own_part(words[i + 1].word, parts));
        if (!beside && !alone) continue;
        const std::string* meant = slipped_part(words[i].word, parts);
        constexpr std::size_t long_enough = 5; // to be no other name
        if (meant && !beside &&
            (words[i].word.size() < long_enough || language.spelled_right(part.small(words[i]))))
            meant = nullptr;
        if (meant)
            report<messages::name_in_two_forms>(
                findings, part.text.place(words[i].offset, words[i].word.size()),
                in_quotes(words[i].word), in_quotes(*meant));
    }
}

// Double names and those with a particle may be in one word, or one of the two may do.
std::vector<std::string> forms_in_address(const std::vector<std::string>& parts) {
    std::vector<std::string> forms = parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i + 1 < parts.size()) forms.push_back(parts[i] + parts[i + 1]);
        for (const std::string_view piece : pieces_of(parts[i], "-"))
            forms.emplace_back(piece);
    }
    return forms;
}

// A letter before or behind is an initial, and a part left out at the end a short form.
bool is_initial_beside(std::string_view piece, const std::string& part) {
    const std::string own = letters_alone(part);
    constexpr std::size_t long_enough = 8; // one of two like letters at the end: halloran
    if (own.size() >= long_enough && own.size() == piece.size() + 1 && own.back() == piece.back())
        return false;
    return own.starts_with(piece) || piece.substr(1) == own ||
           piece.substr(0, piece.size() - 1) == own;
}

// `casimr.thandeka@`: a part of the address that is nearly, and not, a part of the name.
void look_at_address(const model::Field& field, const std::vector<std::string>& parts,
                     std::vector<Finding>& findings) {
    const std::string address = plain_in(&field);
    const std::string local = lower_case(address.substr(0, address.find('@'))); // or all of a link
    const std::vector<std::string> names = forms_in_address(parts);
    for (std::size_t at = 0; at < local.size();) {
        const std::size_t end = std::min(local.find_first_of(".-_+/:0123456789", at), local.size());
        const std::string piece = local.substr(at, end - at);
        at = end + 1;
        constexpr std::size_t long_enough = 5; // shorter ones are short forms: jon
        const std::string* meant = slipped_part(piece, names);
        // a short one of the same length, with another part of the name beside it: lynd for Lind
        const bool beside = meant && piece.size() == letters_alone(*meant).size() &&
                            std::ranges::any_of(parts, [&](const std::string& part) {
                                return part != *meant && has_phrase(local, letters_alone(part));
                            });
        if (piece.size() < long_enough && !beside) continue;
        if (meant && !is_initial_beside(piece, *meant))
            report<messages::name_in_address>(findings, field.place, in_quotes(piece),
                                              in_quotes(*meant));
    }
}

bool is_shown_link(const model::Field& field) {
    const std::string shown = plain_in(&field);
    return field.name == trade::FieldName::link && shown.find(' ') == shown.npos &&
           shown.find('.') != shown.npos;
}

bool begins_small(std::string_view word) {
    return is_small_letter(word.front()) && !is_one_of(word, List::small_in_names);
}

// `Okoro, Tamsin J.`: what stands behind the comma is no title, such as RN or Jr.
std::string turned_name(const std::string& name) {
    const std::size_t comma = name.find(", ");
    if (comma == name.npos || name.find(',', comma + 1) != name.npos) return {};
    const std::string behind = name.substr(comma + 2);
    const std::string first = behind.substr(0, behind.find(' '));
    constexpr std::size_t shortest = 3;
    const bool given = first.size() >= shortest && is_capital_letter(first.front()) &&
                       all_small_letters(std::string_view(first).substr(1));
    return given ? behind + ' ' + name.substr(0, comma) : std::string();
}

void name_forms(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Field* name = context.resume.find(trade::FieldName::name);
    if (!name) return;
    if (const std::string turned = turned_name(plain_in(name)); !turned.empty())
        report<messages::family_first>(findings, name->place, in_quotes(plain_in(name)))
            .suggestion = fill<messages::write_quoted>(turned);
    const std::vector<std::string> parts = parts_of_name(context.resume);
    if (!parts.empty() && std::ranges::any_of(parts, begins_small))
        report<messages::name_in_small_letters>(
            findings, name->place, in_quotes(*std::ranges::find_if(parts, begins_small)));
    for (const model::Field& field : context.resume.heading)
        if (field.name == trade::FieldName::email || is_shown_link(field))
            look_at_address(field, parts, findings);
    if (parts.size() < 2) return;
    for (const TextInResume& part : context.texts) {
        if (part.field == name) continue;
        const bool title = !part.field && !part.bullet;
        const bool alone = title || part.in_heading;
        look_for_slips(part, parts, alone, context.language, findings);
    }
}

// `(360) 555-0112 (mother's cell)`
void borrowed_contact(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Field& field : context.resume.heading) {
        if (field.name != trade::FieldName::phone && field.name != trade::FieldName::email)
            continue;
        const std::string lower = lower_case(plain_in(&field));
        if (lower.find('@') != lower.npos) continue; // mom@ may be hers
        for (WordAt word : words_in(lower)) {
            if (word.word.ends_with("'s")) word.word.remove_suffix(2);
            if (word.word.ends_with("\u2019s")) word.word.remove_suffix(4);
            if (!is_one_of(word.word, List::relations)) continue;
            report<messages::borrowed_contact>(findings, field.place, in_quotes(word.word));
            break;
        }
    }
}

// --- of others, in entries

std::string figures_of(std::string_view text) {
    std::string figures;
    std::ranges::copy_if(text, std::back_inserter(figures), is_figure);
    return figures;
}

bool is_own_contact(const model::Resume& resume, std::string_view contact) {
    return std::ranges::any_of(resume.heading, [&](const model::Field& field) {
        const std::string own = plain_in(&field);
        if (field.name == trade::FieldName::email) return lower_case(own) == lower_case(contact);
        return field.name == trade::FieldName::phone && figures_of(own) == figures_of(contact);
    });
}

std::optional<PhoneAt> address_in(std::string_view text) {
    const std::size_t sign = text.find('@');
    if (sign == std::string_view::npos || sign == 0) return std::nullopt;
    const std::size_t before = text.find_last_of(" (<:,;", sign);
    const std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
    const std::size_t end = std::min(text.find_first_of(" )>,;", sign), text.size());
    std::string_view address = text.substr(begin, end - begin);
    while (address.ends_with('.'))
        address.remove_suffix(1);
    if (!is_addr_spec(address)) return std::nullopt;
    return PhoneAt{begin, address.size()};
}

// `Call`, `Supervisor:`, or a name of two words stands before it.
bool leads_to_person(std::string_view before) {
    const std::string lower = lower_case(before);
    const auto words = words_in(lower);
    const auto names = words_in(before);
    const bool named = std::ranges::any_of(
        words, [](const WordAt& word) { return is_one_of(word.word, List::asked_about_one); });
    if (named || names.size() < 2) return named;
    const auto last = names.end() - 1;
    return is_capital_letter(last->word.front()) && is_capital_letter((last - 1)->word.front()) &&
           (names.size() > 2 || last->offset > 0);
}

void another_person(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (part.in_heading || (part.field && part.field->name == trade::FieldName::link)) continue;
        const std::string& text = part.plain;
        std::vector<PhoneAt> contacts = phones_in(text);
        if (const auto address = address_in(text)) contacts.push_back(*address);
        for (const PhoneAt& at : contacts) {
            const std::string contact = text.substr(at.offset, at.length);
            if (is_own_contact(context.resume, contact)) continue;
            if (part.bullet && !leads_to_person(std::string_view(text).substr(0, at.offset)))
                continue; // a line that one answered, say
            report<messages::contact_of_another>(findings, part.text.place(at.offset, at.length),
                                                 in_quotes(contact));
            break;
        }
    }
}

constexpr std::array person_table{
    Check{"name-forms", Weight::must, "contact",
          "Your name has its capitals and stands in one spelling, in links and in the address of "
          "mail too.",
          "A slip in one's own name is remembered, and mail to a misspelt address is lost.",
          "common practice", "name: Casimir Thandeka, and link: Portfolio of Kasimir Thandeka",
          "Casimir Thandeka everywhere", name_forms},
    Check{"borrowed-contact", Weight::must, "contact",
          "Telephone and email of the heading are your own.",
          "Whoever calls wants you, and asks the wrong person once.", "common practice",
          "phone: (360) 555-0112 (mother's cell)", "phone: (360) 555-0142", borrowed_contact},
    Check{"another-person", Weight::should, "contact",
          "No entry gives the telephone number or email of another person.",
          "They have not asked to be on your page, and employers ask for references later.",
          "common practice", "note: Supervisor Ada Holm, (360) 555-0177", "no such line",
          another_person},
};

}

std::span<const Check> person_checks() {
    return person_table;
}

}
