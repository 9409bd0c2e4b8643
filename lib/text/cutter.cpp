#include "text/cutter.h"

#include <cstring>

#include "text/utf8.h"

namespace grainside::text {
namespace {

constexpr std::uint32_t kLongestUnit = 2;        // letters of a unit that a superscript may follow: m, cm, in, ft
constexpr std::uint32_t kLongestListNumber = 2;  // digits of "1." and "12)" before list items
constexpr std::uint32_t kDeepestHeading = 6;

constexpr char32_t kFirstSyllable = 0xAC00;
constexpr char32_t kFirstLead = 0x1100;
constexpr char32_t kFirstVowel = 0x1161;
constexpr char32_t kBeforeFirstTail = 0x11A7;
constexpr char32_t kLeads = 19;
constexpr char32_t kVowels = 21;
constexpr char32_t kTails = 28;
constexpr std::uint32_t kJamoBytes = 3;

bool is_tag(CharacterKind kind) {
    return kind >= CharacterKind::inline_tag && kind <= CharacterKind::heading_tag;
}

bool is_white(CharacterKind kind) {
    return kind == CharacterKind::space || kind == CharacterKind::newline || kind == CharacterKind::end_of_text ||
           is_tag(kind);
}

bool is_letter(CharacterKind kind) {
    return kind == CharacterKind::letter || kind == CharacterKind::jamo;
}

bool begins_number(CharacterKind kind) {
    return kind == CharacterKind::digit || kind == CharacterKind::fraction;
}

TokenKind token_of(CharacterKind kind) {
    switch (kind) {
        case CharacterKind::stop:
            return TokenKind::stop;
        case CharacterKind::question:
            return TokenKind::question;
        case CharacterKind::exclamation:
            return TokenKind::exclamation;
        case CharacterKind::semicolon:
            return TokenKind::semicolon;
        case CharacterKind::colon:
            return TokenKind::colon;
        case CharacterKind::slash:
            return TokenKind::slash;
        case CharacterKind::ampersand:
            return TokenKind::ampersand;
        case CharacterKind::percent:
            return TokenKind::percent;
        case CharacterKind::open:
            return TokenKind::open;
        case CharacterKind::close:
            return TokenKind::close;
        case CharacterKind::quote:
            return TokenKind::quote;
        case CharacterKind::pipe:
            return TokenKind::pipe;
        default:
            return TokenKind::comma;
    }
}

}  // namespace

Cutter::Cutter(CharacterReader& reader, Tokens& tokens, std::size_t folded_start)
    : reader_(reader), tokens_(tokens), folded_end_(folded_start) {
    tokens_.list.clear();
    if (tokens_.folded.size() < folded_start + kReadablePast) tokens_.folded.resize(folded_start + kReadablePast);
}

void Cutter::take_any(const Character& character) {
    const CharacterKind kind = character.kind;
    if (kind == CharacterKind::drop || kind == CharacterKind::mark) {
        if (kind == CharacterKind::mark && open_ != Open::nothing && held_ == CharacterKind::end_of_text) {
            end_ = character.end;
        }
        if (touch_ == character.start) touch_ = character.end;
        if (list_number_end_ == character.start) list_number_end_ = character.end;
        return;
    }
    if (held_ != CharacterKind::end_of_text && settle(character)) return;
    switch (kind) {
        case CharacterKind::letter:
        case CharacterKind::jamo:
            take_letter(character);
            return;
        case CharacterKind::digit:
            take_digit(character);
            return;
        case CharacterKind::space:
            cut(character.start);
            take_space();
            return;
        case CharacterKind::gap:
        case CharacterKind::end_of_text:
            cut(character.start);
            return;
        case CharacterKind::newline:
            cut(character.start);
            take_newline(character);
            return;
        default:
            if (is_tag(kind)) {
                take_tag(character);
            } else {
                take_mark(character);
            }
    }
}

void Cutter::finish() {
    const std::uint32_t size = reader_.size();
    take({CharacterKind::end_of_text, 0, nullptr, size, size});
}

void Cutter::take_letter(const Character& character) {
    if (open_ != Open::word) {
        cut(character.start);
        open(Open::word, character.start);
        begins_with_capital_ = (character.entry->flags & fold_flag::kCapital) != 0;
    }
    extend_word(character);
}

void Cutter::take_digit(const Character& character) {
    if (open_ == Open::nothing) open(Open::number, character.start);
    append_form(character);
    end_ = character.end;
}

void Cutter::take_mark(const Character& character) {
    const std::uint32_t start = character.start;
    const std::uint32_t end = character.end;
    switch (character.kind) {
        case CharacterKind::apostrophe:
            if (open_ == Open::word) {
                hold(character);
            } else {
                cut(start);
            }
            return;
        case CharacterKind::dot:
        case CharacterKind::comma:
            if (open_ != Open::number) cut(start);
            if (open_ == Open::number || character.kind == CharacterKind::dot) {
                hold(character);
            } else {
                emit(TokenKind::comma, start, end);
            }
            return;
        case CharacterKind::superscript:
            if (open_ == Open::word && length_ <= kLongestUnit) {
                take_digit(character);
            } else {
                cut(start);
            }
            return;
        case CharacterKind::fraction:
            cut(start);
            open(Open::number, start);
            append_form(character);
            end_ = end;
            close(end);
            return;
        case CharacterKind::hyphen:
        case CharacterKind::dash:
        case CharacterKind::tilde:
        case CharacterKind::asterisk:
        case CharacterKind::hash:
        case CharacterKind::slash:
            cut(start);
            hold(character);
            return;
        case CharacterKind::close:
            cut(start);
            if (ends_list_number(start)) {
                hold(character);
            } else {
                emit(TokenKind::close, start, end);
            }
            return;
        case CharacterKind::bullet:
            cut(start);
            emit(line_start_ ? TokenKind::bullet : TokenKind::pipe, start, end);
            return;
        case CharacterKind::pictograph:
            cut(start);
            if (line_start_) emit(TokenKind::bullet, start, end);
            return;
        case CharacterKind::middle_dot:
            cut(start);
            if (line_start_ || has_space()) emit(line_start_ ? TokenKind::bullet : TokenKind::pipe, start, end);
            return;
        case CharacterKind::plus:
            cut(start);
            emit(line_start_ ? TokenKind::bullet : TokenKind::plus, start, end);
            return;
        default:
            cut(start);
            emit(token_of(character.kind), start, end);
    }
}

void Cutter::take_tag(const Character& character) {
    const std::uint32_t start = character.start;
    const std::uint32_t end = character.end;
    cut(start);
    switch (character.kind) {
        case CharacterKind::break_tag:
            end_line(start, end, false);
            if (++breaks_ > 1 && !tokens_.list.empty()) tokens_.list.back().flags |= flag::kBlankLine;
            return;
        case CharacterKind::row_tag:
            end_line(start, end, false);
            return;
        case CharacterKind::block_tag:
            end_line(start, end, true);
            return;
        case CharacterKind::item_tag:
            // The line_end has no bytes of its own: the tag belongs to the bullet.
            end_line(start, start, false);
            emit(TokenKind::bullet, start, end);
            line_start_ = true;  // sellers put a typed bullet into the item as well
            return;
        case CharacterKind::heading_tag:
            end_line(start, start, true);
            emit(TokenKind::heading, start, end);
            return;
        case CharacterKind::cell_tag:
            emit(TokenKind::pipe, start, end);
            return;
        default:
            take_space();
    }
}

void Cutter::hold(const Character& character) {
    held_ = character.kind;
    held_touches_ = touch_ == character.start;
    held_start_ = character.start;
    held_end_ = character.end;
    held_count_ = 1;
}

// Decides what the held mark was, now that `next` follows. True if `next` only makes the run of marks longer.
bool Cutter::settle(const Character& next) {
    const CharacterKind kind = held_;
    const bool runs = kind == CharacterKind::dot || kind == CharacterKind::hyphen || kind == CharacterKind::asterisk ||
                      kind == CharacterKind::hash || kind == CharacterKind::slash;
    if (runs && next.kind == kind) {
        cut(held_start_);
        ++held_count_;
        held_end_ = next.end;
        return true;
    }
    held_ = CharacterKind::end_of_text;
    const bool joins_numbers =
        held_touches_ && begins_number(next.kind) && tokens_.list.back().kind == TokenKind::number;
    switch (kind) {
        case CharacterKind::dot:
            return settle_dot(next);
        case CharacterKind::comma:
            if (next.kind == CharacterKind::digit) {
                append_short({','}, 1);
            } else {
                cut(held_start_);
                emit_held(TokenKind::comma);
            }
            return false;
        case CharacterKind::apostrophe:
            if (is_letter(next.kind) || next.kind == CharacterKind::digit) {
                flags_ |= flag::kApostrophe;
            } else {
                cut(held_start_);
            }
            return false;
        case CharacterKind::close:
            if (next.kind == CharacterKind::space || is_tag(next.kind)) {
                turn_number_into_bullet();
            } else {
                emit_held(TokenKind::close);
            }
            return false;
        case CharacterKind::hyphen:
            settle_hyphens(next);
            return false;
        case CharacterKind::dash:
            if (joins_numbers) {
                join(true);
            } else {
                emit_held(line_start_ ? TokenKind::bullet : TokenKind::dash);
            }
            return false;
        case CharacterKind::tilde:
            join(joins_numbers);
            return false;
        case CharacterKind::asterisk:
            if (held_count_ == 1) emit_held(line_start_ ? TokenKind::bullet : TokenKind::asterisk);
            return false;
        case CharacterKind::slash:
            emit_held(held_count_ == 1 ? TokenKind::slash : TokenKind::pipe);
            return false;
        default:
            if (line_start_ && held_count_ <= kDeepestHeading && is_white(next.kind)) emit_held(TokenKind::heading);
            return false;
    }
}

bool Cutter::settle_dot(const Character& next) {
    if (open_ == Open::number) {
        if (next.kind == CharacterKind::digit) {
            append_short({'.'}, 1);
            return false;
        }
        cut(held_start_);
        if (ends_list_number(held_start_) && (next.kind == CharacterKind::space || is_tag(next.kind))) {
            turn_number_into_bullet();
            return false;
        }
    } else if (held_count_ == 1 && !held_touches_ && next.kind == CharacterKind::digit) {
        open(Open::number, held_start_);  // ".5"
        append_short({'0', '.'}, 2);
        return false;
    }
    const bool ends_sentence = is_white(next.kind) || next.kind == CharacterKind::close ||
                               next.kind == CharacterKind::quote || next.kind == CharacterKind::apostrophe;
    if (held_count_ > 1 || ends_sentence) emit_held(TokenKind::stop);
    return false;
}

void Cutter::settle_hyphens(const Character& next) {
    if (held_count_ == 1) {
        if (held_touches_) {
            join(is_letter(next.kind) || begins_number(next.kind));
        } else if (line_start_) {
            emit_held(TokenKind::bullet);
        } else if (has_space() && is_white(next.kind)) {
            emit_held(TokenKind::dash);
        }
        return;
    }
    // Two or more stand for a dash, but a line of them is a rule, and so are those between the pipes of a table.
    if (!line_start_ && tokens_.list.back().kind != TokenKind::pipe) emit_held(TokenKind::dash);
}

void Cutter::emit_held(TokenKind kind) {
    emit(kind, held_start_, held_end_);
}

void Cutter::turn_number_into_bullet() {
    Token& number = tokens_.list.back();
    number.kind = TokenKind::bullet;
    number.end = held_end_;
    number.folded_length = 0;
    touch_ = kNowhere;
}

void Cutter::open(Open kind, std::uint32_t start) {
    open_ = kind;
    start_ = start;
    length_ = 0;
    letters_ = 0;
    capitals_ = 0;
    begins_with_capital_ = false;
    has_latin_ = false;
    has_look_alike_ = false;
    flags_ = before_;
    before_ = 0;
}

void Cutter::close(std::uint32_t at) {
    if (open_ == Open::word) {
        if (begins_with_capital_) flags_ |= flag::kCapital;
        if (letters_ > 1 && letters_ == capitals_) flags_ |= flag::kAllCapitals;
        if (has_look_alike_ && has_latin_) {
            flags_ |= flag::kLookAlike;
            refold_as_latin(start_, end_);
        }
    } else if (line_start_ && length_ <= kLongestListNumber) {
        list_number_end_ = at;
    }
    tokens_.list.push_back({start_, end_, static_cast<std::uint32_t>(folded_end_), static_cast<std::uint16_t>(length_),
                            open_ == Open::word ? TokenKind::word : TokenKind::number, flags_});
    folded_end_ += length_;
    open_ = Open::nothing;
    touch_ = at;
    line_start_ = false;
}

void Cutter::refold_as_latin(std::uint32_t start, std::uint32_t end) {
    length_ = 0;
    for (std::uint32_t at = start; at < end;) {
        const Character character = reader_.read(at);
        at = character.end;
        const bool folds_away = character.kind == CharacterKind::drop || character.kind == CharacterKind::mark ||
                                character.kind == CharacterKind::apostrophe;
        if (folds_away) continue;
        if (character.entry->skeleton != 0) {
            append_short({static_cast<char>(character.entry->skeleton)}, 1);
        } else {
            append_form(character);
        }
    }
}

void Cutter::emit(TokenKind kind, std::uint32_t start, std::uint32_t end) {
    const auto flags = static_cast<std::uint8_t>(before_ & flag::kSpaceBefore);
    tokens_.list.push_back({start, end, static_cast<std::uint32_t>(folded_end_), 0, kind, flags});
    forget_space();
    line_start_ = false;
}

// Runs of line ends are one token; before the first token of a text there is no line to end.
void Cutter::end_line(std::uint32_t start, std::uint32_t end, bool blank) {
    if (!tokens_.list.empty()) {
        if (tokens_.list.back().kind != TokenKind::line_end) {
            emit(TokenKind::line_end, start, end);
            newlines_ = 0;
            breaks_ = 0;
        }
        Token& line_end = tokens_.list.back();
        line_end.end = end;
        if (blank) line_end.flags |= flag::kBlankLine;
    }
    forget_space();
    line_start_ = true;
}

void Cutter::take_newline(const Character& character) {
    end_line(character.start, character.end, false);
    const bool after_return = character.code == '\n' && after_return_ == character.start;
    after_return_ = character.code == '\r' ? character.end : kNowhere;
    if (after_return || tokens_.list.empty()) return;
    if (++newlines_ > 1) tokens_.list.back().flags |= flag::kBlankLine;
}

// Composes a vowel or tail with what the word ends in (Unicode standard, 3.12, Hangul syllable composition).
void Cutter::append_jamo(const Character& character) {
    const FoldEntry& entry = *character.entry;
    char32_t code = character.code;
    if (entry.length != 0) {
        code = decode_utf8({reinterpret_cast<const char*>(entry.bytes), entry.length}, 0).code;
    }
    if (length_ >= kJamoBytes) {
        char* const last_bytes = tokens_.folded.data() + folded_end_ + length_ - kJamoBytes;
        const char32_t last = decode_utf8({last_bytes, kJamoBytes}, 0).code;
        char32_t composed = 0;
        if (code < kBeforeFirstTail) {
            if (last >= kFirstLead && last < kFirstLead + kLeads) {
                composed = kFirstSyllable + ((last - kFirstLead) * kVowels + (code - kFirstVowel)) * kTails;
            }
        } else if (last >= kFirstSyllable && last < kFirstSyllable + kLeads * kVowels * kTails &&
                   (last - kFirstSyllable) % kTails == 0) {
            composed = last + (code - kBeforeFirstTail);
        }
        if (composed != 0) {
            encode_utf8(composed, last_bytes);
            return;
        }
    }
    FourBytes form{};
    const std::uint32_t length = encode_utf8(code, form.data());
    append_short(form, length);
}

void Cutter::append_long(std::string_view form) {
    if (char* const place = place_for(static_cast<std::uint32_t>(form.size()))) {
        std::memcpy(place, form.data(), form.size());
    }
}

void Cutter::grow(std::size_t size) {
    tokens_.folded.resize(2 * size);
}

}  // namespace grainside::text
