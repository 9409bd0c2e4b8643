// Cutting a file of JSON Lines into parts that are read apart, on other threads or machines.
//
//     const std::string_view catalog =
//         "{\"sku\":\"b-1\",\"name\":\"Belt in split leather\"}\n"
//         "{\"name\":\"Belt in cork\"}\n";
//     std::ofstream("catalog.jsonl") << catalog;
//     const auto parts = grainside::plan_line_partitions("catalog.jsonl", 40);
//     if (!parts) return 2;
//     for (const grainside::LinePartition& part : parts.value()) {  // each of them anywhere, in any order
//         const std::string_view bytes = catalog.substr(part.start.byte, part.end - part.start.byte);
//         auto reader = grainside::ListingReader::from_memory(
//             "catalog.jsonl", bytes, {.format = grainside::InputFormat::json_lines, .start = part.start});
//         grainside::Listing listing;
//         std::vector<grainside::Issue> issues;
//         while (reader.next(listing, issues)) std::cout << listing.id << ", line " << listing.line << '\n';
//     }
//     // prints: b-1, line 1
//     // prints: catalog.jsonl:2, line 2
//     std::cout << grainside::plan_line_partitions("-", 40).issues().front().code << '\n';
//     // prints: not-a-file
//
// The listings and issues of all parts, one part behind the other, are those of the whole file, made ids and places
// included; only what is left out behind kMaxIssuesPerCall issues is counted a part. Planning is one pass that reads
// the file once and parses nothing but the records that may hold "@graph", whose nodes count one by one. Memory is
// bounded by the longest line (at most kMaxRecordBytes) and 40 bytes a part. Thread-safe.
#ifndef GRAINSIDE_LINE_PARTITIONS_H
#define GRAINSIDE_LINE_PARTITIONS_H

#include <cstdint>
#include <string>
#include <vector>

#include "grainside/listing_reader.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {

// Whole lines: [start.byte, end) of the file.
struct LinePartition {
    SourceStart start;
    std::uint64_t end = 0;
};

// Each part but the last ends with the line that fills it up to `bytes` (0 counts as 1; of a first part that holds NUL
// bytes, up to 4 KiB at least). No part is empty, an empty file has none; a packed file, one that is no text and one in
// another encoding than UTF-8 is one part. Issues: "cannot-open", "is-directory", "not-a-file" (standard input and what
// else cannot be read again), "read-error".
Result<std::vector<LinePartition>> plan_line_partitions(const std::string& path, std::uint64_t bytes);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LINE_PARTITIONS_H
