// Texts and fields of two drafts made one, for a page that shows both.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace quoin::redlining {

struct Slot { // of a merged list: of the old one or the new, by its index there
    bool old_one = false;
    std::size_t index = 0;
};

// What is gone stands after what it stood after. `new_of_old` has, for each of the old list, its
// index in the new; none for what is gone. What went elsewhere is no number of the new list.
std::vector<Slot> merged_order(const std::vector<std::optional<std::size_t>>& new_of_old,
                               std::size_t new_count);

class Marker {
public:
    Marker(const model::Resume& before, const model::Resume& after, std::uint32_t old_files)
        : before_(before), after_(after), old_files_(old_files) {}

    // Whole, as inserted or deleted; what is deleted leads nowhere.
    model::Text marked(const model::Text& text, model::Revised revised) const;
    model::Field marked(const model::Field& field, model::Revised revised) const;

    model::Text merged(const model::Text& was, const model::Text& is) const;
    model::Field merged(const model::Field& was, const model::Field& is) const;
    std::vector<model::Field> merged(const std::vector<model::Field>& was,
                                     const std::vector<model::Field>& is) const;

private:
    model::Text slice(const model::Text& text, std::size_t begin, std::size_t end,
                      model::Revised revised) const;
    model::Text dates_text(const model::Field& field, model::Revised revised) const;
    model::Text merged_dates(const model::Field& was, const model::Field& is) const;
    void mark(model::Span& span, model::Revised revised) const;
    template<typename T>
    std::vector<T> merged_lists(const std::vector<T>& was, const std::vector<T>& is,
                                const std::vector<std::optional<std::size_t>>& match) const;

    const model::Resume& before_;
    const model::Resume& after_;
    std::uint32_t old_files_;
};

}
