#include "compiler/advice/mend_all.hpp"

#include "compiler/advice/mend.hpp"
#include "compiler/advice/mend_messages.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/stages/model/build.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <iterator>

namespace quoin::advice {

namespace {

namespace fs = std::filesystem;

constexpr int most_mending_rounds = 8; // an edit that overlapped another waits for the next round

// The same résumé, its files as they would be.
ReadingOwner read_again(const SourceReading& before, const Texts& texts) {
    auto reading = std::make_unique<SourceReading>();
    reading->words = before.words;
    for (const auto& [path, bytes] : texts)
        reading->sources.hold(path, bytes);
    const SourceFile& first = before.sources.file(*before.file);
    reading->file = first.path.empty() ? reading->sources.add(first.name, texts.at(first.path),
                                                              reading->diagnostics)
                                       : reading->sources.read(first.path, reading->diagnostics);
    reading->build();
    return reading;
}

// Of the whole résumé, whatever a build for a tag would leave out; by place.
Edits edits_of(const SourceReading& reading, const MendMeans& means) {
    const model::Resume& resume = *reading.resume;
    const TextsRead texts = read_texts(resume, means.language);
    const ProofContext context{.sources = reading.sources,
                               .resume = resume,
                               .typeset = nullptr,
                               .today = resume.settings.updated->value_or(means.read_on),
                               .language = means.language,
                               .texts = texts,
                               .bullets = read_bullets(resume, texts, means.language),
                               .read_on = means.read_on,
                               .everything = true,
                               .office = means.office};
    Edits edits;
    for (Finding& finding : run_proof(context).findings)
        std::ranges::move(finding.safe_mend, std::back_inserter(edits));
    std::ranges::stable_sort(edits, {}, &Edit::place);
    return edits;
}

struct MendedTexts {
    Texts texts;
    std::map<fs::path, std::size_t> made;
};

MendedTexts mended_texts(const Sources& sources, const Edits& edits) {
    std::map<fs::path, std::pair<std::uint32_t, Edits>> by_path;
    for (Edit edit : edits) {
        const fs::path& path = sources.file(edit.place.file).path;
        auto& [file, own] = by_path.try_emplace(path, edit.place.file, Edits{}).first->second;
        edit.place.file = file; // a file may be taken in twice
        own.push_back(std::move(edit));
    }
    MendedTexts result{texts_of(sources), {}};
    for (auto& [path, theirs] : by_path) {
        Mended mended = mend(sources.file(theirs.first), std::move(theirs.second));
        result.texts[path] = std::move(mended.bytes);
        result.made[path] = mended.made;
    }
    return result;
}

std::size_t size_of(const Sources& sources) {
    std::size_t bytes = 0;
    for (std::uint32_t file = 0; file < sources.size(); ++file)
        bytes += sources.file(file).bytes.size();
    return bytes;
}

void add_shape(const model::Tags& tags, std::string& shape) {
    for (const std::string& tag : tags.only)
        shape += '{' + tag;
    for (const std::string& tag : tags.except)
        shape += "{!" + tag;
    if (tags.keep) shape += "{keep";
}

void add_shape(const model::Entry& entry, std::string& shape) {
    add_shape(entry.tags, shape += "\n ");
    for (const model::Field& field : entry.fields) {
        const std::vector<model::Text>* items = items_in(&field);
        shape += fmt::format(" f{}:{}", static_cast<int>(field.name), items ? items->size() : 1);
        add_shape(field.tags, shape);
    }
    for (const model::Bullet& bullet : entry.bullets)
        add_shape(bullet.tags, shape += bullet.level == 1 ? " -" : " --");
    for (const model::Entry& further : entry.further)
        add_shape(further, shape);
}

// What a mend leaves as it is: what there is of everything, and its tags.
std::string shape_of(const model::Resume& resume) {
    std::string shape;
    for (const model::Field& field : resume.heading)
        add_shape(field.tags, shape += fmt::format(" f{}", static_cast<int>(field.name)));
    for (const model::Section& section : resume.sections) {
        add_shape(section.tags, shape += fmt::format("\ns{}", static_cast<int>(section.holds)));
        for (const model::Entry& entry : section.entries)
            add_shape(entry, shape);
    }
    return shape;
}

struct Round {
    std::map<fs::path, std::size_t> made;
    ReadingOwner after; // null if nothing was made
};

Edits mends_of(const Diagnostics& diagnostics) {
    Edits edits;
    for (const Diagnostic& diagnostic : diagnostics.all())
        edits.insert(edits.end(), diagnostic.mend.begin(), diagnostic.mend.end());
    std::ranges::stable_sort(edits, {}, &Edit::place);
    return edits;
}

// Those of the edits that leave a reading which is `good`.
Round mend_once(const SourceReading& before, const Edits& edits,
                const std::function<bool(const SourceReading&)>& is_good) {
    constexpr std::size_t at_least = 16, most_bytes = std::size_t{4} << 20;
    Round round;
    good_edits(edits, at_least + most_bytes / (size_of(before.sources) + 1),
               [&](const Edits& some) {
                   MendedTexts mended = mended_texts(before.sources, some);
                   ReadingOwner after = read_again(before, mended.texts);
                   if (!is_good(*after)) return false;
                   round = {std::move(mended.made), std::move(after)};
                   return true;
               });
    const auto is_some = [](const auto& made) { return made.second > 0; };
    if (!std::ranges::any_of(round.made, is_some)) round.after = nullptr;
    return round;
}

// What keeps the file from being read, or has it read with a warning: there is to be less of it.
Round mend_faults(const SourceReading& before) {
    return mend_once(before, mends_of(before.diagnostics),
                     [&](const SourceReading& after) { return after.faults() < before.faults(); });
}

// What proof finds: a résumé of the same shape is to be left, that reads without an error and
// without a warning more than before.
Round mend_findings(const SourceReading& before, const Edits& edits) {
    const std::string shape = shape_of(*before.resume);
    return mend_once(before, edits, [&](const SourceReading& after) {
        return after.resume && after.faults() <= before.faults() &&
               shape_of(*after.resume) == shape;
    });
}

}

Texts texts_of(const Sources& sources) {
    Texts texts;
    for (std::uint32_t file = 0; file < sources.size(); ++file)
        texts.emplace(sources.file(file).path, sources.file(file).bytes);
    return texts;
}

void SourceReading::build() {
    if (file) resume = model::build_resume(sources, *file, words, diagnostics);
}

std::pair<std::size_t, std::size_t> SourceReading::faults() const {
    return {diagnostics.count(Severity::error), diagnostics.count(Severity::warning)};
}

AllMended mend_all(const SourceReading& first, const MendMeans& means) {
    AllMended all;
    const SourceReading* reading = &first;
    const auto go_on = [&](Round round) {
        if (!round.after) return false;
        for (const auto& [path, count] : round.made)
            all.made[path] += count;
        all.last = std::move(round.after);
        reading = all.last.get();
        return true;
    };
    int rounds = 0;
    while (rounds < most_mending_rounds && go_on(mend_faults(*reading)))
        ++rounds;
    while (reading->resume && rounds++ < 2 * most_mending_rounds) {
        const Edits edits = edits_of(*reading, means);
        if (go_on(mend_findings(*reading, edits))) continue;
        for (const Edit& edit : edits)
            all.left.note(edit.place, fill<messages::left_to_mend>());
        break;
    }
    return all;
}

}
