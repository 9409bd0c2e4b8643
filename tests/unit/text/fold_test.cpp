// The fold against utf8proc, whose mapping functions are asked here character by character.
#include <gtest/gtest.h>
#include <utf8proc.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <string>
#include <string_view>

#include "text/tokenizer.h"
#include "text/utf8.h"
#include "token_dump.h"

namespace grainside::text {
namespace {

std::string mapped(const std::string& text, int options) {
    utf8proc_uint8_t* out = nullptr;
    const auto length =
        utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()), static_cast<utf8proc_ssize_t>(text.size()),
                     &out, static_cast<utf8proc_option_t>(UTF8PROC_STABLE | options));
    std::string result;
    if (length > 0) result.assign(reinterpret_cast<const char*>(out), static_cast<std::size_t>(length));
    std::free(out);
    return result;
}

// NFKC, full case folding, marks and ignorable characters left out.
std::string outside_fold(const std::string& text) {
    return mapped(text, UTF8PROC_COMPAT | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD | UTF8PROC_IGNORE | UTF8PROC_STRIPMARK);
}

std::string utf8(char32_t code) {
    char buffer[4];
    return {buffer, encode_utf8(code, buffer)};
}

std::string folded(std::string_view text) {
    Tokens tokens;
    tokenize(text, tokens);
    std::string out;
    for (const Token& token : tokens.list) {
        if (!out.empty()) out += ' ';
        out += tokens.folded_text(token);
    }
    return out;
}

bool is_letter(char32_t code) {
    const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(code));
    return category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO;
}

bool is_kept(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const Decoded decoded = decode_utf8(text, at);
        const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(decoded.code));
        if (!is_letter(decoded.code) && (category < UTF8PROC_CATEGORY_ND || category > UTF8PROC_CATEGORY_NO))
            return false;
        at += decoded.length;
    }
    return true;
}

// Letters by category that the fold takes for something else, on purpose.
constexpr char32_t kApostrophes[] = {0x02B9, 0x02BB, 0x02BC, 0x02BD, 0x02C8, 0x0374};

// Letters whose fold by utf8proc holds something that is no letter: a middle dot (U+013F, U+0140), an apostrophe
// (U+0149) or a space (U+037A, Arabic ligatures of several words and isolated marks). The fold leaves out what is no
// letter and stays one word.
constexpr char32_t kMixed[] = {0x013F, 0x0140, 0x0149, 0x037A, 0xFC5E, 0xFC5F, 0xFC60, 0xFC61, 0xFC62, 0xFC63,
                               0xFDFA, 0xFDFB, 0xFE70, 0xFE72, 0xFE74, 0xFE76, 0xFE78, 0xFE7A, 0xFE7C, 0xFE7E};

// Greek vowels with an iota below: a mark like any other to the fold, so that the composed vowel folds as the
// decomposed one does; full case folding makes a letter of the iota.
bool has_iota_below(char32_t code) {
    return mapped(utf8(code), UTF8PROC_DECOMPOSE).find(utf8(0x0345)) != std::string::npos;
}

bool listed(const char32_t* first, const char32_t* last, char32_t code) {
    return std::find(first, last, code) != last;
}

TEST(FoldTest, LettersFoldAsUtf8procFoldsThem) {
    std::size_t letters = 0;
    std::size_t exceptions = 0;
    for (char32_t code = 0; code <= 0x10FFFF; ++code) {
        if ((code >= 0xD800 && code < 0xE000) || !is_letter(code)) continue;
        ++letters;
        const std::string want = outside_fold(utf8(code));
        const bool apostrophe = listed(std::begin(kApostrophes), std::end(kApostrophes), code);
        const bool mixed = listed(std::begin(kMixed), std::end(kMixed), code);
        if (apostrophe || mixed || has_iota_below(code)) {
            ++exceptions;
            EXPECT_NE(folded(utf8(code)), want) << std::hex << static_cast<unsigned>(code) << " is no exception";
            continue;
        }
        EXPECT_TRUE(is_kept(want)) << std::hex << static_cast<unsigned>(code);
        EXPECT_EQ(folded(utf8(code)), want) << std::hex << static_cast<unsigned>(code);
    }
    std::printf("%zu letters of Unicode %s, %zu deliberate exceptions\n", letters, utf8proc_unicode_version(),
                exceptions);
    EXPECT_GT(letters, 130000U);
}

TEST(FoldTest, ComposedAndDecomposedTextFoldAlike) {
    std::size_t texts = 0;
    for (char32_t code = 0x80; code <= 0xFFFF; ++code) {
        if ((code >= 0xD800 && code < 0xE000) || !is_letter(code)) continue;
        const std::string composed = std::string("x").append(utf8(code)).append("y");
        const std::string decomposed = mapped(composed, UTF8PROC_DECOMPOSE);
        if (decomposed == composed) continue;
        ++texts;
        EXPECT_EQ(folded(decomposed), folded(composed)) << std::hex << static_cast<unsigned>(code);
    }
    std::printf("%zu letters decomposed\n", texts);
    EXPECT_GT(texts, 12000U);
}

// Folding a folded word changes nothing, so that vocabulary and text may both pass through it.
TEST(FoldTest, FoldingAgainChangesNothing) {
    for (char32_t code = 0; code <= 0x1FFFF; ++code) {
        if ((code >= 0xD800 && code < 0xE000) || !is_letter(code)) continue;
        const std::string once = folded(utf8(code));
        EXPECT_EQ(folded(once), once) << std::hex << static_cast<unsigned>(code);
    }
}

// Combining marks and ignorable characters leave no trace, alone or in a word.
TEST(FoldTest, MarksAndFormatCharactersFoldAway) {
    for (char32_t code = 0; code <= 0xFFFF; ++code) {
        const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(code));
        const bool folds_away = category == UTF8PROC_CATEGORY_MN || category == UTF8PROC_CATEGORY_MC ||
                                category == UTF8PROC_CATEGORY_ME || category == UTF8PROC_CATEGORY_CF;
        if (!folds_away) continue;
        EXPECT_EQ(folded(std::string("lea").append(utf8(code)).append("ther")), "leather")
            << std::hex << static_cast<unsigned>(code);
    }
}

}  // namespace
}  // namespace grainside::text
