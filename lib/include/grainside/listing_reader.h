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

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMaxRecordBytes = std::size_t{64} << 20;
inline constexpr std::size_t kMaxWholeFileBytes = std::size_t{512} << 20;
// At most so many issues from one call of `next`, however many broken records it passes over; one more
// ("too-many-issues") then says how many were left out.
inline constexpr std::size_t kMaxIssuesPerCall = 1000;

// automatic: by file name (.json, .jsonl, .ndjson, .md, .markdown, .html, .htm, .xhtml, else text); for standard input
// by the first byte that is no white space ('{' JSON Lines, '[' a JSON array, '<' a page, else text); memory named "-" or "<stdin>" likewise.
// text: one listing, the whole file is its `description`. markdown: one listing, the first '# ' heading is its `name`.
// json: one Product object or an array of them. json_lines: one Product object a line.
// html: a saved page of at most kMaxRecordBytes, in UTF-8 or in what its <meta> states. Of the best kind that it has: the
// schema.org products of its JSON-LD; those of its microdata; its main text as one listing. One product of the first two
// kinds also gets what a shopper reads beside it: a description that it lacks or breaks off, rows of a specification that
// it does not hold. Only texts of JSON-LD in UTF-8 know where they stand; others have Writing::nowhere.
enum class InputFormat : std::uint8_t { automatic, text, markdown, json, json_lines, html, csv, tsv };

struct ReadOptions {
    InputFormat format = InputFormat::automatic;
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
    // the bytes are read as gaps; an error for UTF-16), "nul-byte" (warning), "read-error", "too-many-issues"; of pages
    // also "page-too-deep" and "page-too-large-tag" (warnings: elements nested more than 512 deep, attributes of a tag
    // beyond 256 are left out), and "json-syntax" as a warning, because a page may say the same in another way.
    bool next(Listing& listing, std::vector<Issue>& issues);

    // Bytes taken from the source so far.
    std::uint64_t bytes_read() const noexcept;

private:
    class Source;
    explicit ListingReader(std::unique_ptr<Source> source);
    std::unique_ptr<Source> source_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LISTING_READER_H
