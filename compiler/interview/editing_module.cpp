// The module `editing`: lines of a terminal with editing and a history, by libedit. Its settings
// file of a user is not read, so that keys do the same for everyone.
#include "compiler/interview/line_reader.hpp"
#include "compiler/interview/signalled_input.hpp"

#include <histedit.h>
#include <langinfo.h>
#include <unistd.h>

#include <clocale>
#include <cstdio>
#include <cstring>
#include <cwchar>
#include <string>
#include <string_view>

namespace quoin::interview { namespace {

constexpr int remembered_lines = 500;

// What is typed is UTF-8; of the locales that say so, the user's own is preferred.
bool use_utf_8() {
    for (const char* locale : {"", "C.UTF-8"})
        if (std::setlocale(LC_CTYPE, locale) != nullptr &&
            std::strcmp(nl_langinfo(CODESET), "UTF-8") == 0)
            return true;
    std::setlocale(LC_CTYPE, "C");
    return false;
}

class EditedLines : public LineReader {
public:
    EditedLines() : history_(history_init()), editor_(el_init("quoin", stdin, stdout, stderr)) {
        HistEvent event;
        history(history_, &event, H_SETSIZE, remembered_lines);
        history(history_, &event, H_SETUNIQUE, 1);
        el_set(editor_, EL_CLIENTDATA, this);
        el_set(editor_, EL_PROMPT, prompt_of);
        el_set(editor_, EL_EDITOR, "emacs");
        el_set(editor_, EL_HIST, history, history_);
        el_set(editor_, EL_GETCFN, next_character);
    }
    ~EditedLines() override {
        el_end(editor_);
        history_end(history_);
        std::setlocale(LC_CTYPE, "C");
    }
    EditedLines(const EditedLines&) = delete;
    EditedLines& operator=(const EditedLines&) = delete;

    TypedLine read(const std::string& prompt) override {
        prompt_ = prompt;
        el_set(editor_, EL_PREP_TERM, 1); // before the prompt invites a control-D
        int count = 0;
        const char* text = el_gets(editor_, &count);
        if (interrupted_) return {{}, TypedLine::Ended::interrupted};
        if (text == nullptr || count <= 0) return {{}, TypedLine::Ended::of_input};
        std::string_view line(text, static_cast<std::size_t>(count));
        if (line.ends_with('\n')) line.remove_suffix(1);
        return {std::string(line.substr(0, most_typed)), TypedLine::Ended::no};
    }

    void remember(const std::string& line) override { // but for signs such as `<`
        HistEvent event;
        if (line.size() > 2) history(history_, &event, H_ENTER, line.c_str());
    }

    bool edits() const override { return true; }

private:
    static EditedLines& self(EditLine* editor) {
        void* data = nullptr;
        el_get(editor, EL_CLIENTDATA, &data);
        return *static_cast<EditedLines*>(data);
    }

    static char* prompt_of(EditLine* editor) { return self(editor).prompt_.data(); }

    // As libedit asks for it: 1, or 0 where the line ends for good.
    static int next_character(EditLine* editor, wchar_t* character) {
        EditedLines& lines = self(editor);
        std::mbstate_t state{};
        for (char byte = 0; lines.next_byte(byte);) {
            const std::size_t used = std::mbrtowc(character, &byte, 1, &state);
            if (used == static_cast<std::size_t>(-2)) continue; // there is more of it
            if (used == static_cast<std::size_t>(-1)) *character = L'\uFFFD';
            return 1;
        }
        return 0;
    }

    bool next_byte(char& byte) {
        while (!interrupted_) {
            std::size_t count = 0;
            switch (input_.read(&byte, 1, count)) {
            case SignalledInput::Came::input:
                return count == 1;
            case SignalledInput::Came::end:
                interrupted_ = true;
                break;
            case SignalledInput::Came::resize:
                el_resize(editor_);
                break;
            case SignalledInput::Came::resumption:
                el_set(editor_, EL_PREP_TERM, 1);
                el_set(editor_, EL_REFRESH);
                break;
            }
        }
        return false;
    }

    SignalledInput input_;
    History* history_;
    EditLine* editor_;
    std::string prompt_;
    bool interrupted_ = false;
};

}}

extern "C" [[gnu::visibility("default")]] quoin::interview::LineReader* quoin_editing() {
    using namespace quoin::interview;
    return use_utf_8() ? new EditedLines : nullptr;
}
