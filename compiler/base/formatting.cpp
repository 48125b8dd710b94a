// fmt's functions, of the definitions that its package carries beside its library: linked in, they
// cost the loader nothing, and compiled once, no file more than the library would.
#include <fmt/format-inl.h>

namespace fmt {

template detail::thousands_sep_result<char> detail::thousands_sep_impl(detail::locale_ref);
template char detail::decimal_point_impl(detail::locale_ref);
template detail::dragonbox::decimal_fp<float> detail::dragonbox::to_decimal(float) noexcept;
template detail::dragonbox::decimal_fp<double> detail::dragonbox::to_decimal(double) noexcept;

}
