// The pairs of a number and an offset stand before the objects, each of which ends its line.
#include "compiler/stages/pdf/object_streams.hpp"

namespace quoin::pdf {

ObjectStream object_stream(std::span<const PackedObject> objects) {
    std::string pairs, texts;
    for (const PackedObject& object : objects) {
        if (!pairs.empty()) pairs += ' ';
        pairs += std::to_string(object.number) + ' ' + std::to_string(texts.size());
        texts += object.text;
        texts += '\n';
    }
    pairs += '\n';
    return {"<</Type/ObjStm/N " + std::to_string(objects.size()) + "/First " +
                std::to_string(pairs.size()),
            pairs + texts};
}

}
