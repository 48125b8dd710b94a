// Colours stand where something weighs, and nowhere else; who wants none has none.
#include "compiler/commands/colour.hpp"

#include <doctest/doctest.h>

#include <string>

namespace quoin::commands {

namespace {

// `{r}` for red, `{y}`, `{c}`, `{b}` for bold, `{}` for the end of it.
std::string marked(std::string text) {
    const std::pair<const char*, const char*> marks[] = {{"\x1b[1;31m", "{r}"},
                                                         {"\x1b[1;33m", "{y}"},
                                                         {"\x1b[1;36m", "{c}"},
                                                         {"\x1b[1m", "{b}"},
                                                         {"\x1b[0m", "{}"}};
    for (const auto& [sequence, mark] : marks)
        for (std::size_t at = text.find(sequence); at != text.npos; at = text.find(sequence))
            text.replace(at, std::string(sequence).size(), mark);
    return text;
}

}

TEST_CASE("colours: by weight, and of the words at fault") {
    struct Case {
        const char *plain, *coloured;
    };
    const Case cases[] = {
        {"a.resume:3:1: error: unknown label 'rol'; did you mean 'role'?\n",
         "a.resume:3:1: {r}error{}: unknown label {b}'rol'{}; did you mean {b}'role'{}?\n"},
        {"a.resume: warning: it's the writer's own\n",
         "a.resume: {y}warning{}: it's the writer's own\n"},
        {"a.resume:1: note: so", "a.resume:1: {c}note{}: so"},
        {"a.resume:1:2: must [spelling]: 'x'\n  why: 'y'\n",
         "a.resume:1:2: {r}must{} [spelling]: {b}'x'{}\n  why: 'y'\n"},
        {"a.resume:1:2: should [dash]: x\n", "a.resume:1:2: {y}should{} [dash]: x\n"},
        {"a.resume:1:2: consider [dash]: x\n", "a.resume:1:2: {c}consider{} [dash]: x\n"},
        {"  rol: Deckhand\n  ^~~\n", "  rol: Deckhand\n{r}  ^~~{}\n"},
        {"  role: error: 'x'\n", "  role: error: 'x'\n"},
        {"quoin set: a file 'x'\n", "quoin set: a file 'x'\n"},
        {"", ""},
        {"\n\n", "\n\n"},
    };
    choose_colours("always");
    for (const Case& c : cases)
        CHECK(marked(with_colours(c.plain, 1)) == c.coloured);
    choose_colours("never");
    for (const Case& c : cases)
        CHECK(with_colours(c.plain, 1) == c.plain);
    choose_colours("auto");
}

}
