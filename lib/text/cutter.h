// Cuts a stream of characters into tokens. Both tokenizers feed one; they differ in how they find the characters.
//
// What a mark is may depend on the character after it ("e.g." and "end."), so that one mark, or a run of the same mark,
// is held back until the next character settles it. Nothing is ever read twice but a word with look-alike letters.
#ifndef GRAINSIDE_TEXT_CUTTER_H
#define GRAINSIDE_TEXT_CUTTER_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string_view>

#include "text/character.h"
#include "text/character_reader.h"
#include "text/token.h"
#include "text/utf8.h"

namespace grainside::text {

class Cutter {
public:
    // Clears `tokens` and writes folded forms from `folded_start` on; what lies before belongs to the caller.
    Cutter(CharacterReader& reader, Tokens& tokens, std::size_t folded_start);

    // Characters in order, without gaps between them.
    void take(const Character& character) {
        if (character.kind == CharacterKind::letter && open_ == Open::word && held_ == CharacterKind::end_of_text) {
            extend_word(character);
        } else {
            take_any(character);
        }
    }
    void finish();

    // Between tokens: no word is open and no mark is held.
    bool is_clean() const { return open_ == Open::nothing && held_ == CharacterKind::end_of_text; }

    // A whole ASCII word whose folded form the caller has already put at `folded_offset`, in place of taking its
    // characters one by one. `flags` are those of its letters. REQUIRES: is_clean(); the next character is neither a
    // letter nor a digit nor dropped nor an apostrophe.
    void take_word(std::uint32_t start, std::uint32_t end, std::uint32_t folded_offset, std::uint8_t flags) {
        tokens_.list.push_back({start, end, folded_offset, static_cast<std::uint16_t>(end - start), TokenKind::word,
                                static_cast<std::uint8_t>(flags | before_)});
        before_ = 0;
        line_start_ = false;
        touch_ = end;
    }

    // White space within a line, in place of taking it. REQUIRES: is_clean().
    void take_space() { before_ |= flag::kSpaceBefore; }

    // A full stop before a space, in place of taking the two. REQUIRES: is_clean(); does not follow a number.
    void take_stop_and_space(std::uint32_t at) {
        emit(TokenKind::stop, at, at + 1);
        take_space();
    }

    // A comma that does not follow a number, in place of taking it. REQUIRES: is_clean().
    void take_comma(std::uint32_t at) { emit(TokenKind::comma, at, at + 1); }

    // True if a word or number ends at `at`.
    bool touches(std::uint32_t at) const { return touch_ == at; }

    // A hyphen between the word that ends at `at` and a letter, in place of taking it. REQUIRES: is_clean();
    // touches(at); the letter is taken next.
    void take_inner_hyphen() { join(true); }

private:
    enum class Open : std::uint8_t { nothing, word, number };
    static constexpr std::uint32_t kLongestForm = 0xFFFF;
    static constexpr std::size_t kReadablePast = 16;            // as Tokens::folded promises
    using FourBytes = std::array<char, FoldEntry::kShortForm>;  // copied whole, which is quicker than by length
    static constexpr std::uint32_t kNowhere = std::numeric_limits<std::uint32_t>::max();

    void take_any(const Character& character);
    void take_letter(const Character& character);
    void take_digit(const Character& character);
    void take_mark(const Character& character);
    void take_tag(const Character& character);

    bool has_space() const { return (before_ & flag::kSpaceBefore) != 0; }
    void forget_space() { before_ &= flag::kHyphenBefore; }
    void join(bool joins) {
        before_ = static_cast<std::uint8_t>((before_ & flag::kSpaceBefore) | (joins ? flag::kHyphenBefore : 0));
    }

    void hold(const Character& character);
    bool settle(const Character& next);
    bool settle_dot(const Character& next);
    void settle_hyphens(const Character& next);
    void emit_held(TokenKind kind);
    void turn_number_into_bullet();

    void open(Open kind, std::uint32_t start);
    void close(std::uint32_t at);
    void cut(std::uint32_t at) {
        if (open_ != Open::nothing) close(at);
    }
    void refold_as_latin(std::uint32_t start, std::uint32_t end);

    void emit(TokenKind kind, std::uint32_t start, std::uint32_t end);
    void end_line(std::uint32_t start, std::uint32_t end, bool blank);
    void take_newline(const Character& character);

    void extend_word(const Character& character) {
        const FoldEntry& entry = *character.entry;
        ++letters_;
        if ((entry.flags & fold_flag::kCapital) != 0) ++capitals_;
        if ((entry.flags & fold_flag::kLatin) != 0) has_latin_ = true;
        if (entry.skeleton != 0) has_look_alike_ = true;
        append_form(character);
        end_ = character.end;
    }

    void append_form(const Character& character) {
        const FoldEntry& entry = *character.entry;
        FourBytes form{};
        if (character.kind == CharacterKind::jamo) {
            append_jamo(character);
        } else if (entry.length == 0) {
            const std::uint32_t length = encode_utf8(character.code, form.data());
            append_short(form, length);
        } else if (entry.length <= FoldEntry::kShortForm) {
            std::memcpy(form.data(), entry.bytes, form.size());
            append_short(form, entry.length);
        } else {
            append_long(long_form(entry));
        }
    }
    void append_jamo(const Character& character);
    void append_short(FourBytes form, std::uint32_t length) {
        if (char* const place = place_for(length)) std::memcpy(place, form.data(), form.size());
    }
    void append_long(std::string_view form);

    // Makes the folded form longer and returns where the new bytes belong; null if it would become longer than is kept.
    char* place_for(std::uint32_t length) {
        if (length_ + length > kLongestForm) return nullptr;
        const std::size_t at = folded_end_ + length_;
        if (at + length + kReadablePast > tokens_.folded.size()) grow(at + length + kReadablePast);
        length_ += length;
        return tokens_.folded.data() + at;
    }
    void grow(std::size_t size);
    bool ends_list_number(std::uint32_t at) const { return list_number_end_ == at && touch_ == at; }

    CharacterReader& reader_;
    Tokens& tokens_;
    std::size_t folded_end_;  // where the open word's folded form begins, or the next one's will

    // The open word or number.
    std::uint32_t start_ = 0;
    std::uint32_t end_ = 0;
    std::uint32_t length_ = 0;  // folded bytes
    std::uint32_t letters_ = 0;
    std::uint32_t capitals_ = 0;
    Open open_ = Open::nothing;
    std::uint8_t flags_ = 0;
    bool begins_with_capital_ = false;
    bool has_latin_ = false;
    bool has_look_alike_ = false;

    // The mark held back; end_of_text = none.
    CharacterKind held_ = CharacterKind::end_of_text;
    bool held_touches_ = false;  // a word or number ends where it begins
    std::uint32_t held_start_ = 0;
    std::uint32_t held_end_ = 0;
    std::uint32_t held_count_ = 0;

    // What lies since the last token.
    std::uint8_t before_ =
        0;  // kSpaceBefore, and kHyphenBefore where a hyphen joins the next word or number to the last
    bool line_start_ = true;                    // no token yet in this line
    std::uint32_t touch_ = kNowhere;            // where the last word or number ends, dropped characters included
    std::uint32_t list_number_end_ = kNowhere;  // the same for a number that may number a list item

    // Of the line_end token that comes last in the list.
    std::uint32_t newlines_ = 0;
    std::uint32_t breaks_ = 0;
    std::uint32_t after_return_ = kNowhere;
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_CUTTER_H
