// Mail addresses, telephone numbers and links in running text.
#include "compiler/portal/found.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/stages/model/contact_links.hpp"

#include <algorithm>
#include <array>

namespace quoin::portal {

namespace {

bool is_alphanumeric(char c) {
    return is_letter_or_figure(c);
}

// RFC 5322, section 3.2.3, without signs that in running text rather part than belong
bool is_local_sign(char c) {
    return is_alphanumeric(c) ||
           std::string_view{"!#$%&'*+-=?^_`{}~."}.find(c) != std::string_view::npos;
}

// Nobody has more; a file made to slow us down may.
constexpr std::size_t most_contacts = 20;

// A sentence's own full stop, or a dash.
std::string_view without_end(std::string_view host) {
    while (host.ends_with('.') || host.ends_with('-'))
        host.remove_suffix(1);
    return host;
}

std::string_view without_start(std::string_view local) {
    while (local.starts_with('.') || local.starts_with('-'))
        local.remove_prefix(1);
    return local;
}

bool is_host_label(std::string_view label) {
    constexpr std::size_t most = 63;
    return !label.empty() && label.size() <= most && label.front() != '-' && label.back() != '-' &&
           std::ranges::all_of(label, [](char c) { return is_alphanumeric(c) || c == '-'; });
}

// RFC 1123: labels of letters, digits and inner hyphens; the last has letters and at least two.
bool is_host_name(std::string_view host) {
    constexpr std::size_t most = 253;
    if (host.size() > most || host.find('.') == std::string_view::npos) return false;
    std::string_view label;
    while (!host.empty()) {
        const std::size_t end = std::min(host.find('.'), host.size());
        label = host.substr(0, end);
        if (!is_host_label(label)) return false;
        host.remove_prefix(std::min(end + 1, host.size()));
    }
    return label.size() >= 2 && std::ranges::none_of(label, is_figure);
}

// The address around the `@` at `at`; empty if there is none.
std::string_view address_at(std::string_view text, std::size_t at) {
    constexpr std::size_t most_local = 64, most = 254; // RFC 5321, section 4.5.3.1
    std::size_t begin = at, end = at + 1;
    while (begin > 0 && at - begin <= most_local && is_local_sign(text[begin - 1]))
        --begin;
    while (end < text.size() && end - begin <= most &&
           (is_alphanumeric(text[end]) || text[end] == '.' || text[end] == '-'))
        ++end;
    const std::string_view local = without_start(text.substr(begin, at - begin));
    const std::string_view host = without_end(text.substr(at + 1, end - at - 1));
    if (local.empty() || local.size() > most_local || !is_host_name(host)) return {};
    begin = static_cast<std::size_t>(local.data() - text.data());
    const std::string_view address = text.substr(
        begin, static_cast<std::size_t>(host.data() - text.data()) + host.size() - begin);
    return address.size() <= most && model::email_uri(address) ? address : std::string_view{};
}

// --- telephone numbers

constexpr std::array<std::string_view, 6> phone_signs = {
    "\xC2\xA0", "\xE2\x80\x90", "\xE2\x80\x91", "\xE2\x80\x93", "\xE2\x80\xAF", "\xE2\x88\x92"};

// Length of the sign that may stand in a number at the start of `text`; 0 if it is none.
std::size_t phone_sign_length(std::string_view text) {
    if (is_figure(text.front()) ||
        std::string_view{" -.()"}.find(text.front()) != std::string_view::npos)
        return 1;
    for (const std::string_view sign : phone_signs)
        if (text.starts_with(sign)) return sign.size();
    return 0;
}

std::vector<std::size_t> groups_of(std::string_view number) {
    std::vector<std::size_t> groups;
    bool inside = false;
    for (const char c : number) {
        if (is_figure(c) && !inside) groups.push_back(0);
        inside = is_figure(c);
        if (inside) ++groups.back();
    }
    return groups;
}

// How E.123 and common practice group a number: with `+` any way; else as North America does, for
// other rows of figures are dates, grades and amounts.
bool is_grouped_as_phone(std::string_view number) {
    const std::vector<std::size_t> groups = groups_of(number);
    if (number.starts_with('+')) return true;
    using Groups = std::vector<std::size_t>;
    return groups == Groups{3, 3, 4} || groups == Groups{1, 3, 3, 4} || groups == Groups{10} ||
           groups == Groups{3, 7};
}

// The row of figures at `begin`, cut back to its last figure.
std::string_view figures_at(std::string_view text, std::size_t begin) {
    constexpr std::size_t most_digits = 15; // E.164
    std::size_t end = begin, last = begin, digits = 0;
    if (text[begin] == '+') ++end;
    while (end < text.size() && digits < most_digits) {
        const std::size_t length = phone_sign_length(text.substr(end));
        // two signs side by side part numbers, but for a closing parenthesis and a space
        if (length == 0 || end - last > 4) break;
        if (is_figure(text[end])) {
            ++digits;
            last = end + 1;
        }
        end += length;
    }
    return text.substr(begin, last - begin);
}

bool starts_number(std::string_view text, std::size_t at) {
    if (at > 0 && (is_alphanumeric(text[at - 1]) ||
                   std::string_view{"+.-/@_="}.find(text[at - 1]) != std::string_view::npos))
        return false;
    return is_figure(text[at]) || text[at] == '+' || text[at] == '(';
}

bool ends_number(std::string_view text, std::size_t at) {
    return at == text.size() ||
           (!is_alphanumeric(text[at]) && text[at] != '/' && text[at] != '@' && text[at] != '%');
}

// --- links

constexpr std::array<std::string_view, 22> usual_ends = {
    "com", "org", "net", "edu", "gov",  "io",  "dev",  "me",   "us", "info",    "ca",
    "uk",  "eu",  "de",  "fr",  "page", "app", "site", "blog", "co", "example", "tech"};

std::string_view host_of(std::string_view link) {
    return link.substr(0, std::min(link.find_first_of("/?#:"), link.size()));
}

// A bare address in running text is in small letters; `Node.js` and `B.Sc.` are none.
bool is_bare_link(std::string_view word) {
    const std::string_view host = host_of(word);
    if (!is_host_name(host) || std::ranges::any_of(host, is_capital_letter)) return false;
    const std::string_view end = host.substr(host.rfind('.') + 1);
    const bool usual = is_one_of(end, usual_ends);
    const bool letters = std::ranges::any_of(host.substr(0, host.rfind('.')), is_small_letter);
    return usual && letters && host.size() > end.size() + 2;
}

std::string_view link_in(std::string_view word) {
    while (!word.empty() && std::string_view{"(<[\"'"}.find(word.front()) != std::string_view::npos)
        word.remove_prefix(1);
    while (!word.empty() &&
           std::string_view{")>]\"'.,;:!?|"}.find(word.back()) != std::string_view::npos)
        word.remove_suffix(1);
    for (const std::string_view scheme : {"https://", "http://"})
        if (word.starts_with(scheme))
            return is_host_name(host_of(word.substr(scheme.size()))) ? word : std::string_view{};
    return is_bare_link(word) ? word : std::string_view{};
}

}

std::vector<std::string> find_emails(std::string_view text) {
    std::vector<std::string> emails;
    for (std::size_t at = text.find('@'); at != std::string_view::npos; at = text.find('@', at + 1))
        if (const std::string_view address = address_at(text, at); !address.empty())
            add_once(emails, address, most_contacts);
    return emails;
}

std::vector<std::string> find_phones(std::string_view text) {
    std::vector<std::string> phones;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (!starts_number(text, at)) continue;
        const std::string_view number = figures_at(text, at);
        if (number.empty() || !ends_number(text, at + number.size()) ||
            !is_grouped_as_phone(number) || !model::phone_uri(number))
            continue;
        add_once(phones, number, most_contacts);
        at += number.size() - 1;
    }
    return phones;
}

bool breaks_link(std::string_view end, std::string_view next) {
    if (end.size() < 2 || !end.ends_with('-') || link_in(next).empty()) return false;
    return is_letter_or_figure(end[end.size() - 2]) &&
           !link_in(std::string(end).append(next)).empty();
}

std::vector<std::string> find_links(std::string_view text) {
    constexpr std::string_view parting = " \t\n";
    std::vector<std::string> links;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of(parting), text.size());
        const std::string_view word = text.substr(0, end);
        if (const std::string_view link = link_in(word);
            !link.empty() && word.find('@') == std::string_view::npos)
            add_once(links, link, most_contacts);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return links;
}

}
