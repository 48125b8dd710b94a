// What a scan recognises, over recorded and hand-made output of poppler's tools.
#include "compiler/portal/marked_text.hpp"
#include "compiler/portal/markup.hpp"
#include "compiler/portal/report.hpp"
#include "tests/portal/scan_pages.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <initializer_list>
#include <utility>

namespace quoin::portal {

TEST_CASE("scan: tags are read as they are written, well-formed or not") {
    TagReader tags(
        R"(junk<word xMin="1.5" yMin="-2">a &amp; b</word><a href="x"><b>t</a></b><open)");
    auto tag = tags.next();
    REQUIRE(tag);
    CHECK(tag->name == "word");
    CHECK(number_in(*tag, "xMin") == 1.5);
    CHECK(number_in(*tag, "yMin") == -2);
    CHECK(number_in(*tag, "Min") == 0); // not the end of another name
    CHECK(clean_text(tag->text) == "a & b");
    Words names;
    while ((tag = tags.next()))
        names.emplace_back(tag->name);
    CHECK(names == Words{"/word", "a", "b", "/a", "/b"});
}

TEST_CASE("scan: numbers of a hostile file stay within a page that could exist") {
    for (const char* written : {"nan", "inf", "1e999", "", "x", "--5"}) {
        const std::string attributes = fmt::format(" a=\"{}\"", written);
        CHECK_MESSAGE(number_in({"t", attributes, ""}, "a") == 0, written);
    }
    CHECK(number_in({"t", " a=\"1e300\"", ""}, "a") == 1e6);
}

TEST_CASE("scan: text is made safe to print") {
    struct Case {
        std::string_view written, text;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"a&lt;b&gt;&quot;&apos;", "a<b>\"'"},
             {"&#233;&#xe9;", "éé"},
             {"&#xD800;", "\uFFFD\uFFFD\uFFFD"}, // a surrogate is no character
             {"&#27;[2J", "\uFFFD[2J"},
             {"&nosuch; & &", "&nosuch; & &"},
             {"\x1B[31m", "\uFFFD[31m"},
             {"\xC2\x9B", "\uFFFD"},                 // C1 control: some terminals obey it
             {"\xFF\xC0\xAF", "\uFFFD\uFFFD\uFFFD"}, // Unicode Standard 15.0, table 3-8
         })
        CHECK(clean_text(c.written) == c.text);
}

TEST_CASE("scan: boxes of poppler's two ways of writing them") {
    // recorded from pdftotext 22.12 -bbox-layout, shortened
    const Reading reading = read_boxes(R"(<html><head><title>T</title></head><body><doc>
  <page width="612.000000" height="792.000000"><flow>
      <block xMin="60" yMin="63" xMax="141" yMax="75"><line xMin="60" yMin="63" xMax="141" yMax="75">
          <word xMin="60.000000" yMin="63.702400" xMax="102.629600" yMax="75.558400">Ottoline</word>
          <word xMin="106.269600" yMin="63.702400" xMax="141.348800" yMax="75.558400">Brandt</word>
      </line></block><block><line>
          <word xMin="60" yMin="97" xMax="107" yMax="109">R&amp;D</word></line></block></flow></page></doc>)");
    CHECK(reading.text() == "Ottoline Brandt\n\nR&D\n");
    CHECK(reading.word_count() == 3);
    // -raw -bbox tells no lines: another height or a jump back begins one
    const Reading raw = read_boxes(R"(<page width="612" height="792">
    <word xMin="60" yMin="60" xMax="90" yMax="71">one</word>
    <word xMin="93" yMin="60" xMax="99" yMax="71">two</word>
    <word xMin="60" yMin="75" xMax="70" yMax="86">three</word>
    <word xMin="300" yMin="75" xMax="330" yMax="86">four</word></page><page width="1" height="1">
    <word xMin="60" yMin="75" xMax="70" yMax="86">five</word></page>)");
    CHECK(raw.text() == "one two\nthree\nfour\n\ffive\n");
    CHECK(read_boxes("<word>before any page</word>").lines.empty());
}

TEST_CASE("scan: mail addresses (RFC 5322, section 3.4.1; RFC 5321, section 4.5.3.1)") {
    struct Case {
        std::string_view text;
        Words emails;
    };
    const std::string longest(64, 'a');
    for (const Case& c : std::initializer_list<Case>{
             {"ottoline.brandt@ellerystate.example", {"ottoline.brandt@ellerystate.example"}},
             {"Email: o+cv@mail.ellery.example, phone", {"o+cv@mail.ellery.example"}},
             {"<a@b.example>. Or c_d@e.example.", {"a@b.example", "c_d@e.example"}},
             {"a@b.example a@b.example", {"a@b.example"}},
             {"no@host, @example.com, a@, a@b", {}},
             {"5 samples @ 3.5 mg", {}},
             {"a..b@c.example", {}},
             {"a@b..example", {}},
             {"a@-b.example", {}},
             {"@@@@", {}},
         })
        CHECK_MESSAGE(find_emails(c.text) == c.emails, c.text);
    CHECK(find_emails(longest + "@b.example").size() == 1);
    CHECK(find_emails("a" + longest + "@b.example").empty());
}

TEST_CASE(
    "scan: telephone numbers (ITU-T E.123, E.164; North American grouping, common practice)") {
    struct Case {
        std::string_view text;
        Words phones;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"(360) 555-0142", {"(360) 555-0142"}},
             {"360-555-0142 | 360.555.0143", {"360-555-0142", "360.555.0143"}},
             {"3605550142", {"3605550142"}},
             {"+1 360 555 0142", {"+1 360 555 0142"}},
             {"1-360-555-0142", {"1-360-555-0142"}},
             {"Tel. +31 42 123 4567.", {"+31 42 123 4567"}}, // E.123's own example
             {"(360)\u00A0555\u20110142", {"(360)\u00A0555\u20110142"}},
             {"Jun 2026 - Aug 2026", {}},
             {"06/2026 - 08/2026", {}},
             {"2019-2023 2021-2025", {}},
             {"GPA 3.62 / 4.00", {}},
             {"98225-1234", {}},
             {"$1,360,555,014", {}},
             {"360-555-01425", {}},
             {"160-555-0142", {}}, // no area code begins with 1
             {"1234567890123456789", {}},
             {"v360-555-0142", {}},
         })
        CHECK_MESSAGE(find_phones(c.text) == c.phones, c.text);
}

TEST_CASE("scan: links (RFC 3986; bare hosts by their usual ends)") {
    struct Case {
        std::string_view text;
        Words links;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"https://ellery.example/a?b=1", {"https://ellery.example/a?b=1"}},
             {"(ottolinebrandt.example), code.ellery.example/ob.",
              {"ottolinebrandt.example", "code.ellery.example/ob"}},
             {"www.ellery.example", {"www.ellery.example"}},
             {"Node.js, ASP.NET, B.Sc. e.g. 3.62 a.b", {}},
             {"a@ellery.example", {}},
             {"https://", {}},
         })
        CHECK_MESSAGE(find_links(c.text) == c.links, c.text);
}

TEST_CASE("scan: as many of a kind as anyone has") {
    std::string text;
    for (int i = 0; i < 1000; ++i)
        text += fmt::format("a{}@b.example ", i);
    CHECK(find_emails(text).size() == 20);
}

TEST_CASE("scan: dates on a line, as the markup reads them") {
    struct Case {
        std::string_view line, text, edtf;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"Field Intern, Salish Tidal Trust, Jun 2026 – Aug 2026", "Jun 2026 – Aug 2026",
              "2026-06/2026-08"},
             {"May 2020 - Present", "May 2020 - Present", "2020-05/.."},
             {"Ellery State College May 2027 (expected)", "May 2027 (expected)", "2027-05"},
             {"Assistant (Summer 2025), Port Ellery, WA", "Summer 2025", "2025-22"},
             {"Lab Aide | 06/2024 – 05/2025 |", "06/2024 – 05/2025", "2024-06/2025-05"},
             {"Treasurer, 2024", "2024", "2024"},
             {"13/2024", "", ""},
             {"Counted 212 quadrats at 9 sites", "", ""},
             {"Room 3124, call 360-555-0142", "", ""},
             {"", "", ""},
         }) {
        const auto dates = find_dates(c.line);
        CHECK_MESSAGE((dates ? dates->text : "") == c.text, c.line);
        CHECK_MESSAGE((dates ? dates->edtf : "") == c.edtf, c.line);
    }
}

TEST_CASE("scan: the name is the largest text at the top that looks like one") {
    struct Case {
        std::vector<std::pair<std::string, double>> lines; // text, height
        std::string name;
    };
    for (const Case& c : std::initializer_list<Case>{
             {{{"Ottoline Brandt", 20}, {"Port Ellery, WA", 11}}, "Ottoline Brandt"},
             {{{"Résumé", 30}, {"Ottoline Brandt", 20}}, "Ottoline Brandt"},
             {{{"Port Ellery", 11}, {"OTTOLINE VAN BRANDT", 22}}, "OTTOLINE VAN BRANDT"},
             {{{"Ottoline Brandt (she/her)", 20}}, "Ottoline Brandt"},
             {{{"Ottoline Brandt | Port Ellery, WA", 11}}, "Ottoline Brandt"},
             {{{"Ottoline Brandt, RN", 20}}, "Ottoline Brandt"},
             {{{"Élodie Ångström", 20}}, "Élodie Ångström"},
             {{{"Work Experience", 20}, {"ob@ellery.example", 11}}, ""},
             {{{"12 Shore Road", 20}}, ""},
             {{{"counted the eelgrass", 20}}, ""},
         }) {
        PageBuilder page;
        double top = 40;
        for (const auto& [text, height] : c.lines) {
            page.line(72, top, text, height);
            top += 30;
        }
        CHECK_MESSAGE(find_name(page.reading) == c.name, c.lines.front().first);
    }
    CHECK(find_name({}).empty());
}

TEST_CASE("scan: what pdfinfo says") {
    const DocumentFacts facts = read_facts("Title:           Ottoline Brandt, résumé\n"
                                           "Tagged:          yes\nForm:            AcroForm\n"
                                           "JavaScript:      no\nPages:           2\n"
                                           "Encrypted:       yes (print:yes copy:no change:no)\n");
    CHECK(facts.title == "Ottoline Brandt, résumé");
    CHECK(facts.pages == 2);
    CHECK(facts.tagged);
    CHECK(facts.form);
    CHECK_FALSE(facts.script);
    CHECK(facts.copying_forbidden);
    // a title cannot pass for a fact, for the facts come after it
    CHECK_FALSE(read_facts("Title: x\nEncrypted: yes\nPages: 9\nEncrypted: no\n").encrypted);
    CHECK(read_facts("Title: \x1B[2J\n").title == "\uFFFD[2J");
    CHECK(read_facts("").pages == 0);
}

TEST_CASE("scan: what pdffonts says") {
    // recorded from pdffonts 22.12; the third line is of a long name
    const std::vector<FontFact> fonts =
        read_fonts("name                                 type              encoding         emb "
                   "sub uni object ID\n"
                   "------------------------------------ ----------------- ---------------- --- "
                   "--- --- ---------\n"
                   "PSEEEZ+LinLibertineOB-Identity-H     CID Type 0C (OT)  Identity-H       yes "
                   "yes yes      7  0\n"
                   "Helvetica                            Type 1            WinAnsi          no  no "
                   " no  [none]\n"
                   "AAAAAA+A Name That Is Longer Than Its Column Is Wide CID TrueType      "
                   "Identity-H       yes yes no      12  0\n"
                   "junk\n");
    REQUIRE(fonts.size() == 3);
    CHECK(fonts[0] == FontFact{"PSEEEZ+LinLibertineOB-Identity-H", "CID Type 0C (OT)", "Identity-H",
                               true, true});
    CHECK(fonts[1] == FontFact{"Helvetica", "Type 1", "WinAnsi", false, false});
    CHECK(fonts[2].name == "AAAAAA+A Name That Is Longer Than Its Column Is Wide");
    CHECK(fonts[2].type == "CID TrueType");
    CHECK_FALSE(fonts[2].unicode);
}

TEST_CASE("scan: what pdfimages, pdfinfo -struct-text and pdftohtml say") {
    CHECK(count_images("page   num  type   width height\n-----\n   1     0 image     100   100\n"
                       "   1     1 smask     100   100\n") == 1);
    CHECK(structure_text("Document\n  H1 (block)\n    \"Ottoline Brandt\"\n      Object 153 0\n") ==
          "Ottoline Brandt\n");
    const Looks looks = read_looks(
        R"(<page><fontspec id="0" size="31" family="A" color="#000000"/>
<fontspec id="1" size="12" family="A" color="#ffffff"/>
<text top="1" font="0">ab <a href="mailto:ob@ellery.example"><b>c</a>d</b></text>
<text top="2" font="1">é&amp;</text><text font="9">lost</text></page>)");
    REQUIRE(looks.texts.size() == 2);
    CHECK(looks.texts[0].letters == 4);
    CHECK(looks.texts[0].size == doctest::Approx(31 / 3.0));
    CHECK(looks.texts[1].lightness == doctest::Approx(1));
    CHECK(looks.texts[1].letters == 2);
    CHECK(looks.addresses == Words{"mailto:ob@ellery.example"});
}

TEST_CASE("scan: names in the file's bytes") {
    CHECK(read_names("<</Type/Catalog/Lang(en)>>").language);
    CHECK_FALSE(read_names("<</Language(en)>>").language);
    CHECK(read_names("/EF<<").attachments);
    CHECK(read_names("").all_could_be_read);
    CHECK_FALSE(read_names("/Type/ObjStm/Length 3>>stream\nxxx\nendstream").all_could_be_read);
    // "/Lang (en)", packed by zlib 1.2.13
    const std::string packed(
        "\x78\x9c\xd3\xf7\x49\xcc\x4b\x57\xd0\x48\xcd\xd3\x04\x00\x10\x74\x02\xf6", 18);
    const RawNames names = read_names("/Type/ObjStm>>stream\r\n" + packed + "\nendstream");
    CHECK(names.all_could_be_read);
    CHECK(names.language);
}

TEST_CASE("scan: whether all text of a page is marked as of its structure") {
    struct Row {
        const char* content;
        bool marked;
    };
    const Row contents[] = {
        {"", true},
        {"0 0 m 9 9 l S", true},
        {"/P<</MCID 0>>BDC BT /F1 9 Tf(a)Tj ET EMC", true},
        {"/P <</MCID 0>> BDC BT [(a) -20 (b)] TJ ET EMC\n/H1<</MCID 1>>BDC(c)' EMC", true},
        {"/P<</MCID 0>>BDC/Span<</ActualText<FEFF0041>>>BDC(a)Tj EMC EMC", true},
        {"/Artifact BMC 0 0 9 9 re f EMC /P<</MCID 0>>BDC(a)Tj EMC", true},
        {"/P<</MCID 0>>BDC(\\)EMC ((b) Tj) )Tj EMC % (c)Tj", true},
        {"BT(a)Tj ET", false},
        {"/P<</MCID 0>>BDC(a)Tj EMC(b)Tj", false},
        {"/Artifact<</Type/Pagination>>BDC(a)Tj EMC", false},
        {"/P<</MCID 0>>BDC/Artifact BMC(a)Tj EMC EMC", false},
        {"/Span BMC(a)Tj EMC", false},
        {"/P/Named BDC(a)Tj EMC", false},
        {"EMC /P<</MCID 0>>BDC(a)Tj EMC", false},
        {"/P<</MCID 0>>BDC(a)Tj", false},
        {"/P<</MCID 0>>BDC BI/W 1 ID x EI EMC", false},
        {"/P<</MCID 0>>BDC(a)\" EMC(b)\"", false},
    };
    for (const Row& row : contents) {
        CAPTURE(row.content);
        CHECK(all_text_is_marked(row.content) == row.marked);
    }
    // "/P<</MCID 0>>BDC(a)Tj EMC" and "(a)Tj", packed by zlib 1.2.13
    const std::string in_structure(
        "\x78\xda\xd3\x0f\xb0\xb1\xd1\xf7\x75\xf6\x74\x51\x30\xb0\xb3\x73\x72\x71\xd6\x48"
        "\xd4\x0c\xc9\x52\x70\xf5\x75\x06\x00\x4e\xfb\x06\x3e",
        33),
        alone("\x78\xda\xd3\x48\xd4\x0c\xc9\x02\x00\x03\xde\x01\x71", 13);
    const auto file = [](const std::string& dictionary, const std::string& data) {
        return "1 0 obj<<" + dictionary + ">>stream\n" + data + "\nendstream endobj ";
    };
    const std::string good = file("/Filter/FlateDecode", in_structure),
                      bad = file("/Filter/FlateDecode", alone);
    CHECK_FALSE(read_names("").all_text_marked);
    CHECK(read_names(good + good).all_text_marked);
    CHECK_FALSE(read_names(good + bad).all_text_marked);
    CHECK(read_names(good + file("/Length1 9", alone)).all_text_marked);
    CHECK_FALSE(read_names(good + file("/Filter/LZWDecode", "xxx")).all_text_marked);
}

TEST_CASE("scan: pictures as pdftoppm writes them") {
    CHECK(read_pictures("P5\n2 1\n255\nab"
                        "P5\n1 2\n255\ncd")
              .size() == 2);
    for (const char* cut :
         {"", "P5", "P5\n", "P5\n2 2\n255\nabc", "P5\n0 0\n255\n", "P6\n1 1\n255\na",
          "P5\n99999999999999999999 1\n255\na", "P5\n-1 1\n255\na"})
        CHECK_MESSAGE(read_pictures(cut).empty(), cut);
}

TEST_CASE("scan: words in a list") {
    CHECK(list_of({"a"}) == "'a'");
    CHECK(list_of({"a", "b"}) == "'a' and 'b'");
    CHECK(list_of({"a", "b", "c"}) == "'a', 'b' and 'c'");
    CHECK(list_of({"a", "b", "c", "d"}) == "'a', 'b', 'c' and 1 more");
    CHECK(list_of({std::string(39, 'x') + "éé"}) == "'" + std::string(39, 'x') + "é…'");
}

TEST_CASE("scan: reports") {
    Scan scan;
    scan.evidence = faultless();
    scan.found = find_all(scan.evidence.by_place);
    CHECK(report_text("draft.pdf", scan) ==
          R"(draft.pdf: 1 page, 9 words

What a portal finds
  name      Ottoline Brandt
  email     ottoline.brandt@ellerystate.example
  phone     (360) 555-0142
  sections  Education
              Ellery State College

Nothing wrong was found

The text in reading order
  Ottoline Brandt

  ottoline.brandt@ellerystate.example (360) 555-0142

  Education

  Ellery State College
)");
    scan.evidence.facts.title.clear();
    scan.faults = find_faults(scan.evidence, scan.found);
    CHECK(report_text("draft.pdf", scan)
              .find("\nWhat is wrong\n  should: the document has no title "
                    "(no-title)\n      Why: Viewers") != std::string::npos);
    const auto json = report_json("draft.pdf", scan);
    CHECK(json["readable"] == true);
    CHECK(json["title"].is_null());
    CHECK(json["found"]["name"] == "Ottoline Brandt");
    CHECK(json["found"]["sections"][0]["holds"] == "education");
    CHECK(json["found"]["entries"][0]["dates"].is_null());
    CHECK(json["faults"][0]["check"] == "no-title");
    CHECK(json["faults"][0]["weight"] == "should");
    CHECK(json["faults"][0]["page"].is_null());
    CHECK(report_json("x.pdf", "it is empty").dump() ==
          R"({"file":"x.pdf","readable":false,"error":"it is empty"})");
}

}
