// A scan as people and as programs read it.
#pragma once

#include "compiler/portal/scan.hpp"

#include <nlohmann/json_fwd.hpp>

#include <memory>
#include <string>
#include <string_view>
#include <variant>

namespace quoin::portal {

std::string report_text(std::string_view file, const Scan& scan);

// Keys are stable: further ones may come, none goes or changes its meaning.
nlohmann::ordered_json report_json(std::string_view file, const Scan& scan);
nlohmann::ordered_json report_json(std::string_view file, const std::string& unreadable);

// The same of several files, put together as they come, so that none is held for long.
class JsonReport {
public:
    JsonReport();
    ~JsonReport();
    void add(std::string_view file, const std::variant<Scan, std::string>& result);
    std::string text() const;

private:
    std::unique_ptr<nlohmann::ordered_json> files_;
};

}
