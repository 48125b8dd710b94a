// What the language server says of messages that it cannot follow.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::server::messages {

inline constexpr Message no_header =
    "these bytes are no message: expected 'Content-Length: N', an empty line and N bytes of JSON; "
    "reading goes on at the next header";
inline constexpr Message message_too_large =
    "a message of {} bytes is passed over: at most {} are taken in";
inline constexpr Message no_json = "the message is no JSON: {}";
inline constexpr Message no_request =
    "expected an object with \"jsonrpc\": \"2.0\" and a \"method\"; a batch is none";
inline constexpr Message not_initialized =
    "'{}' came before 'initialize', which is the first request";
inline constexpr Message initialized_twice = "'initialize' was asked for already, and is once";
inline constexpr Message shut_down =
    "'{}' came after 'shutdown', after which there is 'exit' alone";
inline constexpr Message unknown_method = "there is no method '{}' here";
inline constexpr Message cancelled = "the request was cancelled";
inline constexpr Message bad_params = "the parameters of '{}' are not those of the protocol: {}";
inline constexpr Message not_open =
    "the document {} is not open; 'textDocument/didOpen' comes first";
inline constexpr Message bad_uri = "{} is no URI of a document; expected one such as "
                                   "'file:///home/ottoline/draft.resume'";
inline constexpr Message unknown_command = "there is no command {} here";
inline constexpr Message no_file_to_set =
    "the document is no file yet: save it, and the PDF goes beside it";
inline constexpr Message no_page = "there is no page of it, as its diagnostics say";
inline constexpr Message no_page_over_source =
    "'{}' leads to a source, which a page never replaces";
inline constexpr Message no_tag_name =
    "{} is no name of a tag; expected letters, figures, '-' and '_', such as 'lab'";
inline constexpr Message no_tag_here = "no tag stands here; rename one such as 'lab' in '{{lab}}'";
inline constexpr Message internal_error = "internal error: {}; please report it";

}
