// Lines of standard input, read by read(2): it returns when a signal comes in, so that control-C
// leaves as '.' does.
#include "compiler/interview/line_reader.hpp"

#include "compiler/base/write_file.hpp"

#include <csignal>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <string_view>

namespace quoin::interview {

namespace {

volatile std::sig_atomic_t plain_interrupted = 0;

void note_interruption(int) {
    plain_interrupted = 1;
}

class PlainLines : public LineReader {
public:
    PlainLines() {
        struct sigaction noting {};
        noting.sa_handler = note_interruption; // and no SA_RESTART
        for (std::size_t i = 0; i < signals.size(); ++i)
            ::sigaction(signals.at(i), &noting, &before_.at(i));
    }
    ~PlainLines() override {
        for (std::size_t i = 0; i < signals.size(); ++i)
            ::sigaction(signals.at(i), &before_.at(i), nullptr);
    }
    PlainLines(const PlainLines&) = delete;
    PlainLines& operator=(const PlainLines&) = delete;

    TypedLine read(const std::string& prompt) override {
        write_file("-", ::isatty(STDIN_FILENO) == 1 ? prompt : prompt + '\n');
        TypedLine line;
        while (plain_interrupted == 0) {
            if (take_line(line.text)) return line;
            const ssize_t count = ::read(STDIN_FILENO, buffer_.data(), buffer_.size());
            if (count < 0 && errno == EINTR) continue;
            rest_ = {buffer_.data(), count > 0 ? static_cast<std::size_t>(count) : 0};
            if (!rest_.empty()) continue;
            if (line.text.empty()) line.ended = TypedLine::Ended::of_input;
            return line; // the last one, without a line end
        }
        return {{}, TypedLine::Ended::interrupted};
    }

    void remember(const std::string&) override {}

private:
    // Adds what has been read to the line; whether it has come to its end.
    bool take_line(std::string& text) {
        const std::size_t end = rest_.find('\n');
        const std::string_view piece = rest_.substr(0, end);
        if (text.size() < most_typed) text += piece.substr(0, most_typed - text.size());
        rest_.remove_prefix(end == rest_.npos ? rest_.size() : end + 1);
        return end != rest_.npos;
    }

    static constexpr std::array<int, 3> signals{SIGINT, SIGTERM, SIGHUP};
    std::array<struct sigaction, signals.size()> before_{};
    std::array<char, 4096> buffer_{};
    std::string_view rest_;
};

}

std::unique_ptr<LineReader> plain_lines() {
    return std::make_unique<PlainLines>();
}

}
