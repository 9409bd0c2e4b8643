#include "document/compiled_document.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <cstring>
#include <random>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/yaml_document.h"
#include "tree_dump.h"

namespace grainside::document {
namespace {

// Bytes at a multiple of 8, as the built-in book's are.
class AlignedBytes {
public:
    explicit AlignedBytes(std::string_view bytes) : words_((bytes.size() + 7) / 8 + 1), size_(bytes.size()) {
        std::memcpy(words_.data(), bytes.data(), bytes.size());
    }
    std::span<const char> span() const { return {reinterpret_cast<const char*>(words_.data()), size_}; }

private:
    std::vector<std::uint64_t> words_;
    std::size_t size_;
};

std::vector<Document> small_book() {
    std::vector<Document> documents;
    documents.push_back(
        parse_good("- {rule: a, when: [x, 'y']}\n- rule: b\n  because: |\n    two\n    lines\n  unless:\n"));
    documents.push_back(parse_good(""));
    documents.push_back(parse_good("text\n"));
    return documents;
}

// Visits every node and byte, so that a sanitizer sees whatever lies outside; returns what it saw.
std::string walk(const std::vector<Document>& documents) {
    std::string seen;
    for (const Document& document : documents) seen += document.file() + '\n' + dump_places(document.root());
    return seen;
}

// Refused with the one code for damage, or trees that can be walked.
void expect_refused_or_sound(const std::string& bytes) {
    const AlignedBytes aligned(bytes);
    Faults faults;
    const std::vector<Document> documents = open_compiled(aligned.span(), faults);
    if (faults.any_errors()) {
        EXPECT_TRUE(documents.empty());
        EXPECT_EQ(dump(faults.take()), "0:0 damaged-book");
    } else {
        std::size_t nodes = 0;
        for (const Document& document : documents) nodes += document.records().size();
        const std::string seen = walk(documents);
        std::size_t lines = 0;
        for (const char c : seen) lines += c == '\n' ? 1 : 0;
        EXPECT_GE(lines, nodes);
    }
}

TEST(CompiledDocument, GivesTheSameTrees) {
    const std::vector<Document> documents = small_book();
    const AlignedBytes bytes(compile_documents(documents));
    Faults faults;
    const std::vector<Document> opened = open_compiled(bytes.span(), faults);
    EXPECT_EQ(dump(faults.take()), "");
    ASSERT_EQ(opened.size(), documents.size());
    EXPECT_EQ(walk(opened), walk(documents));
    EXPECT_FALSE(opened[1].root().exists());
    EXPECT_EQ(opened[0].source_line(1), "");
}

TEST(CompiledDocument, GivesTheSameTreesForTheProjectsRules) {
    Faults faults;
    const std::vector<Document> documents = read_yaml_folder(GRAINSIDE_RULES_FOLDER, faults);
    ASSERT_FALSE(documents.empty());
    const AlignedBytes bytes(compile_documents(documents));
    const std::vector<Document> opened = open_compiled(bytes.span(), faults);
    EXPECT_EQ(dump(faults.take()), "");
    EXPECT_EQ(walk(opened), walk(documents));
}

TEST(CompiledDocument, IsUsedInPlace) {
    const AlignedBytes bytes(compile_documents(small_book()));
    Faults faults;
    const std::vector<Document> opened = open_compiled(bytes.span(), faults);
    ASSERT_EQ(opened.size(), 3u);
    const auto* records = reinterpret_cast<const char*>(opened[0].records().data());
    EXPECT_TRUE(records > bytes.span().data() && records < bytes.span().data() + bytes.span().size());
    const char* text = opened[2].root().text().data();
    EXPECT_TRUE(text > bytes.span().data() && text < bytes.span().data() + bytes.span().size());
}

TEST(CompiledDocument, SameDocumentsGiveTheSameBytes) {
    EXPECT_EQ(compile_documents(small_book()), compile_documents(small_book()));
    EXPECT_EQ(compile_documents(small_book()).size() % 8, 0u);
}

TEST(CompiledDocument, AnEmptySetOpensToNothing) {
    const AlignedBytes bytes(compile_documents({}));
    Faults faults;
    EXPECT_TRUE(open_compiled(bytes.span(), faults).empty());
    EXPECT_EQ(dump(faults.take()), "");
}

TEST(CompiledDocument, EverySingleBitFlipIsRefused) {
    const std::string good = compile_documents(small_book());
    for (std::size_t at = 0; at < good.size(); ++at) {
        for (int bit = 0; bit < 8; ++bit) {
            std::string bytes = good;
            bytes[at] = static_cast<char>(static_cast<unsigned char>(bytes[at]) ^ (1u << bit));
            const AlignedBytes aligned(bytes);
            Faults faults;
            EXPECT_TRUE(open_compiled(aligned.span(), faults).empty()) << at;
            ASSERT_EQ(dump(faults.take()), "0:0 damaged-book") << "byte " << at << ", bit " << bit;
        }
    }
}

TEST(CompiledDocument, EveryOtherLengthIsRefused) {
    const std::string good = compile_documents(small_book());
    for (std::size_t length = 0; length <= good.size() + 9; ++length) {
        if (length == good.size()) continue;
        std::string bytes = good;
        bytes.resize(length, '\0');
        const AlignedBytes aligned(bytes);
        Faults faults;
        EXPECT_TRUE(open_compiled(aligned.span(), faults).empty()) << length;
        ASSERT_EQ(dump(faults.take()), "0:0 damaged-book") << length;
        seal_compiled(bytes);
        expect_refused_or_sound(bytes);
    }
}

TEST(CompiledDocument, UnalignedBytesAreRefused) {
    const std::string good = compile_documents(small_book());
    std::string bytes(4, ' ');
    bytes += good;
    const AlignedBytes aligned(bytes);
    Faults faults;
    EXPECT_TRUE(open_compiled(aligned.span().subspan(4), faults).empty());
    EXPECT_EQ(dump(faults.take()), "0:0 damaged-book");
}

// One record's field made wrong and the checksum made right: what the checksum cannot catch.
struct DamageRow {
    std::string_view name;
    std::size_t record;
    void (*damage)(NodeRecord&);
    std::string_view want;
};

// Records of {a: [x, y], b: {c: z}, d: }: 0 the root, 1 a, 2 x, 3 y, 4 b, 5 z, 6 d.
constexpr std::string_view kDamagedText = "a: [x, y]\nb: {c: z}\nd:\n";

const DamageRow kDamages[] = {
    {"none", 0, [](NodeRecord&) {}, "sound"},
    {"link_to_itself", 2, [](NodeRecord& r) { r.next_sibling = 2; }, "damaged"},
    {"link_backwards", 4, [](NodeRecord& r) { r.first_child = 1; }, "damaged"},
    {"link_beyond_the_end", 6, [](NodeRecord& r) { r.next_sibling = 7; }, "damaged"},
    {"link_far_beyond_the_end", 6, [](NodeRecord& r) { r.next_sibling = 0xFFFFFFFFu; }, "damaged"},
    {"two_parents", 3, [](NodeRecord& r) { r.next_sibling = 4; }, "damaged"},
    {"child_and_sibling_the_same", 1, [](NodeRecord& r) { r.next_sibling = 2; }, "damaged"},
    {"nobodys_child", 2, [](NodeRecord& r) { r.next_sibling = 0; }, "damaged"},
    {"root_with_a_sibling", 0, [](NodeRecord& r) { r.next_sibling = 6; }, "damaged"},
    {"root_with_a_key", 0, [](NodeRecord& r) { r.key_length = 1; }, "damaged"},
    {"scalar_with_a_child", 5, [](NodeRecord& r) { r.first_child = 6; }, "damaged"},
    {"null_with_a_text", 6, [](NodeRecord& r) { r.text_length = 1; }, "damaged"},
    {"null_in_quotes", 6, [](NodeRecord& r) { r.quoted = 1; }, "damaged"},
    {"unknown_kind", 6, [](NodeRecord& r) { r.kind = static_cast<NodeKind>(4); }, "damaged"},
    {"unknown_quotes", 2, [](NodeRecord& r) { r.quoted = 2; }, "damaged"},
    {"text_beyond_the_end", 2, [](NodeRecord& r) { r.text_length = 1000; }, "damaged"},
    {"text_wrapping_around", 2, [](NodeRecord& r) { r.text_offset = 0xFFFFFFFFu, r.text_length = 2; }, "damaged"},
    {"key_beyond_the_end", 1, [](NodeRecord& r) { r.key_offset = 1000; }, "damaged"},
    {"member_of_a_list_with_a_key", 2, [](NodeRecord& r) { r.key_length = 1; }, "damaged"},
    {"member_of_a_mapping_without_key", 1, [](NodeRecord& r) { r.key_length = 0; }, "damaged"},
    {"other_place", 2, [](NodeRecord& r) { r.line = 99; }, "sound"},
    {"other_text", 2, [](NodeRecord& r) { r.text_offset = 0; }, "sound"},
};

class CompiledDamage : public testing::TestWithParam<DamageRow> {};

TEST_P(CompiledDamage, IsFound) {
    std::vector<Document> documents;
    documents.push_back(parse_good(kDamagedText));
    ASSERT_EQ(documents[0].records().size(), 7u);
    std::string bytes = compile_documents(documents);
    constexpr std::size_t kRecordsAt = 64;  // 36 of the header and 24 of one document, up to a multiple of 8
    const std::size_t at = kRecordsAt + GetParam().record * sizeof(NodeRecord);
    NodeRecord record;
    std::memcpy(&record, bytes.data() + at, sizeof(record));
    GetParam().damage(record);
    std::memcpy(bytes.data() + at, &record, sizeof(record));
    seal_compiled(bytes);
    const AlignedBytes aligned(bytes);
    Faults faults;
    const bool opened = !open_compiled(aligned.span(), faults).empty();
    EXPECT_EQ(opened ? "sound" : "damaged", GetParam().want);
    EXPECT_EQ(dump(faults.take()), opened ? "" : "0:0 damaged-book");
}

INSTANTIATE_TEST_SUITE_P(Rows, CompiledDamage, testing::ValuesIn(kDamages),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(CompiledDocument, TooDeepTreesAreRefused) {
    for (const int depth : {kMaxDepth, kMaxDepth + 1}) {
        std::vector<NodeRecord> records(static_cast<std::size_t>(depth));
        for (std::size_t i = 0; i < records.size(); ++i) {
            records[i].kind = NodeKind::sequence;
            records[i].first_child = i + 1 < records.size() ? static_cast<std::uint32_t>(i + 1) : 0;
        }
        std::vector<Document> documents;
        documents.emplace_back("deep", std::move(records), "", "");
        const AlignedBytes bytes(compile_documents(documents));
        Faults faults;
        EXPECT_EQ(open_compiled(bytes.span(), faults).size(), depth == kMaxDepth ? 1u : 0u);
    }
}

TEST(CompiledDocument, RandomDamageWithARightChecksumNeverCrashes) {
    const std::string good = compile_documents(small_book());
    std::mt19937 random(20240611);
    std::uniform_int_distribution<std::size_t> place(0, good.size() - 1);
    std::uniform_int_distribution<int> count(1, 6);
    std::uniform_int_distribution<int> byte(0, 255);
    std::uniform_int_distribution<int> small(0, 3);
    for (int round = 0; round < 50'000; ++round) {
        std::string bytes = good;
        for (int i = count(random); i > 0; --i) {
            // Small numbers are likelier to pass for offsets and links.
            const int value = small(random) == 0 ? byte(random) : byte(random) % 8;
            bytes[place(random)] = static_cast<char>(value);
        }
        seal_compiled(bytes);
        expect_refused_or_sound(bytes);
    }
}

TEST(CompiledDocument, SealingTooFewBytesLeavesThemAlone) {
    std::string bytes = "short";
    seal_compiled(bytes);
    EXPECT_EQ(bytes, "short");
}

}  // namespace
}  // namespace grainside::document
