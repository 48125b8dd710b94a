// Phone numbers, mail addresses and web addresses of the heading as links.
#include "compiler/stages/model/contact_links.hpp"

#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace quoin::model {

using fixtures::read_below_name;

// RFC 3966, section 5.1.4: global numbers with `+`; E.164: at most 15 digits. The area codes and
// exchanges of the North American Numbering Plan begin with 2 to 9. 555-0100 to 555-0199 are
// fictional.
TEST_CASE("phone numbers become links that can be dialled from anywhere") {
    const struct {
        std::string typed;
        std::string uri; // empty: no link
    } cases[] = {
        {"(360) 555-0142", "tel:+13605550142"},
        {"360.555.0142", "tel:+13605550142"},
        {"360 555 0142", "tel:+13605550142"},
        {"1-360-555-0142", "tel:+13605550142"},
        {"+1 360 555 0142", "tel:+13605550142"},
        {"(360) 555-0142 ext. 12", "tel:+13605550142;ext=12"},
        {"(360) 555-0142, x12", "tel:+13605550142;ext=12"},
        {"(360) 555-0142 #7", "tel:+13605550142;ext=7"},
        {"+31 42 123 4567", "tel:+31421234567"}, // the international form of E.123
        {"+44 (0)20 7946 0123", "tel:+442079460123"},
        {"(042) 123 4567", ""}, // the national form of E.123: no country is known
        {"555-0142", ""},
        {"360 555 0142 / 360 555 0143", ""},
        {"+1234567890123456", ""},
        {"on request", ""},
        {"", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        CHECK(phone_uri(one.typed).value_or("") == one.uri);
    }
}

// RFC 5322, section 3.4.1 (addr-spec); RFC 6068, section 2 (what is percent-encoded)
TEST_CASE("mail addresses become links if they are addr-specs") {
    const struct {
        std::string typed;
        std::string uri;
    } cases[] = {
        {"ottoline.brandt@ellerystate.example", "mailto:ottoline.brandt@ellerystate.example"},
        {"o+lab@ellerystate.example", "mailto:o+lab@ellerystate.example"},
        {"gorby%kremvax@example.com",
         "mailto:gorby%25kremvax@example.com"}, // RFC 6068, section 6.1
        {"unlikely?address@example.com", "mailto:unlikely%3Faddress@example.com"}, // the same
        {"Mike&family@example.org", "mailto:Mike%26family@example.org"},           // the same
        {"two@at@example.com", ""},
        {".dot@example.com", ""},
        {"dot.@example.com", ""},
        {"no-domain@", ""},
        {"no at", ""},
        {"a b@example.com", ""},
        {"", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        CHECK(email_uri(one.typed).value_or("") == one.uri);
    }
}

TEST_CASE("contact links") {
    const auto reading = read_below_name("phone: (360) 555-0142\nemail: nobody at all\n"
                                         "link: Portfolio <https://ottolinebrandt.example/work>");
    REQUIRE(reading.resume);
    const auto links = [&](trade::FieldName name) {
        return std::get<Text>(reading.resume->find(name)->value).links;
    };
    CHECK(links(trade::FieldName::phone) == std::vector<std::string>{"tel:+13605550142"});
    CHECK(links(trade::FieldName::email).empty());
    CHECK(links(trade::FieldName::link) ==
          std::vector<std::string>{"https://ottolinebrandt.example/work"});
    CHECK(std::get<Text>(reading.resume->find(trade::FieldName::phone)->value).spans.at(0).link ==
          0u);
}

}
