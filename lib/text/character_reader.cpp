#include "text/character_reader.h"

#include "document/character_reference.h"

namespace grainside::text {

Character CharacterReader::read_markup(std::uint32_t at) {
    if (text_[at] == '<') {
        const Tag tag = tags_.scan(at);
        if (tag.kind == CharacterKind::gap) return make('<', at, at + 1);
        return {tag.kind, 0, nullptr, at, tag.end};
    }
    const document::CharacterReference reference = document::read_character_reference(text_, at);
    if (reference.length == 0) return make('&', at, at + 1);
    return make(reference.code, at, at + reference.length);
}

}  // namespace grainside::text
