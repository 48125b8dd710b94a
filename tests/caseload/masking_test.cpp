// What may not go out is not in what goes out.
#include "compiler/caseload/masking.hpp"

#include <doctest/doctest.h>

namespace quoin::caseload {

TEST_CASE("caseload: telephone numbers and addresses of mail are masked, figures are not") {
    struct Case {
        std::string_view text, masked;
    };
    const Masking masking;
    for (const Case& c :
         {Case{"phone: (360) 555-0142", "phone: [phone]"},
          Case{"call 360-555-0142, or 360.555.0143", "call [phone], or [phone]"},
          Case{"tel:+1 360 555 0142", "tel:[phone]"}, Case{"3605550142", "[phone]"},
          Case{"555-0142 at night", "[phone] at night"}, Case{"(555) 555-0142) x", "[phone]) x"},
          Case{"020 7946 0123", "[phone]"}, Case{"mail a.b@example.org.", "mail [email]"},
          Case{"<mailto:a@b.example>", "<mailto:[email]>"},
          Case{"dates: 2024-2025", "dates: 2024-2025"},
          Case{"2026-06 - 2026-08", "2026-06 - 2026-08"},
          Case{"Counted 1,400,000 larvae in 9 tanks", "Counted 1,400,000 larvae in 9 tanks"},
          Case{"- Raised 71% + 9 points", "- Raised 71% + 9 points"},
          Case{"3.62 / 4.00, @ noon", "3.62 / 4.00, @ noon"}, Case{"", ""}}) {
        CAPTURE(c.text);
        CHECK(masking.masked(c.text) == c.masked);
    }
}

TEST_CASE("caseload: where nobody is to be known no name stands, nor a link made of one") {
    struct Case {
        std::string_view text, masked;
    };
    Masking masking;
    masking.hide_name("Zoë Brandt-Lee");
    for (const Case& c : {Case{"Zoë's report, for BRANDT", "[name]'s report, for [name]"},
                          Case{"Zoe Lee led", "[name] [name] led"},
                          Case{"seen at zoebrandt.example", "seen at [link]"},
                          Case{"drafts/zoe-brandt.resume", "[link]"},
                          Case{"Brandts and leeway stay", "Brandts and leeway stay"}}) {
        CAPTURE(c.text);
        CHECK(masking.masked(c.text) == c.masked);
    }
    CHECK(masking.masked(std::string(400'000, '(')).size() == 400'000);
    CHECK(masking.masked(std::string(400'000, '1')).size() == 400'000);
}

}
