// Fuzz target: the reading of bullets. Whatever the bytes, extents lie within them.
#include "compiler/english/language.hpp"
#include "compiler/english/sentence.hpp"

#include <cstdint>
#include <cstdlib>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

void require_within(const std::vector<quoin::english::Extent>& extents, std::size_t size) {
    for (const quoin::english::Extent& extent : extents)
        require(extent.offset + extent.length <= size && extent.length > 0);
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const quoin::english::Language language{QUOIN_DATA_FOLDER};
    const std::string text(data, data + size);
    const quoin::english::BulletReading reading = language.read_bullet(text);
    require(reading.verb.offset + reading.verb.length <= size);
    require_within(reading.wrong_for_ended, size);
    require_within(reading.wrong_for_current, size);
    require_within(reading.first_person, size);
    require_within(reading.passive, size);
    require(reading.stronger_verbs.size() <= 3);
    for (const quoin::english::WordSlip& slip : language.word_slips(language.sentence(text))) {
        require(slip.extent.length > 0 && slip.extent.offset + slip.extent.length <= size);
        require(!slip.meant.empty());
    }
    if (const auto base = language.base_of(text)) require(!base->empty());
    require(language.base_of(text).has_value() == language.past_of(text).has_value());
    return 0;
}
