#include "claims/title_lines.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

bool ends_line(TokenKind kind) {
    return kind == TokenKind::line_end || kind == TokenKind::pipe || kind == TokenKind::stop;
}

bool says_something(TokenKind kind) {
    return kind == TokenKind::word || kind == TokenKind::number;
}

}  // namespace

void add_labelled_titles(const vocabulary::Vocabulary& vocabulary, const text::Tokens& tokens,
                         std::span<const vocabulary::Hit> hits, std::size_t field, std::vector<TitleLine>& titles) {
    const auto count = static_cast<std::uint32_t>(tokens.list.size());
    std::uint32_t done = 0;
    for (const vocabulary::Hit& hit : hits) {
        if (hit.first < done || !vocabulary.terms.roles(hit.end).has(Role::title_label) || hit.last >= count) continue;
        if (hit.first > 0 && says_something(tokens.list[hit.first - 1].kind)) continue;
        const TokenKind mark = tokens.list[hit.last].kind;
        const bool below =
            mark == TokenKind::line_end && hit.first > 0 && tokens.list[hit.first - 1].kind == TokenKind::heading;
        if (!below && mark != TokenKind::colon && mark != TokenKind::dash && mark != TokenKind::close &&
            mark != TokenKind::pipe) {
            continue;
        }
        TitleLine line{field, hit.last + 1, hit.last + 1};
        while (line.first < count && !says_something(tokens.list[line.first].kind)) ++line.first;
        line.last = line.first;
        while (line.last < count && !ends_line(tokens.list[line.last].kind)) ++line.last;
        titles.push_back(line);
        done = line.last;
    }
}

}  // namespace grainside::claims
