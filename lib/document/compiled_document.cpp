#include "document/compiled_document.h"

#include <xxhash.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string_view>
#include <type_traits>
#include <utility>

#include "document/digest.h"

namespace grainside::document {
namespace {

constexpr std::string_view kMagic = "GSDB";
constexpr std::uint32_t kVersion = 2;
constexpr std::uint32_t kByteOrder = 0x01020304;

// Byte offsets of the header's numbers.
constexpr std::size_t kVersionAt = 4;
constexpr std::size_t kByteOrderAt = 8;
constexpr std::size_t kTotalSizeAt = 12;
constexpr std::size_t kChecksumAt = 16;
constexpr std::size_t kDigestAt = 24;
constexpr std::size_t kDocumentCountAt = 32;
constexpr std::size_t kHeaderSize = 36;

struct DocumentEntry {
    std::uint32_t name_offset, name_length;
    std::uint32_t first_record, record_count;
    std::uint32_t strings_offset, strings_length;
};
static_assert(sizeof(DocumentEntry) == 24);
static_assert(std::is_trivially_copyable_v<NodeRecord> && std::is_trivially_copyable_v<DocumentEntry>);

std::size_t align_to_8(std::size_t size) {
    return (size + 7) / 8 * 8;
}

template <typename T>
void append_bytes(std::string& out, const T& value) {
    const auto bytes = std::bit_cast<std::array<char, sizeof(T)>>(value);
    out.append(bytes.data(), bytes.size());
}

template <typename T>
T read_bytes(std::span<const char> bytes, std::size_t offset) {
    T value;
    std::memcpy(&value, bytes.data() + offset, sizeof(T));
    return value;
}

void write_word(std::string& bytes, std::size_t offset, std::uint32_t value) {
    std::memcpy(bytes.data() + offset, &value, sizeof(value));
}

std::uint64_t checksum_of(std::span<const char> bytes) {
    return XXH3_64bits(bytes.data(), bytes.size());
}

bool lies_within(std::uint64_t offset, std::uint64_t length, std::uint64_t size) {
    return offset <= size && length <= size - offset;
}

// One pass in index order suffices because links point forward: a record's place in the tree is known before it is met.
class TreeCheck {
public:
    TreeCheck(std::span<const NodeRecord> records, std::size_t strings_size)
        : records_(records), strings_size_(strings_size), nodes_(records.size()) {}

    bool passes() {
        if (records_.empty()) return true;
        if (records_[0].next_sibling != 0) return false;
        nodes_[0].depth = 1;
        for (std::size_t i = 0; i < records_.size(); ++i) {
            if (nodes_[i].depth == 0 || !fields_are_sound(records_[i], nodes_[i])) return false;
            const NodeRecord& record = records_[i];
            const bool mapping = record.kind == NodeKind::mapping;
            if (!link(i, record.first_child, {static_cast<std::uint8_t>(nodes_[i].depth + 1), mapping})) return false;
            if (!link(i, record.next_sibling, nodes_[i])) return false;
        }
        return true;
    }

private:
    struct Known {
        std::uint8_t depth = 0;  // the root's is 1; 0 = nobody's child so far
        bool in_mapping = false;
    };

    bool fields_are_sound(const NodeRecord& record, Known known) const {
        if (record.kind > NodeKind::mapping || record.quoted > 1) return false;
        if (!lies_within(record.key_offset, record.key_length, strings_size_)) return false;
        if (!lies_within(record.text_offset, record.text_length, strings_size_)) return false;
        if ((record.key_length != 0) != known.in_mapping) return false;
        const bool scalar = record.kind == NodeKind::scalar;
        const bool collection = record.kind == NodeKind::sequence || record.kind == NodeKind::mapping;
        if (!scalar && (record.text_length != 0 || record.quoted != 0)) return false;
        if (!collection && record.first_child != 0) return false;
        return !collection || known.depth <= kMaxDepth;
    }

    bool link(std::size_t from, std::uint32_t to, Known known) {
        if (to == 0) return true;
        if (to <= from || to >= records_.size() || nodes_[to].depth != 0) return false;
        nodes_[to] = known;
        return true;
    }

    std::span<const NodeRecord> records_;
    std::size_t strings_size_;
    std::vector<Known> nodes_;
};

// Says what is damaged, or gives the documents.
class CompiledReader {
public:
    explicit CompiledReader(std::span<const char> bytes) : bytes_(bytes) {}

    std::string_view check_header() {
        if (reinterpret_cast<std::uintptr_t>(bytes_.data()) % 8 != 0) return "it does not lie at a multiple of 8";
        if (bytes_.size() < kHeaderSize) return "it is too short";
        if (std::string_view(bytes_.data(), kMagic.size()) != kMagic) return "it does not begin as one";
        if (word(kByteOrderAt) != kByteOrder) return "it was made for another byte order";
        if (word(kVersionAt) != kVersion) return "it was made by another version";
        if (word(kTotalSizeAt) != bytes_.size()) return "its size is wrong";
        const auto checksum = word(kChecksumAt) | (std::uint64_t{word(kChecksumAt + 4)} << 32);
        if (checksum != checksum_of(bytes_.subspan(kDigestAt))) return "its checksum is wrong";
        return {};
    }

    std::string_view read(std::vector<Document>& documents) {
        constexpr std::string_view kTooFew = "it ends too early";
        const std::uint64_t count = word(kDocumentCountAt);
        if (!lies_within(kHeaderSize, count * sizeof(DocumentEntry), bytes_.size())) return kTooFew;
        std::vector<DocumentEntry> entries;
        std::uint64_t record_count = 0;
        for (std::size_t i = 0; i < count; ++i) {
            entries.push_back(read_bytes<DocumentEntry>(bytes_, kHeaderSize + i * sizeof(DocumentEntry)));
            if (entries.back().first_record != record_count) return "its documents overlap";
            record_count += entries.back().record_count;
        }
        const std::size_t records_at = align_to_8(kHeaderSize + entries.size() * sizeof(DocumentEntry));
        if (!lies_within(records_at, record_count * sizeof(NodeRecord), bytes_.size())) return kTooFew;
        const std::span<const NodeRecord> records(reinterpret_cast<const NodeRecord*>(bytes_.data() + records_at),
                                                  static_cast<std::size_t>(record_count));
        const std::size_t strings_at = records_at + records.size_bytes();
        const std::string_view strings(bytes_.data() + strings_at, bytes_.size() - strings_at);

        for (const DocumentEntry& entry : entries) {
            if (!lies_within(entry.name_offset, entry.name_length, strings.size()) ||
                !lies_within(entry.strings_offset, entry.strings_length, strings.size())) {
                return "a string lies outside of it";
            }
            const auto own_records = records.subspan(entry.first_record, entry.record_count);
            if (!TreeCheck(own_records, entry.strings_length).passes()) return "a tree in it is broken";
            documents.emplace_back(std::string(strings.substr(entry.name_offset, entry.name_length)), own_records,
                                   strings.substr(entry.strings_offset, entry.strings_length));
        }
        return {};
    }

private:
    std::uint32_t word(std::size_t offset) const { return read_bytes<std::uint32_t>(bytes_, offset); }

    std::span<const char> bytes_;
};

}  // namespace

std::string compile_documents(std::span<const Document> documents) {
    std::string bytes(kMagic);
    bytes.resize(kHeaderSize, '\0');
    write_word(bytes, kVersionAt, kVersion);
    write_word(bytes, kByteOrderAt, kByteOrder);
    const std::uint64_t digest = digest_of(documents);
    write_word(bytes, kDigestAt, static_cast<std::uint32_t>(digest & 0xFFFFFFFFu));
    write_word(bytes, kDigestAt + 4, static_cast<std::uint32_t>(digest >> 32));
    write_word(bytes, kDocumentCountAt, static_cast<std::uint32_t>(documents.size()));

    std::string strings;
    std::uint32_t records_before = 0;
    for (const Document& document : documents) {
        const auto size = [](std::size_t value) { return static_cast<std::uint32_t>(value); };
        DocumentEntry entry{};
        entry.name_offset = size(strings.size());
        entry.name_length = size(document.file().size());
        strings += document.file();
        entry.strings_offset = size(strings.size());
        entry.strings_length = size(document.strings().size());
        strings += document.strings();
        entry.first_record = records_before;
        entry.record_count = size(document.records().size());
        records_before += entry.record_count;
        append_bytes(bytes, entry);
    }
    bytes.resize(align_to_8(bytes.size()), '\0');
    for (const Document& document : documents) {
        for (const NodeRecord& record : document.records()) append_bytes(bytes, record);
    }
    bytes += strings;
    bytes.resize(align_to_8(bytes.size()), '\0');
    seal_compiled(bytes);
    return bytes;
}

std::vector<Document> open_compiled(std::span<const char> bytes, Faults& faults) {
    std::vector<Document> documents;
    CompiledReader reader(bytes);
    std::string_view damage = reader.check_header();
    if (damage.empty()) damage = reader.read(documents);
    if (damage.empty()) return documents;

    Issue issue;
    issue.code = "damaged-book";
    issue.message = "the compiled rule book is damaged: " + std::string(damage);
    issue.hint = "build it again";
    faults.add(std::move(issue));
    return {};
}

std::uint64_t compiled_digest(std::span<const char> bytes) {
    return bytes.size() < kHeaderSize ? 0 : read_bytes<std::uint64_t>(bytes, kDigestAt);
}

void seal_compiled(std::string& bytes) {
    if (bytes.size() < kHeaderSize) return;
    write_word(bytes, kTotalSizeAt, static_cast<std::uint32_t>(bytes.size()));
    const std::uint64_t checksum = checksum_of(std::span<const char>(bytes).subspan(kDigestAt));
    write_word(bytes, kChecksumAt, static_cast<std::uint32_t>(checksum & 0xFFFFFFFFu));
    write_word(bytes, kChecksumAt + 4, static_cast<std::uint32_t>(checksum >> 32));
}

}  // namespace grainside::document
