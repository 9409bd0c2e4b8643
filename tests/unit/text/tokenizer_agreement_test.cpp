// The two tokenizers against one another, and the two ways of classifying 64 bytes.
#include <gtest/gtest.h>

#include <cstdio>
#include <iterator>
#include <random>
#include <string>
#include <string_view>

#include "text/byte_masks.h"
#include "text/tokenizer.h"
#include "token_checks.h"
#include "token_dump.h"

namespace grainside::text {
namespace {

class Comparison {
public:
    void compare(std::string_view text) {
        ++texts_;
        tokenize(text, fast_);
        tokenize_plainly(text, plain_);
        const std::string fault = first_fault(text, fast_);
        if (same_tokens(fast_, plain_) && fault.empty()) return;
        if (++differences_ > 5) return;
        ADD_FAILURE() << "text:  " << testing::PrintToString(std::string(text)) << "\nfast:  " << dump_tokens(fast_)
                      << "\nplain: " << dump_tokens(plain_) << "\n"
                      << fault;
    }

    ~Comparison() { std::printf("%zu texts, %zu differences\n", texts_, differences_); }

    Comparison() = default;
    Comparison(const Comparison&) = delete;
    Comparison& operator=(const Comparison&) = delete;

private:
    Tokens fast_;
    Tokens plain_;
    std::size_t texts_ = 0;
    std::size_t differences_ = 0;
};

// Every text of up to `longest` bytes of the alphabet, each behind `before`.
void compare_all(std::string_view alphabet, std::size_t longest, std::string_view before) {
    Comparison comparison;
    for (std::size_t length = 0; length <= longest; ++length) {
        std::string text = std::string(before) + std::string(length, alphabet[0]);
        std::vector<std::size_t> digits(length, 0);
        for (bool more = true; more;) {
            comparison.compare(text);
            more = false;
            for (std::size_t i = 0; i < length && !more; ++i) {
                digits[i] = (digits[i] + 1) % alphabet.size();
                text[before.size() + i] = alphabet[digits[i]];
                more = digits[i] != 0;
            }
        }
    }
}

constexpr std::string_view kAlphabet = "aA1.,-<>&; \n'*\xC3\xA9\xC2\xAD";

TEST(TokenizerAgreementTest, AllShortTexts) {
    compare_all(kAlphabet, 4, "");
}

TEST(TokenizerAgreementTest, AllTextsOfFiveBytesOfTheMostTelling) {
    compare_all("aA1.,- &\n'\xC3\xA9", 5, "");
}

// The same across the end of the first block.
TEST(TokenizerAgreementTest, AllShortTextsAcrossABlockEnd) {
    for (std::size_t before = 60; before <= 64; ++before) {
        compare_all("aA1.,- \xC3\xA9", 4, "x " + std::string(before - 2, 'b'));
        compare_all("aA1.,- \xC3\xA9", 4, std::string(before, ' '));
    }
}

constexpr std::string_view kPieces[] = {
    "leather",    "Full",
    "PU",         "a",
    "I",          "1",
    "23",         "1.4",
    "mm",         " ",
    " ",          " ",
    " ",          " ",
    "\n",         "\r\n",
    "\t",         ".",
    ". ",         "...",
    ",",          ", ",
    "-",          "--",
    "'",          "\u2019",
    "\"",         "(",
    ")",          "/",
    "&",          "&amp;",
    "&shy;",      "&eacute;",
    "&#45;",      "&#x",
    "<",          "<b>",
    "</b>",       "<br>",
    "<p>",        "<li>",
    "<td>",       "<h2>",
    "<!--",       "-->",
    "<script>",   "</script>",
    "<a href='",  "=\"",
    ">",          "*",
    "**",         "#",
    "# ",         "|",
    "_",          "%",
    "+",          "\u00AD",
    "\u200B",     "\u0301",
    "\u00E9",     "\u0430",
    "\u03BF",     "\u2013",
    "\u2014",     "\u2011",
    "\u00B2",     "\u00BD",
    "\u2022",     "\u2026",
    "\u3002",     "\u76AE",
    "\u1100",     "\u1161",
    "\uFDFA",     "\xC3",
    "\xFF",       "\xED\xA0",
    "\U0001F45C", "longwordlongwordlongwordlongwordlongwordlongwordlongwordlongwordlong"};

TEST(TokenizerAgreementTest, RandomTextsOfTellingPieces) {
    Comparison comparison;
    std::mt19937 random(20240611);
    std::uniform_int_distribution<std::size_t> piece(0, std::size(kPieces) - 1);
    std::uniform_int_distribution<std::size_t> count(1, 60);
    for (int i = 0; i < 60000; ++i) {
        std::string text;
        for (std::size_t left = count(random); left > 0; --left) text += kPieces[piece(random)];
        comparison.compare(text);
    }
}

TEST(TokenizerAgreementTest, RandomBytes) {
    Comparison comparison;
    std::mt19937 random(7);
    std::uniform_int_distribution<int> byte(0, 255);
    std::uniform_int_distribution<std::size_t> length(0, 300);
    for (int i = 0; i < 10000; ++i) {
        std::string text(length(random), ' ');
        for (char& c : text) c = static_cast<char>(byte(random));
        comparison.compare(text);
    }
}

TEST(TokenizerAgreementTest, MasksAgreeWithThePlainOnes) {
    std::mt19937 random(11);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int i = 0; i < 2000; ++i) {
        char bytes[kBlock];
        for (std::size_t k = 0; k < kBlock; ++k) {
            bytes[k] = static_cast<char>(i < 4 ? i * static_cast<int>(kBlock) + static_cast<int>(k) : byte(random));
        }
        char lower[kBlock];
        char plain_lower[kBlock];
        const ByteMasks masks = classify(bytes, lower);
        const ByteMasks plain = classify_plainly(bytes, plain_lower);
        EXPECT_EQ(masks.word, plain.word);
        EXPECT_EQ(masks.digit, plain.digit);
        EXPECT_EQ(masks.capital, plain.capital);
        EXPECT_EQ(masks.space, plain.space);
        EXPECT_EQ(masks.continues, plain.continues);
        EXPECT_EQ(std::string_view(lower, kBlock), std::string_view(plain_lower, kBlock));
    }
}

}  // namespace
}  // namespace grainside::text
