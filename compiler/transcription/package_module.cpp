// The module `package`: parts of a ZIP package, by libarchive. Nothing is written anywhere; what is
// packed within is left alone, so that no archive unfolds within another.
#include "compiler/transcription/package.hpp"

#include <archive.h>
#include <archive_entry.h>

#include <array>
#include <memory>
#include <optional>

namespace quoin::transcription { namespace {

struct CloseArchive {
    void operator()(archive* open) const { archive_read_free(open); }
};
using OpenArchive = std::unique_ptr<archive, CloseArchive>;

bool is_wanted(std::string_view name) {
    constexpr std::array<std::string_view, 5> whole = {
        "content.xml", "styles.xml", "word/document.xml", "word/styles.xml", "[Content_Types].xml"};
    for (const std::string_view one : whole)
        if (name == one) return true;
    for (const std::string_view start : {"word/header", "word/foot", "word/endnotes"})
        if (name.starts_with(start) && name.ends_with(".xml")) return true;
    return false;
}

// The bytes of the entry at hand; none if they are more than `most`.
std::optional<std::string> bytes_of(archive* from, std::size_t most, bool& damaged) {
    std::string bytes;
    std::array<char, 16384> part{};
    for (;;) {
        const auto read = archive_read_data(from, part.data(), part.size());
        if (read < 0) damaged = true;
        if (read <= 0) return bytes;
        bytes.append(part.data(), static_cast<std::size_t>(read));
        if (bytes.size() > most) return std::nullopt;
    }
}

class PackageReader {
public:
    PackageReader(std::string_view bytes, const PackageLimits& limits)
        : bytes_(bytes), limits_(limits), archive_(archive_read_new()) {}

    Package read() {
        package_.end = PackageEnd::read;
        if (!archive_ || archive_read_support_format_zip_seekable(archive_.get()) != ARCHIVE_OK ||
            archive_read_open_memory(archive_.get(), bytes_.data(), bytes_.size()) != ARCHIVE_OK)
            return ended(PackageEnd::damaged);
        for (std::size_t count = 0;; ++count) {
            archive_entry* entry = nullptr;
            const int code = archive_read_next_header(archive_.get(), &entry);
            if (code == ARCHIVE_EOF) return std::move(package_);
            if (code < ARCHIVE_WARN) return ended(PackageEnd::damaged);
            if (count > limits_.entries) return ended(PackageEnd::too_large);
            if (!take(entry)) return std::move(package_);
        }
    }

private:
    Package ended(PackageEnd end) {
        package_.end = end;
        return std::move(package_);
    }

    bool stop(PackageEnd end) {
        package_.end = end;
        return false;
    }

    // Whether to go on.
    bool take(archive_entry* entry) {
        const char* named = archive_entry_pathname(entry);
        const std::string_view name = named == nullptr ? "" : named;
        if (name.ends_with("vbaProject.bin") || name.starts_with("Basic/")) package_.macros = true;
        if (name.ends_with(".iwa")) package_.pages = true;
        if (!is_wanted(name) || package_.parts.contains(name)) return true;
        if (archive_entry_is_data_encrypted(entry) > 0) return stop(PackageEnd::locked);
        bool damaged = false;
        const std::size_t most = std::min(limits_.part, limits_.whole - taken_);
        auto bytes = bytes_of(archive_.get(), most, damaged);
        if (!bytes) return stop(PackageEnd::too_large);
        if (damaged) return stop(PackageEnd::damaged);
        taken_ += bytes->size();
        package_.parts.emplace(name, std::move(*bytes));
        return true;
    }

    std::string_view bytes_;
    PackageLimits limits_;
    OpenArchive archive_;
    Package package_;
    std::size_t taken_ = 0;
};

class ZipOpener : public PackageOpener {
public:
    Package open(std::string_view bytes, const PackageLimits& limits) const override {
        return PackageReader(bytes, limits).read();
    }
};

}}

extern "C" __attribute__((visibility("default"))) quoin::transcription::PackageOpener*
quoin_package() {
    return new quoin::transcription::ZipOpener;
}
