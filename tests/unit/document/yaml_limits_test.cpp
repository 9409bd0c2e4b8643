// Hostile files stay cheap: each limit at its border.
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <string_view>

#include "document/faults.h"
#include "document/yaml_document.h"
#include "tree_dump.h"

namespace grainside::document {
namespace {

std::string repeated(std::string_view text, std::size_t times) {
    std::string out;
    out.reserve(text.size() * times);
    for (std::size_t i = 0; i < times; ++i) out += text;
    return out;
}

std::string enclosed(std::string_view before, std::string_view inner, std::string_view after) {
    std::string out(before);
    out += inner;
    out += after;
    return out;
}

TEST(YamlLimits, DepthInBrackets) {
    const std::size_t most = static_cast<std::size_t>(kMaxYamlDepth);
    EXPECT_EQ(faults_of(repeated("[", most) + repeated("]", most)), "");
    EXPECT_EQ(faults_of(repeated("[", most + 1) + repeated("]", most + 1)), "1:33 too-deep");
}

TEST(YamlLimits, DepthByIndentation) {
    EXPECT_EQ(faults_of(repeated("- ", 32) + "a\n"), "");
    EXPECT_EQ(faults_of(repeated("- ", 33) + "a\n"), "1:65 too-deep");
    std::string mappings;
    for (std::size_t i = 0; i < 33; ++i) mappings += std::string(i, ' ') + "a:\n";
    EXPECT_EQ(faults_of(mappings), "33:33 too-deep");
}

TEST(YamlLimits, DepthInsideOfAKey) {
    EXPECT_EQ(faults_of(repeated("? ", 40) + "a\n"), "1:3 wrong-type; 1:65 too-deep");
}

TEST(YamlLimits, Size) {
    const std::string line = "- 0123456789abcdef0123456789abcdef0123456789abcdef0123456789\n";
    std::string text = repeated(line, kMaxYamlBytes / line.size());
    text += '#' + std::string(kMaxYamlBytes - text.size() - 1, 'x');
    ASSERT_EQ(text.size(), kMaxYamlBytes);
    EXPECT_EQ(faults_of(text), "");
    EXPECT_EQ(faults_of(text + '\n'), "0:0 too-large");
}

TEST(YamlLimits, NumberOfValues) {
    const std::string items = repeated("-\n", kMaxYamlNodes - 1);  // and the list itself
    EXPECT_EQ(faults_of(items), "");
    EXPECT_EQ(faults_of(items + "-\n"), "500000:1 too-large");
}

// Without the limit on one stretch, the parser takes a gigabyte for the first of these.
TEST(YamlLimits, LongStretches) {
    constexpr std::size_t kOver = kMaxYamlStretch + 8192;
    constexpr std::size_t kUnder = kMaxYamlStretch - 8192;
    EXPECT_EQ(faults_of(enclosed("a: 1\nb: ", std::string(kMaxYamlBytes - 10, '['), "")), "2:4 too-large");
    EXPECT_EQ(faults_of(enclosed("- [", repeated("x,", kOver / 2), "]\n")), "1:1 too-large");
    EXPECT_EQ(faults_of(enclosed("- [", repeated("x,", kUnder / 2), "]\n")), "");
    EXPECT_EQ(faults_of(enclosed("a: '", std::string(kOver, 'x'), "'\n")), "1:1 too-large");
    EXPECT_EQ(faults_of(enclosed("a: '", std::string(kUnder, 'x'), "'\n")), "");
    EXPECT_EQ(faults_of(enclosed("a: 1\n", repeated("# x\n", kOver / 4), "b: 2\n")), "1:4 too-large");
    EXPECT_EQ(faults_of(enclosed("a: 1\n", repeated("# x\n", kUnder / 4), "b: 2\n")), "");
    EXPECT_EQ(faults_of(repeated("# x\n", kOver / 4)), "1:1 too-large");
}

// Nine levels of nine references each would be 387,420,489 values in a reader that follows them.
TEST(YamlLimits, AliasBomb) {
    std::string text = "a: &a [x, x, x, x, x, x, x, x, x]\n";
    for (char name = 'b'; name <= 'i'; ++name) {
        const std::string before(1, static_cast<char>(name - 1));
        text += std::string(1, name) + ": &" + name + " [" + repeated("*" + before + ", ", 8) + "*" + before + "]\n";
    }
    Faults faults;
    EXPECT_FALSE(parse_yaml("bomb.yaml", text, faults));
    EXPECT_EQ(faults.take().size(), 9u + 8u * 9u);
}

TEST(YamlLimits, NumberOfFaultsKept) {
    Faults faults;
    EXPECT_FALSE(parse_yaml("many.yaml", repeated("- &a x\n", 5000), faults));
    EXPECT_EQ(faults.take().size(), kMaxIssues + 1);
}

// Each fault carries its line: on one long line that would be quadratic without the cut.
TEST(YamlLimits, ManyFaultsOnOneLongLine) {
    Faults faults;
    EXPECT_FALSE(parse_yaml("long.yaml", enclosed("{", repeated("a: 1, ", 20'000), "}"), faults));
    std::size_t bytes = 0;
    for (const Issue& issue : faults.take()) bytes += issue.excerpt.size();
    EXPECT_LE(bytes, std::size_t{5} << 20);
}

TEST(YamlLimits, ColumnsAreCapped) {
    const Document document =
        parse_good(enclosed("[", repeated(enclosed("'", std::string(1000, 'x'), "',"), 70), "y]"));
    Node last;
    for (const Node member : document.root()) last = member;
    EXPECT_EQ(last.text(), "y");
    EXPECT_EQ(last.column(), 65535u);
}

}  // namespace
}  // namespace grainside::document
