#include "edit/completion.h"

#include "edit/known_name.h"

namespace grainside::tools::edit {
namespace {

// In no list, near to no name, and in the alphabet of ids, so that a reader of ids gets as far as looking it up.
std::string word_not_in(std::string_view text) {
    std::string word = "zz-to-be-completed-zz";
    while (text.find(word) != std::string_view::npos) word += 'z';
    return word;
}

std::size_t behind_blanks(std::string_view text, std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
    return at;
}

// The last character before `at` on its line that is no blank; NUL at the beginning of a line.
char sign_before(std::string_view text, std::size_t at) {
    while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\t')) --at;
    return at == 0 || text[at - 1] == '\n' || text[at - 1] == '\r' ? '\0' : text[at - 1];
}

}  // namespace

Completion complete(std::string_view text, std::size_t caret, const NamesInPlace& names_in_place) {
    Completion found;
    found.span = name_at(text, caret);
    const std::string word = word_not_in(text);
    const auto try_with = [&](const std::string& put) {
        std::string probe(text.substr(0, found.span.begin));
        probe.append(put).append(text.substr(found.span.end));
        found.names = names_in_place(probe, word);
        return !found.names.empty();
    };
    const std::size_t behind = behind_blanks(text, found.span.end);
    const bool has_colon = behind < text.size() && text[behind] == ':';
    const char before = sign_before(text, found.span.begin);
    // Behind a colon, in quotes and behind a number nothing but a value can stand.
    const bool may_be_key = before == '\0' || before == '-' || before == '{' || before == ',';
    if (may_be_key && (has_colon ? try_with(word) : try_with(word + ": x"))) {
        found.keys = true;
        found.needs_colon = !has_colon;
        return found;
    }
    if (!has_colon) try_with(word);
    return found;
}

}  // namespace grainside::tools::edit
