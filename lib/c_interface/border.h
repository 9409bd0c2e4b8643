// What stands on the border to C: texts that pass it, and exceptions that do not. Thread-safe.
#ifndef GRAINSIDE_C_INTERFACE_BORDER_H
#define GRAINSIDE_C_INTERFACE_BORDER_H

#include <new>
#include <stdexcept>
#include <string>
#include <string_view>

#include "grainside/finding.h"
#include "grainside/grainside_c.h"

namespace grainside::c_interface {

inline GrainsideText text_of(std::string_view text) noexcept {
    return {text.data(), text.size()};
}

inline bool is_text(const GrainsideText& text) noexcept {
    return text.bytes != nullptr || text.size == 0;
}

// REQUIRES: is_text.
inline std::string_view view_of(const GrainsideText& text) noexcept {
    return text.size == 0 ? std::string_view() : std::string_view(text.bytes, text.size);
}

// The two count alike, worst first.
inline GrainsideGrade grade_of(Grade grade) noexcept {
    return static_cast<GrainsideGrade>(grade);
}

// `work`, with whatever it throws as a status.
template <typename Work>
GrainsideStatus guarded(Work work) noexcept {
    try {
        return work();
    } catch (const std::bad_alloc&) {
        return grainside_no_memory;
    } catch (const std::length_error&) {
        // A text that would be longer than memory.
        return grainside_no_memory;
    } catch (...) {
        return grainside_broken;
    }
}

}  // namespace grainside::c_interface

#endif  // GRAINSIDE_C_INTERFACE_BORDER_H
