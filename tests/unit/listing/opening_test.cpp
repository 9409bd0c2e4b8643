#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <type_traits>

#include "listing/byte_source.h"
#include "listing/input_format.h"
#include "reading.h"

namespace grainside::testing_listing {
namespace {

static_assert(!std::is_copy_constructible_v<ListingReader>);
static_assert(std::is_nothrow_move_constructible_v<ListingReader>);

class OpeningTest : public testing::Test {
protected:
    void SetUp() override {
        folder_ =
            std::filesystem::temp_directory_path() / ("grainside_opening_" + std::to_string(::getpid()) + "_" +
                                                      testing::UnitTest::GetInstance()->current_test_info()->name());
        std::filesystem::create_directories(folder_);
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    std::string file(const std::string& name, std::string_view content) const {
        std::ofstream(folder_ / name, std::ios::binary) << content;
        return folder_ / name;
    }

    std::filesystem::path folder_;
};

TEST_F(OpeningTest, MissingFile) {
    const std::string path = folder_ / "none.jsonl";
    const auto reader = ListingReader::open(path, {});
    ASSERT_FALSE(reader);
    ASSERT_EQ(reader.issues().size(), 1U);
    EXPECT_EQ(reader.issues()[0].code, "cannot-open");
    EXPECT_EQ(reader.issues()[0].file, path);
    EXPECT_EQ(reader.issues()[0].message, "the file cannot be opened: No such file or directory");
    EXPECT_EQ(reader.issues()[0].hint, "check the spelling of the path");
}

TEST_F(OpeningTest, Folder) {
    const auto reader = ListingReader::open(folder_, {});
    ASSERT_FALSE(reader);
    ASSERT_EQ(reader.issues().size(), 1U);
    EXPECT_EQ(reader.issues()[0].code, "is-directory");
}

TEST_F(OpeningTest, FormatByName) {
    struct NameRow {
        const char* name;
        std::string_view content;
        std::string_view want;
    };
    constexpr NameRow kNames[] = {
        {"a.json", "[{\"sku\":\"1\",\"name\":\"n\"}]", "1@1 1 name='n'"},
        {"a.JSONL", "{\"sku\":\"1\",\"name\":\"n\"}\n", "1@1 1 name='n'"},
        {"a.ndjson", "{\"sku\":\"1\",\"name\":\"n\"}\n", "1@1 1 name='n'"},
    };
    for (const NameRow& row : kNames) {
        auto reader = ListingReader::open(file(row.name, row.content), {});
        ASSERT_TRUE(reader) << row.name;
        EXPECT_EQ(read_all(reader.value()), row.want) << row.name;
    }
    EXPECT_EQ(listing::format_of_name("x/y.md"), InputFormat::markdown);
    EXPECT_EQ(listing::format_of_name("x.Markdown"), InputFormat::markdown);
    EXPECT_EQ(listing::format_of_name("x.txt"), InputFormat::text);
    EXPECT_EQ(listing::format_of_name("x.json/y"), InputFormat::text);
    EXPECT_EQ(listing::format_of_name("json"), InputFormat::text);
    EXPECT_EQ(listing::format_of_name(""), InputFormat::text);
}

TEST_F(OpeningTest, FormatByContentOfStandardInput) {
    struct ContentRow {
        std::string_view content;
        InputFormat want;
    };
    constexpr ContentRow kContents[] = {
        {"{\"name\":1}", InputFormat::json_lines},
        {" \n\t{", InputFormat::json_lines},
        {"\xEF\xBB\xBF {", InputFormat::json_lines},
        {"\n[", InputFormat::json},
        {"{\n  \"name\": 1\n}\n", InputFormat::json},
        {" { \t\r\n}", InputFormat::json},
        {"{ \"name\":\n1}", InputFormat::json_lines},
        {"Tote", InputFormat::text},
        {"", InputFormat::text},
        {"\xEF\xBB\xBF", InputFormat::text},
        {"  ", InputFormat::text},
        {"\xEF", InputFormat::text},
    };
    for (const ContentRow& row : kContents) {
        auto memory = listing::ByteSource::from_memory("<stdin>", row.content);
        EXPECT_EQ(listing::format_of_content(memory), row.want) << row.content;
        std::FILE* stream = std::tmpfile();
        ASSERT_NE(stream, nullptr);
        std::fwrite(row.content.data(), 1, row.content.size(), stream);
        std::rewind(stream);
        auto slow = listing::ByteSource::from_descriptor(::fileno(stream), false, "<stdin>", 1);
        EXPECT_EQ(listing::format_of_content(slow), row.want) << row.content;
        EXPECT_TRUE(row.content.starts_with(slow.pending()));
        std::fclose(stream);
    }
}

// Every format from a file: the buffer's own way, with room behind the bytes.
TEST_F(OpeningTest, FilesGiveWhatMemoryGives) {
    const std::string path = file("f", "# Tote\n\nFull grain.");
    auto reader = ListingReader::open(path, {.format = InputFormat::markdown});
    ASSERT_TRUE(reader);
    EXPECT_EQ(read_all(reader.value()), "1@1 " + path + ":1 name='Tote' description='\\nFull grain.'");
    EXPECT_EQ(reader.value().bytes_read(), 19U);

    const std::string catalog =
        file("c.json", "[{\"sku\":\"a\",\"name\":\"n\"},\n{\"sku\":\"b\",\"name\":\"\xFF\x41\"}]");
    auto array = ListingReader::open(catalog, {});
    ASSERT_TRUE(array);
    EXPECT_EQ(read_all(array.value()), "1@1 a name='n'\n2:20 warning not-utf8\n2@2 b name=' A'");
}

}  // namespace
}  // namespace grainside::testing_listing
