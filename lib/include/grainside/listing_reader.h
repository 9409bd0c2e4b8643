// Reading listings one after the other from a file, a pipe or memory.
//
//     auto reader = grainside::ListingReader::open("catalog.jsonl", {});
//     if (!reader) return report(reader.issues());
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.value().next(listing, issues)) { ... check(listing) ... }
//
// A broken record is reported in `issues` with its file, line and column and the rest goes on. Memory is bounded by the
// largest record (at most kMaxRecordBytes), for JSON arrays by the file (at most kMaxWholeFileBytes).
// Not thread-safe; movable.
#ifndef GRAINSIDE_LISTING_READER_H
#define GRAINSIDE_LISTING_READER_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/listing.h"
#include "grainside/result.h"

namespace grainside::listing {
class ByteSource;
}

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMaxRecordBytes = std::size_t{64} << 20;
inline constexpr std::size_t kMaxWholeFileBytes = std::size_t{512} << 20;
// At most so many issues from one call of `next`, however many broken records it passes over; one more
// ("too-many-issues") then says how many were left out.
inline constexpr std::size_t kMaxIssuesPerCall = 1000;

// automatic: by file name (.json, .jsonl, .ndjson, .md, .markdown, else text); for standard input by the first byte
// that is no white space ('{' JSON Lines, '[' a JSON array, else text); memory named "-" or "<stdin>" likewise.
// text: one listing, the whole file is its `description`. markdown: one listing, the first '# ' heading is its `name`.
// json: one Product object or an array of them. json_lines: one Product object a line.
enum class InputFormat : std::uint8_t { automatic, text, markdown, json, json_lines, html, csv, tsv };

// Where the first byte of a source stands in a larger one that it is a part of (line_partitions.h). The default: it is
// no part.
struct SourceStart {
    std::uint64_t record = 1;  // the number of the first record
    std::uint64_t line = 1;    // the number of the first line
    std::uint64_t byte = 0;    // bytes before it
};

struct ReadOptions {
    InputFormat format = InputFormat::automatic;
    // JSON Lines only, others ignore it: the ids that are made, places and issues are then those of the whole.
    SourceStart start = {};
};

class ListingReader {
public:
    // `path` "-" is standard input. Issues: "cannot-open", "is-directory".
    static Result<ListingReader> open(const std::string& path, const ReadOptions& options);
    // Reads from bytes that the caller keeps alive; `name` is what issues call the source.
    static ListingReader from_memory(std::string name, std::string_view bytes, const ReadOptions& options);

    ListingReader(ListingReader&&) noexcept;
    ListingReader& operator=(ListingReader&&) noexcept;
    ~ListingReader();

    // Fills `listing` and returns true, or returns false at the end of the input. Views in `listing` live until the
    // next call. Issues are appended: "json-syntax", "not-an-object", "wrong-member-type" (warning, member ignored),
    // "no-text" (no field with text; the record is skipped), "record-too-large", "file-too-large", "not-utf8" (warning,
    // the bytes are read as gaps; an error for UTF-16), "nul-byte" (warning), "read-error", "too-many-issues".
    bool next(Listing& listing, std::vector<Issue>& issues);

    // Bytes taken from the source so far.
    std::uint64_t bytes_read() const noexcept;

private:
    class Source;
    friend class ListingBatches;
    explicit ListingReader(std::unique_ptr<Source> source);
    listing::ByteSource& bytes() noexcept;
    // Settled by the name or the first bytes, for which this may wait.
    InputFormat format();
    bool source_stays() const noexcept;
    std::unique_ptr<Source> source_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LISTING_READER_H
