#include <gtest/gtest.h>
#include <simdjson.h>

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "listing/json_scanner.h"
#include "listing/utf8_check.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

// Every text over a few tokens must be JSON for the scanner exactly if it is for simdjson's document parser, which is
// not used in the library, and the reader must report a fault exactly in the others.
class Grammar {
public:
    void all_texts(std::size_t tokens) {
        if (tokens == 0) {
            check();
            return;
        }
        constexpr std::array<std::string_view, 13> kTokens = {"{", "}",   "[",    "]",       ":", ",",       "\"a\"",
                                                              "1", "-0.", "true", "\"\\n\"", " ", "\"name\""};
        for (const std::string_view token : kTokens) {
            const std::size_t size = text_.size();
            text_ += token;
            all_texts(tokens - 1);
            text_.resize(size);
        }
    }
    void wrapped(std::string_view before, std::string_view after, std::size_t tokens) {
        after_ = after;
        text_ = before;
        all_texts(tokens);
    }
    std::size_t texts = 0;
    std::size_t json_texts = 0;
    std::size_t differences = 0;

private:
    void check() {
        const std::string text = text_ + std::string(after_);
        simdjson::dom::element element;
        const bool expected = parser_.parse(text).get(element) == simdjson::SUCCESS;
        const bool scanned = scanner_.is_document(text);
        const bool read = read_memory(text, InputFormat::json_lines).find("json-syntax") == std::string::npos;
        ++texts;
        if (expected) ++json_texts;
        const bool is_blank = text.find_first_not_of(' ') == std::string::npos;
        if (scanned != expected || (!is_blank && read != expected)) {
            ++differences;
            ADD_FAILURE() << text << " is JSON: simdjson " << expected << ", scanner " << scanned << ", reader "
                          << read;
        }
    }

    std::string text_;
    std::string_view after_;
    simdjson::dom::parser parser_;
    listing::JsonScanner scanner_;
};

TEST(GrammarTest, AgreesWithADocumentParser) {
    Grammar grammar;
    for (std::size_t tokens = 1; tokens <= 3; ++tokens) grammar.wrapped("", "", tokens);
    for (std::size_t tokens = 1; tokens <= 3; ++tokens) {
        grammar.wrapped("{\"x\":", "}", tokens);
        grammar.wrapped("{\"name\":\"n\",\"additionalProperty\":[", "]}", tokens);
        grammar.wrapped("{\"description\":{", "}}", tokens);
    }
    EXPECT_EQ(grammar.texts, 4U * (13 + 13 * 13 + 13 * 13 * 13));
    EXPECT_GT(grammar.json_texts, 100U);
    EXPECT_EQ(grammar.differences, 0U);
}

struct NumberRow {
    std::string_view text;
    bool is_number;
};
// RFC 8259 section 6.
constexpr NumberRow kNumbers[] = {
    {"0", true},     {"-0", true},       {"10", true},     {"1.0", true},  {"1e5", true},
    {"1E+05", true}, {"-1.25e-9", true}, {"01", false},    {"-", false},   {"+1", false},
    {".5", false},   {"1.", false},      {"1e", false},    {"1e+", false}, {"1a", false},
    {"0x1", false},  {"--1", false},     {"1.2.3", false}, {"NaN", false}, {"1_0", false},
};

TEST(GrammarTest, Numbers) {
    listing::JsonScanner scanner;
    for (const NumberRow& row : kNumbers) {
        EXPECT_EQ(scanner.is_document(row.text), row.is_number) << row.text;
        const std::string record = "{\"name\":\"n\",\"x\":" + std::string(row.text) + "}";
        EXPECT_EQ(read_memory(record, InputFormat::json_lines) == "1@1 f:1 name='n'", row.is_number) << row.text;
    }
}

// All texts of up to three bytes out of those at which Table 3-7 of the Unicode Standard changes, and of four bytes
// behind the leads of four-byte sequences: our check says invalid exactly where simdjson's does.
TEST(Utf8Test, AgreesWithSimdjson) {
    constexpr std::array<unsigned char, 24> kBytes = {0x00, 0x41, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0,
                                                      0xBF, 0xC0, 0xC1, 0xC2, 0xDF, 0xE0, 0xE1, 0xEC,
                                                      0xED, 0xEE, 0xEF, 0xF0, 0xF3, 0xF4, 0xF5, 0xFF};
    std::size_t valid = 0;
    std::size_t differences = 0;
    const auto check = [&](const std::string& text) {
        const bool expected = simdjson::validate_utf8(text);
        if (expected) ++valid;
        if ((listing::find_invalid_utf8(text, 0).length == 0) != expected) ++differences;
    };
    for (const unsigned char a : kBytes) {
        for (const unsigned char b : kBytes) {
            for (const unsigned char c : kBytes) {
                std::string text{static_cast<char>(a), static_cast<char>(b), static_cast<char>(c)};
                check(text);
                check(text.substr(0, 2));
                for (const unsigned char d : kBytes) check(text + static_cast<char>(d));
            }
        }
    }
    EXPECT_GT(valid, 100U);
    EXPECT_EQ(differences, 0U);
}

// The example of the Unicode Standard 15.0, table 3-8: 61 F1 80 80 E1 80 C2 62 80 63 80 BF 64 has the ill-formed parts
// F1 80 80, E1 80, C2, 80, 80, BF.
TEST(Utf8Test, CutsAtMaximalSubparts) {
    const std::string text = "\x61\xF1\x80\x80\xE1\x80\xC2\x62\x80\x63\x80\xBF\x64";
    std::string found;
    for (auto bad = listing::find_invalid_utf8(text, 0); bad.length != 0;
         bad = listing::find_invalid_utf8(text, bad.offset + bad.length)) {
        found += std::to_string(bad.offset) + "+" + std::to_string(bad.length) + " ";
    }
    EXPECT_EQ(found, "1+3 4+2 6+1 8+1 10+1 11+1 ");
}

}  // namespace
}  // namespace grainside::testing_listing
