// Reading listings one after the other from a file, a pipe or memory.
//
//     const std::string_view table = "Artikel;Titel;Preis\n"
//                                    "b-1;Belt in split leather;29.00\n"
//                                    "b-2;\"Belt in \"\"full grain\"\" leather\";39.00\n"
//                                    "b-3;Belt;19.00;15.00\n";
//     auto reader = grainside::ListingReader::from_memory(
//         "belts.csv", table, {.columns = {{"Artikel", "id"}, {"Titel", "name"}, {"Preis", "skip"}}});
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.next(listing, issues)) std::cout << listing.id << ": " << listing.fields.front().text << '\n';
//     // prints: b-1: Belt in split leather
//     // prints: b-2: Belt in "full grain" leather
//     for (const grainside::Issue& issue : issues) std::cout << "line " << issue.line << ": " << issue.code << '\n';
//     // prints: line 4: row-too-wide
//     const auto file = grainside::ListingReader::open("no/such/catalog.jsonl", {});
//     if (!file) std::cout << file.issues().front().code << '\n';
//     // prints: cannot-open
//
// A broken record is reported in `issues` with its file, line and column and the rest goes on. Memory is bounded by the
// largest record (at most kMaxRecordBytes), for JSON arrays by the file (at most kMaxWholeFileBytes), and of a packed
// source by the unpacked sizes of these and a window of at most 128 MiB.
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

// automatic: by file name (.json, .jsonl, .ndjson, .csv, .tsv, .md, .markdown, .html, .htm, .xhtml, else text; .gz and
// .zst behind it do not count); for standard input by the first byte that is no white space ('{' JSON Lines, or JSON
// where a line break follows it, '[' a JSON array, '<' a page, else text); memory named "-" or "<stdin>" likewise.
// text: one listing, the whole file is its `description`. markdown: one listing, the first '# ' heading is its `name`.
// json: one Product object, an array of them, or an object that is no product and holds them as the list in one of its
// members, whatever the others are ({"total": 2, "products": [...]}; "@graph" of JSON-LD). json_lines: one Product
// object a line. csv: comma-separated values (RFC 4180) with a header row, one product a row. tsv: the same with tabs;
// values in double quotes are read as in csv, as spreadsheets write them (the media type text/tab-separated-values
// knows no quotes). html: a saved page of at most kMaxRecordBytes, in UTF-8 or in what its <meta> states. Of the best
// kind that it has: the schema.org products of its JSON-LD; those of its microdata; its main text as one listing. One
// product of the first two kinds also gets what a shopper reads beside it: a description that it lacks or breaks off,
// what the main text says beyond the description of JSON-LD, rows of a specification that it does not hold. Only texts
// of JSON-LD in UTF-8 know where they stand; others have Writing::nowhere.
//
// Whatever the format and the name, a source that begins as gzip or zstd does is unpacked while it is read. One
// that begins as no text does (pictures, PDF, archives, programs) is one error.
enum class InputFormat : std::uint8_t { automatic, text, markdown, json, json_lines, html, csv, tsv };

// Where the first byte of a source stands in a larger one that it is a part of (line_partitions.h). The default: it is
// no part.
struct SourceStart {
    std::uint64_t record = 1;  // the number of the first record
    std::uint64_t line = 1;    // the number of the first line
    std::uint64_t byte = 0;    // bytes before it
};

// What a column of a table holds, for names that the reader does not know or reads otherwise
// (lib/listing/column_names.cpp has those that it knows). `column` is the name in the header row, as it is written or
// by its words in any case of letters; "*" = every column that no mapping names. `member` is "name", "description",
// "material", "category", "property" (a field "additionalProperty.COLUMN"), "additionalProperty.NAME", "id",
// "language", "region", "seller" or "skip".
struct ColumnMapping {
    std::string column;
    std::string member;
};

struct ReadOptions {
    InputFormat format = InputFormat::automatic;
    // JSON Lines only, others ignore it: the ids that are made, places and issues are then those of the whole.
    SourceStart start = {};
    // Of csv and tsv: one of , ; | : or a tab; NUL = what a first line "sep=;" says, which is no row in any case; else
    // a tab for tsv, and for csv what its header row has: a comma, else a semicolon, else a tab.
    char separator = '\0';
    // Of csv and tsv. Columns without a mapping go by their names: known ones hold a name, a description and so on, or
    // are skipped (prices, links, codes); all others are properties, because a shopper may read them.
    std::vector<ColumnMapping> columns = {};
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
    // next call. Issues are appended: "not-text" (a picture, a program, an archive ...; nothing is read),
    // "json-syntax", "not-an-object", "several-lists" (which member of a JSON file holds the products cannot be told;
    // nothing is read), "wrong-member-type" (warning, member ignored), "no-text" (no field with text; the record is
    // skipped), "record-too-large", "file-too-large", "not-utf8" (warning, the bytes are read as gaps; an error for
    // UTF-16), "nul-byte" (warning), "read-error", "too-many-issues". Of packed sources also "broken-packing": what
    // came before it was read. Of tables also "no-header", "no-text-column", "no-such-column", "no-such-member",
    // "no-such-separator", "too-many-columns", "lone-carriage-return" (nothing is read), "unclosed-quote",
    // "text-behind-quote", "row-too-wide" (the row is skipped), "row-too-short", "column-without-name", "column-twice"
    // (warnings); "no-text" is a warning there, one for all such rows. Of pages also "page-too-deep" and
    // "page-too-large-tag" (warnings: elements nested more than 512 deep, attributes of a tag beyond 256 are left out),
    // and "json-syntax" as a warning, because a page may say the same in another way.
    bool next(Listing& listing, std::vector<Issue>& issues);

    // Bytes read so far, unpacked.
    std::uint64_t bytes_read() const noexcept;
    // How far reading is: bytes taken from the source as it is, packed or not, and how many it states to have (0 = it
    // does not say).
    std::uint64_t source_bytes() const noexcept;
    std::uint64_t stated_size() const noexcept;

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
