// A document: the neutral tree that the rule book is loaded from.
//
// Two encodings fill the same tree: YAML (yaml_document.h, for --rules and for the build) and the compiled form
// (compiled_document.h, for the built-in book). What the keys mean is known only to those who walk the tree.
//
// A document is immutable once made; any number of threads may read it. It may own its records or point into constant
// data; moving it keeps all references valid, copying is left out because nobody needs it.
//
// Record 0 is the root. Links point forward, every other record is the child of exactly one, and collections are nested
// at most kMaxDepth deep: those who walk a tree may do it by plain recursion.
#ifndef GRAINSIDE_DOCUMENT_DOCUMENT_H
#define GRAINSIDE_DOCUMENT_DOCUMENT_H

#include <cstdint>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::document {

// Collections within collections, the root counted.
inline constexpr int kMaxDepth = 32;

enum class NodeKind : std::uint8_t { null, scalar, sequence, mapping };

// One node as it lies in memory and in the compiled form. Offsets are into the document's string block.
struct NodeRecord {
    std::uint32_t key_offset = 0;  // the key under which a child of a mapping stands; length 0 elsewhere
    std::uint32_t key_length = 0;
    std::uint32_t text_offset = 0;  // a scalar's text
    std::uint32_t text_length = 0;
    std::uint32_t first_child = 0;   // index of the record; 0 = none (the root is nobody's child)
    std::uint32_t next_sibling = 0;  // index of the record; 0 = none
    std::uint32_t line = 0;          // of the value, from 1
    std::uint16_t column = 0;        // of the value, from 1, in bytes; capped at 65535
    NodeKind kind = NodeKind::null;
    std::uint8_t quoted = 0;  // 1: a scalar written in quotes
};

static_assert(sizeof(NodeRecord) == 32, "the compiled form holds records as they lie in memory");

// Where something stands in the source; both count from 1, columns in bytes; 0 = not known.
struct Place {
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    bool operator==(const Place&) const = default;
};

// A position in a document: cheap to copy, valid while the document lives. A default-made one is absent.
class Node {
public:
    Node() = default;
    Node(const NodeRecord* records, const char* strings, std::uint32_t index)
        : records_(records), strings_(strings), index_(index) {}

    bool exists() const noexcept { return records_ != nullptr; }
    NodeKind kind() const noexcept { return exists() ? record().kind : NodeKind::null; }
    bool is_scalar() const noexcept { return kind() == NodeKind::scalar; }
    bool is_sequence() const noexcept { return kind() == NodeKind::sequence; }
    bool is_mapping() const noexcept { return kind() == NodeKind::mapping; }

    // Empty where this is no scalar.
    std::string_view text() const noexcept {
        return exists() ? std::string_view(strings_ + record().text_offset, record().text_length) : std::string_view();
    }
    // The key under which this node stands in its mapping; empty elsewhere.
    std::string_view key() const noexcept {
        return exists() ? std::string_view(strings_ + record().key_offset, record().key_length) : std::string_view();
    }
    std::uint32_t line() const noexcept { return exists() ? record().line : 0; }
    std::uint32_t column() const noexcept { return exists() ? record().column : 0; }
    bool quoted() const noexcept { return exists() && record().quoted != 0; }
    // The number of this node's record in Document::records().
    std::uint32_t index() const noexcept { return index_; }

    // The child of a mapping under `key`, or an absent node. Linear in the number of children.
    Node find(std::string_view key) const noexcept;

    class Iterator;
    // The children in written order; none for a scalar.
    Iterator begin() const noexcept;
    Iterator end() const noexcept;

private:
    const NodeRecord& record() const noexcept { return records_[index_]; }
    Node at(std::uint32_t index) const noexcept { return {records_, strings_, index}; }
    Node sibling() const noexcept { return record().next_sibling != 0 ? at(record().next_sibling) : Node{}; }

    const NodeRecord* records_ = nullptr;
    const char* strings_ = nullptr;
    std::uint32_t index_ = 0;
};

class Node::Iterator {
public:
    using iterator_category = std::forward_iterator_tag;
    using value_type = Node;
    using difference_type = std::ptrdiff_t;
    using pointer = const Node*;
    using reference = Node;

    Iterator() = default;
    explicit Iterator(Node node) : node_(node) {}
    Node operator*() const noexcept { return node_; }
    Iterator& operator++() noexcept {
        node_ = node_.sibling();
        return *this;
    }
    Iterator operator++(int) noexcept {
        Iterator before = *this;
        ++*this;
        return before;
    }
    bool operator==(const Iterator& other) const noexcept { return node_.index_ == other.node_.index_; }

private:
    Node node_;
};

inline Node::Iterator Node::begin() const noexcept {
    return Iterator(exists() && record().first_child != 0 ? at(record().first_child) : Node());
}

inline Node::Iterator Node::end() const noexcept {
    return Iterator();
}

inline Node Node::find(std::string_view key) const noexcept {
    for (const Node child : *this) {
        if (child.key() == key) return child;
    }
    return {};
}

// One file's tree, with the name that faults are told under.
class Document {
public:
    // Owns what it is given. `key_places` says for each record where its key stands, or is empty.
    Document(std::string file, std::vector<NodeRecord> records, const std::string& strings, const std::string& source,
             std::vector<Place> key_places = {});
    // Borrows constant data, which must outlive the document.
    Document(std::string file, std::span<const NodeRecord> records, std::string_view strings);
    Document(Document&&) noexcept = default;
    Document& operator=(Document&&) noexcept = default;
    Document(const Document&) = delete;
    Document& operator=(const Document&) = delete;

    const std::string& file() const noexcept { return file_; }  // relative to the rule folder, '/' between parts
    std::string_view stem() const noexcept;                     // "us" of "markets/us.yaml"
    Node root() const noexcept;                                 // absent for an empty file
    std::span<const NodeRecord> records() const noexcept { return view_; }
    std::string_view strings() const noexcept;
    // The text of one source line without its end, for excerpts; empty where the source is not kept.
    std::string_view source_line(std::uint32_t line) const noexcept;
    // Where the key of `node` stands; where that is not kept (the compiled form, a node without key), the node's own
    // place. REQUIRES: `node` is absent or of this document.
    Place key_place(Node node) const noexcept;

private:
    std::string file_;
    std::vector<NodeRecord> records_;
    std::vector<char> strings_;  // not a std::string: short strings would move
    std::vector<char> source_;   // the same
    std::vector<Place> key_places_;
    std::span<const NodeRecord> view_;
    std::string_view strings_view_;
};

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_DOCUMENT_H
