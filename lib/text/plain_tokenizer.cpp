#include "text/character_reader.h"
#include "text/cutter.h"
#include "text/tokenizer.h"

namespace grainside::text {

void tokenize_plainly(std::string_view text, Tokens& tokens) {
    CharacterReader reader(text);
    Cutter cutter(reader, tokens, 0);
    for (std::uint32_t at = 0; at < reader.size();) {
        const Character character = reader.read(at);
        cutter.take(character);
        at = character.end;
    }
    cutter.finish();
}

}  // namespace grainside::text
