#include "edit/field_places.h"

#include <algorithm>
#include <cstddef>
#include <string>

#include "listing/html_element.h"
#include "text/tokenizer.h"

namespace grainside::tools::edit {
namespace {

// Marks are others in a page than in what is seen of it: tags are line ends, and what stands in cells has a pipe.
void keep_words(text::Tokens& tokens) {
    std::erase_if(tokens.list, [](const text::Token& token) {
        return token.kind != text::TokenKind::word && token.kind != text::TokenKind::number;
    });
}

void add(std::vector<TextSpan>& found, const TextSpan& span) {
    if (std::find(found.begin(), found.end(), span) == found.end()) found.push_back(span);
}

// What is no tag and no white space, as one letter a word.
std::string masked(std::string_view bytes) {
    std::string out;
    bool in_tag = false;
    bool in_word = false;
    for (const char c : bytes) {
        if (c == '<') in_tag = true;
        const bool stays = in_tag || listing::is_html_space(c);
        if (stays) {
            out += c;
        } else if (!in_word) {
            out += 'x';
        }
        in_word = !stays;
        if (c == '>') in_tag = false;
    }
    return out;
}

}  // namespace

FieldPlace FieldPlaces::find(const Listing& listing, std::size_t field, std::size_t start, std::size_t end) {
    if (const auto place = stated(listing, field, start, end)) return *place;
    const Wanted wanted = {listing.fields[field].text, start, end};
    return choose(search(wanted), listing, field, wanted);
}

std::optional<FieldPlace> FieldPlaces::find_at(const TextSpan& where, const Listing& listing, std::size_t field,
                                               std::size_t start, std::size_t end) {
    if (const auto place = stated(listing, field, start, end)) return place;
    const Wanted wanted = {listing.fields[field].text, start, end};
    const Places found = search(wanted);
    if (std::none_of(found.begin(), found.end(), [&](const TextSpan& span) { return span.meets(where); })) {
        return std::nullopt;
    }
    return choose(found, listing, field, wanted);
}

std::optional<FieldPlace> FieldPlaces::stated(const Listing& listing, std::size_t field, std::size_t start,
                                              std::size_t end) {
    const auto span = sources_.span(listing, field, start, end);
    if (!span) return std::nullopt;
    const std::size_t size = places_.text().size();
    const auto begin = static_cast<std::size_t>(span->start);
    const auto behind = static_cast<std::size_t>(span->end);
    if (begin > behind || behind > size) return std::nullopt;
    return FieldPlace{{begin, behind}, true};
}

FieldPlace FieldPlaces::choose(const Places& found, const Listing& listing, std::size_t field, const Wanted& wanted) {
    if (found.size() > 1 && page_ != nullptr) {
        for (const TextSpan& span : found) {
            if (is_read_from({listing.record, field}, wanted, span)) return {span, false};
        }
    }
    if (!found.empty()) return {found.front(), false};
    return {places_.span_of_line(listing.line == 0 ? 0 : static_cast<std::size_t>(listing.line) - 1), false};
}

FieldPlaces::Places FieldPlaces::search(const Wanted& wanted) {
    Places found;
    if (places_.text().size() > kMostSearched || wanted.start >= wanted.end) return found;
    search_bytes(wanted, 32, found);
    if (found.size() != 1) search_bytes(wanted, 12, found);
    const bool by_bytes = !found.empty();
    // Words in attributes are none of the tokens, and those of the text around them may say the same.
    if (!search_words(wanted, found) || (page_ != nullptr && !by_bytes)) search_bytes(wanted, 0, found);
    return found;
}

void FieldPlaces::search_bytes(const Wanted& wanted, std::size_t around, Places& found) const {
    const std::string_view text = places_.text();
    const std::size_t before = std::min(around, wanted.start);
    const std::size_t behind = std::min(around, wanted.field.size() - wanted.end);
    const std::size_t size = wanted.end - wanted.start;
    const std::string_view looked_for = wanted.field.substr(wanted.start - before, before + size + behind);
    std::size_t at = text.find(looked_for);
    for (std::size_t places = 0; at != std::string_view::npos && places < kMostPlaces; ++places) {
        add(found, {at + before, at + before + size});
        at = text.find(looked_for, at + 1);
    }
}

bool FieldPlaces::search_words(const Wanted& wanted, Places& found) {
    if (wanted.field.size() > kMostSearched) return false;
    if (document_.list.empty()) {
        text::tokenize(places_.text(), document_);
        keep_words(document_);
    }
    text::tokenize(wanted.field, field_);
    keep_words(field_);
    const std::vector<text::Token>& words = field_.list;
    const std::vector<text::Token>& all = document_.list;
    const auto from =
        static_cast<std::size_t>(std::partition_point(words.begin(), words.end(),
                                                      [&](const text::Token& one) { return one.end <= wanted.start; }) -
                                 words.begin());
    const auto to =
        static_cast<std::size_t>(std::partition_point(words.begin(), words.end(),
                                                      [&](const text::Token& one) { return one.start < wanted.end; }) -
                                 words.begin());
    if (from == to) return false;
    const auto same = [&](const text::Token& one, const text::Token& other) {
        return document_.folded_text(one) == field_.folded_text(other);
    };
    for (const std::size_t around : {std::size_t{6}, std::size_t{2}, std::size_t{0}}) {
        const std::size_t before = std::min(around, from);
        const std::size_t behind = std::min(around, words.size() - to);
        const auto begin = words.begin() + static_cast<std::ptrdiff_t>(from - before);
        const auto behind_last = words.begin() + static_cast<std::ptrdiff_t>(to + behind);
        auto at = std::search(all.begin(), all.end(), begin, behind_last, same);
        if (at == all.end()) continue;
        for (std::size_t places = 0; at != all.end() && places < kMostPlaces; ++places) {
            const auto first_word = at + static_cast<std::ptrdiff_t>(before);
            const auto last_word = first_word + static_cast<std::ptrdiff_t>(to - from - 1);
            add(found, {first_word->start, last_word->end});
            at = std::search(at + 1, all.end(), begin, behind_last, same);
        }
        return around > 0;
    }
    return false;
}

// Whether other words there change these words of the field, and nothing else of the listing.
bool FieldPlaces::is_read_from(const PageField& where, const Wanted& wanted, const TextSpan& span) {
    const auto text = page_->text_with(where, span, masked(places_.text().substr(span.begin, span.end - span.begin)));
    return text && *text != wanted.field && text->starts_with(wanted.field.substr(0, wanted.start)) &&
           text->ends_with(wanted.field.substr(wanted.end));
}

}  // namespace grainside::tools::edit
