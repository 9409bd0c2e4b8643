#include "text/character_reader.h"

#include "text/character_reference.h"
#include "text/utf8.h"

namespace grainside::text {

Character CharacterReader::read_carefully(std::uint32_t at) {
    if (text_[at] == '<') {
        const Tag tag = tags_.scan(at);
        if (tag.kind == CharacterKind::gap) return make('<', at, at + 1);
        return {tag.kind, 0, nullptr, at, tag.end};
    }
    if (text_[at] == '&') {
        const CharacterReference reference = read_character_reference(text_, at);
        if (reference.length == 0) return make('&', at, at + 1);
        return make(reference.code, at, at + reference.length);
    }
    const Decoded decoded = decode_utf8(text_, at);
    if (decoded.length == 0) return make(0, at, at + 1);
    return make(decoded.code, at, at + decoded.length);
}

}  // namespace grainside::text
