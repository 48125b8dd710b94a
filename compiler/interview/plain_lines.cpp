#include "compiler/interview/line_reader.hpp"

#include "compiler/base/write_file.hpp"
#include "compiler/interview/signalled_input.hpp"

#include <unistd.h>

#include <array>
#include <string_view>

namespace quoin::interview {

namespace {

class PlainLines : public LineReader {
public:
    TypedLine read(const std::string& prompt) override {
        write_file("-", ::isatty(STDIN_FILENO) == 1 ? prompt : prompt + '\n');
        TypedLine line;
        while (!take_line(line.text)) {
            std::size_t count = 0;
            const auto came = input_.read(buffer_.data(), buffer_.size(), count);
            if (came == SignalledInput::Came::end) return {{}, TypedLine::Ended::interrupted};
            if (came != SignalledInput::Came::input) continue;
            rest_ = {buffer_.data(), count};
            if (!rest_.empty()) continue;
            if (line.text.empty()) line.ended = TypedLine::Ended::of_input;
            return line; // the last one, without a line end
        }
        return line;
    }

    void remember(const std::string&) override {}
    bool edits() const override { return false; }

private:
    // Adds what has been read to the line; whether it has come to its end.
    bool take_line(std::string& text) {
        const std::size_t end = rest_.find('\n');
        const std::string_view piece = rest_.substr(0, end);
        if (text.size() < most_typed) text += piece.substr(0, most_typed - text.size());
        rest_.remove_prefix(end == rest_.npos ? rest_.size() : end + 1);
        return end != rest_.npos;
    }

    SignalledInput input_;
    std::array<char, 4096> buffer_{};
    std::string_view rest_;
};

}

std::unique_ptr<LineReader> plain_lines() {
    return std::make_unique<PlainLines>();
}

}
