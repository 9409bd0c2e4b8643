#include "edit/field_places.h"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "text/tokenizer.h"

namespace grainside::tools::edit {
namespace {

// Marks are others in a page than in what is seen of it: tags are line ends, and what stands in cells has a pipe.
void keep_words(text::Tokens& tokens) {
    std::erase_if(tokens.list, [](const text::Token& token) {
        return token.kind != text::TokenKind::word && token.kind != text::TokenKind::number;
    });
}

}  // namespace

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

TextSpan FieldPlaces::search(std::string_view field, std::size_t start, std::size_t end) {
    const std::string_view text = places_.text();
    if (text.size() > kMostSearched || start >= end) return {};
    TextSpan first;
    for (const std::size_t around : {std::size_t{32}, std::size_t{12}}) {
        const std::size_t before = std::min(around, start);
        const std::size_t behind = std::min(around, field.size() - end);
        const std::string_view wanted = field.substr(start - before, before + (end - start) + behind);
        const std::size_t at = text.find(wanted);
        if (at == std::string_view::npos) continue;
        first = {at + before, at + before + (end - start)};
        if (text.find(wanted, at + 1) == std::string_view::npos) return first;
    }
    if (const TextSpan words = search_words(field, start, end); words.begin != words.end) return words;
    if (first.begin != first.end) return first;
    const std::size_t at = text.find(field.substr(start, end - start));
    return at == std::string_view::npos ? TextSpan{} : TextSpan{at, at + (end - start)};
}

TextSpan FieldPlaces::search_words(std::string_view field, std::size_t start, std::size_t end) {
    if (field.size() > kMostSearched) return {};
    if (document_.list.empty()) {
        text::tokenize(places_.text(), document_);
        keep_words(document_);
    }
    text::tokenize(field, field_);
    keep_words(field_);
    const std::vector<text::Token>& wanted = field_.list;
    const std::vector<text::Token>& all = document_.list;
    const auto from = static_cast<std::size_t>(
        std::partition_point(wanted.begin(), wanted.end(), [&](const text::Token& one) { return one.end <= start; }) -
        wanted.begin());
    const auto to = static_cast<std::size_t>(
        std::partition_point(wanted.begin(), wanted.end(), [&](const text::Token& one) { return one.start < end; }) -
        wanted.begin());
    if (from == to) return {};
    const auto same = [&](const text::Token& one, const text::Token& other) {
        return field_.folded_text(one) == document_.folded_text(other);
    };
    for (const std::size_t around : {std::size_t{6}, std::size_t{2}, std::size_t{0}}) {
        const std::size_t before = std::min(around, from);
        const std::size_t behind = std::min(around, wanted.size() - to);
        const auto begin = wanted.begin() + static_cast<std::ptrdiff_t>(from - before);
        const auto behind_last = wanted.begin() + static_cast<std::ptrdiff_t>(to + behind);
        const auto found =
            std::search(all.begin(), all.end(), begin, behind_last,
                        [&](const text::Token& one, const text::Token& other) { return same(other, one); });
        if (found == all.end()) continue;
        const auto first_word = found + static_cast<std::ptrdiff_t>(before);
        const auto last_word = first_word + static_cast<std::ptrdiff_t>(to - from - 1);
        return {first_word->start, last_word->end};
    }
    return {};
}

}  // namespace grainside::tools::edit
