// Files given by mistake are told by how they begin, as their formats' specifications have it.
#include "compiler/base/file_kinds.hpp"

#include <doctest/doctest.h>

#include <string>

namespace quoin {

TEST_CASE("file kinds: what a file of another kind is called") {
    const struct {
        std::string bytes, begins;
    } cases[] = {
        {"%PDF-1.7\n%\xE2\xE3", "is a PDF, and the text that one is made from was expected"},
        {std::string("PK\x03\x04\x14\0", 6) + "[Content_Types].xml", "is a word processor's file"},
        {std::string("PK\x03\x04\x14\0", 6) + "mimetypeapplication/vnd.oasis.opendocument.text",
         "is a word processor's file"},
        {std::string("PK\x03\x04\x14\0", 6) + "photos/", "is a ZIP archive"},
        {"{\\rtf1\\ansi", "is a word processor's file"},
        {"<!DOCTYPE html><html>", "is a web page"},
        {"\x89PNG\r\n", "is an image"},
        {"name: Ottoline Brandt\n", ""},
        {"", ""},
        {"PK", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.bytes);
        const std::string said = other_kind(one.bytes);
        CHECK(said.empty() == one.begins.empty());
        CHECK(said.starts_with(one.begins));
    }
}

}
