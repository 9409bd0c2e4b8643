#include "text/tokenizer.h"

#include <algorithm>
#include <bit>
#include <cstring>

#include "text/byte_masks.h"
#include "text/character_reader.h"
#include "text/cutter.h"

namespace grainside::text {
namespace {

// Bits first to last - 1. REQUIRES: first < last <= 64.
std::uint64_t bits_between(std::uint32_t first, std::uint32_t last) {
    return (~std::uint64_t{0} >> (kBlock - (last - first))) << first;
}

bool is_small_or_capital(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// ASCII words, and the marks that are most frequent in prose, are found by masks, 64 bytes at a time, wherever the
// cutter is between two tokens; everything else goes to it character by character until it is so again. The lower-case
// copy of the whole text lies at the start of Tokens::folded, so that such words have their folded form without
// copying.
class BlockTokenizer {
public:
    BlockTokenizer(std::string_view text, Tokens& tokens)
        : text_(text),
          size_(static_cast<std::uint32_t>(text.size())),
          tokens_(tokens),
          reader_(text),
          cutter_(reader_, tokens, text.size() + kBlock) {}

    void run() {
        std::uint32_t at = 0;
        while (at < size_) at = take_block(at);
        cutter_.finish();
    }

private:
    // Takes the text from `start` to about one block on and returns where to go on. The cutter is clean before and
    // after, unless the text has ended.
    std::uint32_t take_block(std::uint32_t start) {
        const ByteMasks masks = classify_at(start);
        const std::uint32_t block_end = std::min(start + static_cast<std::uint32_t>(kBlock), size_);
        // Where a word begins, or a byte stands that is neither of a word nor a space.
        std::uint64_t events = (masks.word & ~(masks.word << 1)) | ~(masks.word | masks.space);
        const std::uint64_t letters = masks.word & ~masks.digit;
        std::uint32_t at = start;  // all before is taken
        while (events != 0) {
            const auto bit = static_cast<std::uint32_t>(std::countr_zero(events));
            const std::uint32_t event = start + bit;
            if (event >= block_end) break;
            if (event > at) cutter_.take_space();
            if ((letters >> bit & 1) != 0) {
                const std::uint32_t length = static_cast<std::uint32_t>(std::countr_one(masks.word >> bit));
                const std::uint32_t past = bit + length;
                const std::uint32_t end = start + past;
                if (past == kBlock && end < size_) {
                    if (bit != 0) return event;
                    return take_until_clean(event);  // longer than a block
                }
                if (past == kBlock || (masks.continues >> past & 1) == 0) {
                    cutter_.take_word(event, end, event, letter_flags(masks, bit, past));
                    at = end;
                    events &= events - 1;
                    continue;
                }
                at = take_until_clean(event);
            } else {
                at = take_mark(event);
            }
            if (at >= block_end) return at;
            events &= ~std::uint64_t{0} << (at - start);
        }
        if (at < block_end) cutter_.take_space();
        return block_end;
    }

    static std::uint8_t letter_flags(const ByteMasks& masks, std::uint32_t first, std::uint32_t past) {
        if ((masks.capital >> first & 1) == 0) return 0;
        const std::uint64_t word = bits_between(first, past);
        const std::uint64_t letters = word & ~masks.digit;
        const bool all = (letters & ~masks.capital) == 0 && (letters & (letters - 1)) != 0;
        return all ? flag::kCapital | flag::kAllCapitals : flag::kCapital;
    }

    // Marks whose meaning the next byte settles are taken here, the others by the cutter.
    std::uint32_t take_mark(std::uint32_t at) {
        if (at + 1 < size_) {
            const char next = text_[at + 1];
            switch (text_[at]) {
                case ',':
                    cutter_.take_comma(at);
                    return at + 1;
                case '.':
                    if (next != ' ') break;
                    cutter_.take_stop_and_space(at);
                    return at + 2;
                case '-':
                    if (!is_small_or_capital(next) || !cutter_.touches(at)) break;
                    cutter_.take_inner_hyphen();
                    return at + 1;
                default:
                    break;
            }
        }
        return take_until_clean(at);
    }

    std::uint32_t take_until_clean(std::uint32_t at) {
        do {
            const Character character = reader_.read(at);
            cutter_.take(character);
            at = character.end;
        } while (at < size_ && !cutter_.is_clean());
        return at;
    }

    ByteMasks classify_at(std::uint32_t start) {
        char* const lower = tokens_.folded.data() + start;
        if (size_ - start >= kBlock) return classify(text_.data() + start, lower);
        const std::uint32_t left = size_ - start;
        if (size_ >= kBlock) {
            // The last whole block of the text, moved down to where the caller looks; past the end no bit is set.
            return classify(text_.data() + size_ - kBlock, lower - (kBlock - left)).shifted_down(kBlock - left);
        }
        char padded[kBlock] = {};
        std::memcpy(padded, text_.data() + start, left);
        return classify(padded, lower);
    }

    std::string_view text_;
    std::uint32_t size_;
    Tokens& tokens_;
    CharacterReader reader_;
    Cutter cutter_;
};

}  // namespace

void tokenize(std::string_view text, Tokens& tokens) {
    BlockTokenizer(text, tokens).run();
}

}  // namespace grainside::text
