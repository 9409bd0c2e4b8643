// What is no text at all: told as one error, whatever format it was taken for.
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing_reader.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

using namespace std::string_view_literals;

class BinaryFileTest : public testing::TestWithParam<Row> {};

// `input` is followed by bytes that no text has. First bytes: PNG (W3C), section 5.2; JPEG (ITU-T T.81), B.2.1; GIF89a,
// section 17; PDF (ISO 32000-1), 7.5.2; ZIP (APPNOTE), 4.3.7; ELF (System V ABI), chapter 4.
const Row kBinaries[] = {
    {"png", "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"sv, "a PNG picture"},
    {"jpeg", "\xFF\xD8\xFF\xE0\0\x10JFIF"sv, "a JPEG picture"},
    {"gif", "GIF89a\x01\0\x01\0"sv, "a GIF picture"},
    {"webp", "RIFF\x24\0\0\0WEBPVP8 "sv, "a picture, sound or film (RIFF)"},
    {"pdf", "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n"sv, "a PDF"},
    {"zip", "PK\x03\x04\x14\0\0\0"sv, "a ZIP archive, as documents of office programs are"},
    {"elf",
     "\x7F"
     "ELF\x02\x01\x01\0\0\0\0\0"sv,
     "a program (ELF)"},
    {"windows_program", "MZ\x90\0\x03\0\0\0"sv, "a program"},
    {"rich_text", "{\\rtf1\\ansi Tote"sv, "a Rich Text document"},
    {"unknown", "\x01\x02\x03\x04\0\0\0\0\x05\x06"sv, "data of a program"},
    {"utf_16_without_mark", "T\0o\0t\0e\0 \0b\0a\0g\0.\0"sv, "UTF-16 without a byte order mark"},
};

TEST_P(BinaryFileTest, IsToldInEveryFormat) {
    for (const InputFormat format :
         {InputFormat::text, InputFormat::markdown, InputFormat::json, InputFormat::json_lines, InputFormat::html,
          InputFormat::csv, InputFormat::tsv, InputFormat::automatic}) {
        auto reader = ListingReader::from_memory("f", GetParam().input, {.format = format});
        Listing listing;
        std::vector<Issue> issues;
        EXPECT_FALSE(reader.next(listing, issues));
        ASSERT_EQ(issues.size(), 1U) << static_cast<int>(format);
        EXPECT_EQ(dump(issues[0]), "0:0 error not-text");
        EXPECT_EQ(issues[0].message, "this is no text and is not read; it seems to be " + std::string(GetParam().want));
        EXPECT_FALSE(reader.next(listing, issues));
        EXPECT_EQ(issues.size(), 1U);
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, BinaryFileTest, testing::ValuesIn(kBinaries), row_name);

class NearlyBinaryTest : public testing::TestWithParam<Row> {};

// Texts that begin as a file of that kind does, or hold a byte that they should not.
const Row kTexts[] = {
    {"capitals_mz", "MZ belts, calf."sv, "1@1 f:1 description='MZ belts, calf.'"},
    {"capitals_bm", "BM"sv, "1@1 f:1 description='BM'"},
    {"capitals_pk", "PK belts"sv, "1@1 f:1 description='PK belts'"},
    {"one_nul", "a\0b"sv, "1:2 warning nul-byte\n1@1 f:1 description='a\\x00b'"},
    {"utf_16_with_mark", "\xFF\xFEn\0a\0m\0e\0n\0a\0m\0e\0n\0a\0m\0e\0"sv, "1:1 error not-utf8"},
};

TEST_P(NearlyBinaryTest, IsRead) {
    EXPECT_EQ(read_memory(GetParam().input, InputFormat::text), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, NearlyBinaryTest, testing::ValuesIn(kTexts), row_name);

// A part from the middle of a file is what the whole is.
TEST(BinaryFile, PartOfLinesIsNotLookedAt) {
    auto reader = ListingReader::from_memory("f", "%PDF-\n{\"name\":\"a\"}\n",
                                             {.format = InputFormat::json_lines, .start = {3, 7, 99}});
    EXPECT_EQ(read_all(reader), "7:1 error json-syntax\n4@8 f:4 name='a'");
}

}  // namespace
}  // namespace grainside::testing_listing
