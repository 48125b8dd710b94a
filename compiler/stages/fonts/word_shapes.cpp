#include "compiler/stages/fonts/word_shapes.hpp"

#include <hb.h>

#include <new>
#include <utility>

namespace quoin::fonts {

std::shared_ptr<const ShapedWord> WordShapes::find(const std::string& key) const {
    const std::scoped_lock lock(mutex_);
    const auto found = words_.find(key);
    return found == words_.end() ? nullptr : found->second;
}

void WordShapes::keep(std::string key, std::shared_ptr<const ShapedWord> word) {
    const std::scoped_lock lock(mutex_);
    if (words_.size() < most) words_.emplace(std::move(key), std::move(word));
}

// HarfBuzz keeps what is made for a face with it. Of two threads the first to set it has made it.
WordShapes& word_shapes_of(const Face& face) {
    static hb_user_data_key_t key;
    hb_face_t* const owner = face.hb_face();
    if (hb_face_get_user_data(owner, &key) == nullptr) {
        auto made = std::make_unique<WordShapes>();
        const auto destroy = [](void* words) { delete static_cast<WordShapes*>(words); };
        if (hb_face_set_user_data(owner, &key, made.get(), destroy, 0) != 0) made.release();
    }
    void* const words = hb_face_get_user_data(owner, &key);
    if (words == nullptr) throw std::bad_alloc();
    return *static_cast<WordShapes*>(words);
}

}
