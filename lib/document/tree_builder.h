// Building a document's records from the events of a parser: what YAML allows and we do not is refused here.
//
// Knows nothing of the parser behind it. Not thread-safe; one per file.
#ifndef GRAINSIDE_DOCUMENT_TREE_BUILDER_H
#define GRAINSIDE_DOCUMENT_TREE_BUILDER_H

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"

namespace grainside::document {

// A position in the source: as people count it, and as a byte offset.
struct SourceMark {
    Place place;
    std::size_t offset = 0;
};

// Thrown by a builder that reported a fault after which going on would be of no use or too dear.
struct StopReading {};

class TreeBuilder {
public:
    // `file` and `source` must outlive the builder.
    TreeBuilder(std::string_view file, std::string_view source, Faults& faults)
        : file_(file), source_(source), faults_(faults) {}

    // Reports an error at `mark`; the events may go on.
    void fault(const SourceMark& mark, std::string_view code, std::string message, std::string hint = {});
    bool failed() const noexcept { return failed_; }

    // The events, in source order. Throw StopReading.
    void null(const SourceMark& mark);
    void scalar(const SourceMark& mark, std::string_view text);
    void open(const SourceMark& mark, NodeKind kind);
    void close();
    // Stands for a node that was reported as a fault already.
    void refused(const SourceMark& mark);

    // The collection that is open, if any.
    std::optional<SourceMark> innermost() const;

    // REQUIRES: not failed, every collection closed.
    Document finish();

private:
    struct Text {
        std::uint32_t offset = 0;
        std::uint32_t length = 0;
    };
    struct Key {
        Text text;
        SourceMark mark;
    };
    struct Frame {
        std::uint32_t record = 0;
        std::uint32_t last_child = 0;
        NodeKind kind = NodeKind::null;
        bool key_is_next = false;
        SourceMark mark;
        Key key;                    // of the value that is next
        std::size_t first_key = 0;  // its keys in keys_ begin here
    };

    bool at_key() const { return !frames_.empty() && frames_.back().key_is_next; }
    void take_key(const SourceMark& mark, std::string_view text);
    NodeRecord& append(const SourceMark& mark, NodeKind kind);
    void report_duplicates(std::size_t first_key);
    void check_depth(const SourceMark& mark);
    SourceMark place_of_empty(const SourceMark& mark) const;
    Text add_text(std::string_view text);

    std::string_view file_;
    std::string_view source_;
    Faults& faults_;
    bool failed_ = false;
    std::size_t skipped_depth_ = 0;  // inside of a collection that stands where a key should
    std::vector<Frame> frames_;
    std::vector<Key> keys_;  // of all open mappings
    std::vector<NodeRecord> records_;
    std::vector<Place> key_places_;
    std::string strings_;
    std::map<std::string, Text, std::less<>> interned_;  // keys repeat a lot; equal keys have equal offsets
};

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_TREE_BUILDER_H
