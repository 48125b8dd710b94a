// Runs a rule of the theme grammar over a value; what is wrong is reported at its place.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "grammar/messages.hpp"
#include "grammar/theme.hpp"

#include <string>
#include <string_view>

namespace quoin::theme {

template<const Message& message>
std::string worded_at(std::string_view rest) {
    return rest.empty() ? fill<message>("the end of the line") : worded<message>(rest);
}

template<typename Rule>
struct ThemeControl : tao::pegtl::normal<Rule> {
    template<typename Input, typename... States>
    [[noreturn]] static void raise(const Input& in, States&&... /*unused*/) {
        const std::string_view rest{in.current(),
                                    static_cast<std::size_t>(in.end() - in.current())};
        throw tao::pegtl::parse_error(worded_at<grammar::message<Rule>>(rest), in);
    }
};

// The place of bytes [offset, offset + length) of the joined value, cut at the end of its line.
Place place_in(const syntax::Value& value, std::size_t offset, std::size_t length);

template<typename Rule, template<typename> class Action, typename State>
bool read_by_grammar(const syntax::Value& value, State& state, Diagnostics& diagnostics) {
    const std::string text = value.joined();
    tao::pegtl::memory_input in(text, "");
    try {
        return tao::pegtl::parse<Rule, Action, ThemeControl>(in, state);
    } catch (const tao::pegtl::parse_error& fault) {
        diagnostics.error(place_in(value, fault.positions().front().byte, 1),
                          std::string(fault.message()));
        return false;
    }
}

}
