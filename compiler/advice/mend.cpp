// From places in normalised text back to bytes.
#include "compiler/advice/mend.hpp"

#include "compiler/base/source_map.hpp"

#include <algorithm>
#include <tuple>

namespace quoin::advice {

namespace {

auto edit_place(const Edit& edit) {
    return std::tuple(edit.place.line, edit.place.column, edit.place.length);
}

struct Search {
    const std::function<bool(const std::vector<Edit>&)>& are_good;
    std::size_t questions_left = 0;
    std::vector<Edit> good;

    void look_at(std::span<const Edit> edits) {
        if (edits.empty() || questions_left == 0) return;
        --questions_left;
        const std::size_t before = good.size();
        good.insert(good.end(), edits.begin(), edits.end());
        if (are_good(good)) return;
        good.resize(before);
        if (edits.size() == 1) return;
        look_at(edits.first(edits.size() / 2));
        look_at(edits.subspan(edits.size() / 2));
    }
};

}

Mended mend(const SourceFile& file, std::vector<Edit> edits) {
    std::ranges::stable_sort(edits, {}, edit_place);
    // a file that is taken in twice
    edits.erase(std::unique(edits.begin(), edits.end()), edits.end());
    SourceMap map(file);
    Mended mended;
    std::size_t copied = 0; // bytes of the file that are behind
    for (const Edit& edit : edits) {
        const auto range = map.bytes_of(edit.place);
        if (!range || range->begin < copied) continue;
        mended.bytes.append(file.bytes, copied, range->begin - copied);
        mended.bytes += edit.replacement;
        copied = range->end;
        ++mended.made;
    }
    mended.bytes.append(file.bytes, copied);
    return mended;
}

std::vector<Edit> good_edits(std::span<const Edit> edits, std::size_t most_questions,
                             const std::function<bool(const std::vector<Edit>&)>& are_good) {
    Search search{are_good, most_questions, {}};
    search.look_at(edits);
    return std::move(search.good);
}

}
