// Any bytes as a compiled book, first as they come, then with the size and checksum that belong to them, which a fuzzer
// would not find: they are refused, or give trees that can be walked to the end.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>
#include <string_view>
#include <vector>

#include "document/compiled_document.h"
#include "same_trees.h"

namespace {

using grainside::document::Document;
using grainside::document::Faults;
using grainside::document::Node;

void require(bool holds) {
    if (!holds) std::abort();
}

std::size_t count_nodes(Node node, int depth) {
    require(depth <= grainside::document::kMaxDepth + 1);
    std::size_t count = 1;
    for (const Node child : node) count += count_nodes(child, depth + 1);
    return count;
}

void open(std::string_view bytes) {
    std::vector<std::uint64_t> words(bytes.size() / sizeof(std::uint64_t) + 1);
    if (!bytes.empty()) std::memcpy(words.data(), bytes.data(), bytes.size());
    Faults faults;
    const std::vector<Document> documents =
        grainside::document::open_compiled({reinterpret_cast<const char*>(words.data()), bytes.size()}, faults);
    require(!faults.any_errors() || documents.empty());
    for (const grainside::Issue& issue : faults.take()) require(issue.code == "damaged-book");
    for (const Document& document : documents) {
        if (!document.root().exists()) continue;
        require(count_nodes(document.root(), 1) == document.records().size());
        require(grainside::document::same_trees(document.root(), document.root()));
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // A few records and strings hold every way to go wrong.
    if (size > 4096) return 0;
    std::string bytes(reinterpret_cast<const char*>(data), size);
    open(bytes);
    grainside::document::seal_compiled(bytes);
    open(bytes);
    return 0;
}
