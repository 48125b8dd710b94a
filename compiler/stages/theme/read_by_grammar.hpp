// Runs a rule of the theme grammar over a value; what is wrong is reported at its place.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "grammar/messages.hpp"
#include "grammar/theme.hpp"

#include <string>
#include <string_view>

namespace quoin::theme {

template<typename Rule>
struct ThemeControl : tao::pegtl::normal<Rule> {
    template<typename Input, typename... States>
    [[noreturn]] static void raise(const Input& in, States&&... /*unused*/) {
        throw tao::pegtl::parse_error(std::string(grammar::message<Rule>), in);
    }
};

// The place of bytes [offset, offset + length) of the joined value, cut at the end of its line.
Place place_in(const syntax::Value& value, std::size_t offset, std::size_t length);

void report_fault(const syntax::Value& value, std::size_t offset, std::string_view message,
                  Diagnostics& diagnostics);

template<typename Rule, template<typename> class Action, typename State>
bool read_by_grammar(const syntax::Value& value, State& state, Diagnostics& diagnostics) {
    const std::string text = value.joined();
    tao::pegtl::memory_input in(text, "");
    try {
        return tao::pegtl::parse<Rule, Action, ThemeControl>(in, state);
    } catch (const tao::pegtl::parse_error& fault) {
        report_fault(value, fault.positions().front().byte, fault.message(), diagnostics);
        return false;
    }
}

}
