// A document: the neutral tree that the rule book is loaded from.
//
// Two encodings fill the same tree: YAML (yaml_document.h, for --rules and for the build) and the compiled form
// (compiled_document.h, for the built-in book). What the keys mean is known only to those who walk the tree.
//
// A document is immutable once made; any number of threads may read it. It may own its records or point into constant
// data; moving it keeps all references valid, copying is left out because nobody needs it.
#ifndef GRAINSIDE_DOCUMENT_DOCUMENT_H
#define GRAINSIDE_DOCUMENT_DOCUMENT_H

#include <cstdint>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::document {

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

    // The child of a mapping under `key`, or an absent node. Linear in the number of children.
    Node find(std::string_view key) const noexcept {
        for (Node child : *this) {
            if (child.key() == key) return child;
        }
        return {};
    }

    class Iterator {
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
    // The children in written order; none for a scalar.
    Iterator begin() const noexcept { return Iterator(exists() && record().first_child != 0 ? at(record().first_child) : Node{}); }
    Iterator end() const noexcept { return Iterator(Node{}); }

private:
    const NodeRecord& record() const noexcept { return records_[index_]; }
    Node at(std::uint32_t index) const noexcept { return {records_, strings_, index}; }
    Node sibling() const noexcept { return record().next_sibling != 0 ? at(record().next_sibling) : Node{}; }

    const NodeRecord* records_ = nullptr;
    const char* strings_ = nullptr;
    std::uint32_t index_ = 0;
};

// One file's tree, with the name that faults are told under.
class Document {
public:
    // Owns what it is given.
    Document(std::string file, std::vector<NodeRecord> records, std::string strings, std::string source);
    // Borrows constant data, which must outlive the document.
    Document(std::string file, std::span<const NodeRecord> records, std::string_view strings);
    Document(Document&&) noexcept = default;
    Document& operator=(Document&&) noexcept = default;
    Document(const Document&) = delete;
    Document& operator=(const Document&) = delete;

    const std::string& file() const noexcept { return file_; }  // relative to the rule folder, '/' between parts
    Node root() const noexcept;                                  // absent for an empty file
    std::span<const NodeRecord> records() const noexcept { return view_; }
    std::string_view strings() const noexcept;
    // The text of one source line without its end, for excerpts; empty where the source is not kept.
    std::string_view source_line(std::uint32_t line) const noexcept;

private:
    std::string file_;
    std::vector<NodeRecord> records_;
    std::vector<char> strings_;  // not a std::string: short strings would move
    std::string source_;
    std::span<const NodeRecord> view_;
    std::string_view strings_view_;
};

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_DOCUMENT_H
