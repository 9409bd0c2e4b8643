#include "edit/field_places.h"

#include <algorithm>

namespace grainside::tools::edit {

FieldPlace FieldPlaces::find(const Listing& listing, std::size_t field, std::size_t start, std::size_t end) {
    if (const auto span = sources_.span(listing, field, start, end)) {
        const std::size_t size = places_.text().size();
        const auto begin = static_cast<std::size_t>(span->start);
        const auto behind = static_cast<std::size_t>(span->end);
        if (begin <= behind && behind <= size) return {{begin, behind}, true};
    }
    const TextSpan found = search(listing.fields[field].text, start, end);
    if (found.begin != found.end) return {found, false};
    return {places_.span_of_line(listing.line == 0 ? 0 : static_cast<std::size_t>(listing.line) - 1), false};
}

TextSpan FieldPlaces::search(std::string_view field, std::size_t start, std::size_t end) const {
    const std::string_view text = places_.text();
    if (text.size() > kMostSearched || start >= end) return {};
    TextSpan first;
    for (const std::size_t around : {std::size_t{32}, std::size_t{12}, std::size_t{0}}) {
        const std::size_t before = std::min(around, start);
        const std::size_t behind = std::min(around, field.size() - end);
        const std::string_view wanted = field.substr(start - before, before + (end - start) + behind);
        const std::size_t at = text.find(wanted);
        if (at == std::string_view::npos) continue;
        first = {at + before, at + before + (end - start)};
        if (text.find(wanted, at + 1) == std::string_view::npos) return first;
    }
    return first;
}

}  // namespace grainside::tools::edit
