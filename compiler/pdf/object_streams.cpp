// By libqpdf, through its C interface. Of the two strings of the file identifier it keeps the first
// and makes the second anew; in a new file they shall be the same (ISO 32000-1, section 14.4).
#include "compiler/pdf/object_streams.hpp"

#include <qpdf/qpdf-c.h>

#include <memory>
#include <stdexcept>

namespace quoin {

namespace {

struct Cleanup {
    void operator()(qpdf_data pdf) const { qpdf_cleanup(&pdf); }
};
using Qpdf = std::unique_ptr<_qpdf_data, Cleanup>;

void require(QPDF_ERROR_CODE code, qpdf_data pdf) {
    if ((code & QPDF_ERRORS) == 0) return;
    throw std::runtime_error(std::string("the PDF cannot be written: ") +
                             qpdf_get_error_full_text(pdf, qpdf_get_error(pdf)));
}

// `/ID [<…><…>]` stands in the dictionary of the cross-reference stream, at the file's end.
void repeat_identifier(std::string& file) {
    constexpr std::string_view key = "/ID [<", between = "><";
    constexpr std::size_t digits = 32;
    const std::size_t at = file.rfind(key);
    const std::size_t first = at + key.size(), second = first + digits + between.size();
    if (at == std::string::npos || second + digits > file.size() ||
        file.compare(first + digits, between.size(), between) != 0)
        throw std::runtime_error("the PDF cannot be written: no file identifier in its trailer");
    file.replace(second, digits, file.substr(first, digits));
}

}

std::string with_object_streams(std::string_view file) {
    const Qpdf pdf(qpdf_init());
    qpdf_set_suppress_warnings(pdf.get(), QPDF_TRUE);
    require(qpdf_read_memory(pdf.get(), "PDF", file.data(), file.size(), nullptr), pdf.get());
    require(qpdf_init_write_memory(pdf.get()), pdf.get());
    qpdf_set_object_stream_mode(pdf.get(), qpdf_o_generate);
    qpdf_set_decode_level(pdf.get(), qpdf_dl_none);
    qpdf_set_newline_before_endstream(pdf.get(), QPDF_TRUE); // PDF/A-2, 6.1.7.1
    qpdf_set_static_ID(pdf.get(), QPDF_TRUE);                // else it comes from the clock
    require(qpdf_write(pdf.get()), pdf.get());
    std::string packed(reinterpret_cast<const char*>(qpdf_get_buffer(pdf.get())),
                       qpdf_get_buffer_length(pdf.get()));
    repeat_identifier(packed);
    return packed;
}

}
