// What of a page's tags is kept: a browser's reading of attributes (HTML Living Standard, 13.2.5)
// where there are few, and a bound where there are many.
#include "compiler/postings/tag_attributes.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include <string>

namespace quoin::postings {

namespace {

std::string many(std::size_t count) {
    std::string attributes;
    for (std::size_t i = 0; i < count; ++i)
        attributes += fmt::format(" a{}=\"b > {}\"", i, i);
    return attributes;
}

}

TEST_CASE("attributes: what a page has is kept as it stands") {
    for (const std::string page :
         {"", "<", "<p", "<p>", "a < b > c", "<p class=\"x y\" id='z'>Python</p>", "<p a = b c>x",
          "<a href=x?a=b&c=d title=\"a > b\">x</a>", "<!-- <p a b> -->", "</p ><br/>", "<p a=\"b",
          "<p =\"<\" x>", "<script>if (a<b && c>d) x = '<p>';</script>"}) {
        CAPTURE(page);
        CHECK(with_few_attributes(page) == page);
    }
    const std::string most = "<p" + many(100) + ">Python</p>";
    CHECK(with_few_attributes(most) == most);
}

TEST_CASE("attributes: of a tag without end the first are kept, and what follows it is read") {
    const std::string page = "<p" + many(100000) + ">Python</p><p>R</p>";
    CHECK(with_few_attributes(page) == "<p" + many(100) + ">Python</p><p>R</p>");
    CHECK(with_few_attributes("<p" + many(101) + "<b>Python") == "<p" + many(100) + "<b>Python");
    CHECK(with_few_attributes("<p" + many(101)) == "<p" + many(100));
}

}
