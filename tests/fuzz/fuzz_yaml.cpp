// Any bytes as a rule file: parsing neither crashes nor is slow, faults have places inside of the text and are safe to
// print, and an accepted document compiles, opens and equals itself.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/compiled_document.h"
#include "document/utf8.h"
#include "document/yaml_document.h"
#include "same_trees.h"

namespace {

using grainside::document::Document;
using grainside::document::Faults;
using grainside::document::Node;

void require(bool holds) {
    if (!holds) std::abort();
}

bool is_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto decoded = grainside::document::decode_utf8(text, at);
        if (!decoded.valid) return false;
        at += decoded.length;
    }
    return true;
}

void check_issue(const grainside::Issue& issue, std::size_t line_count) {
    require(issue.line <= line_count);
    require(!issue.code.empty() && !issue.message.empty());
    const std::string text = to_text(issue);
    require(is_utf8(text));
    for (const char c : text) require(c == '\n' || static_cast<unsigned char>(c) >= 0x20);
}

void check_texts(Node node, std::size_t line_count) {
    require(node.line() >= 1 && node.line() <= line_count && node.column() >= 1);
    require(is_utf8(node.text()) && is_utf8(node.key()));
    for (const Node child : node) check_texts(child, line_count);
}

void check_round_trip(Document document) {
    std::vector<Document> documents;
    documents.push_back(std::move(document));
    const std::string bytes = grainside::document::compile_documents(documents);
    std::vector<std::uint64_t> words(bytes.size() / sizeof(std::uint64_t));
    std::memcpy(words.data(), bytes.data(), bytes.size());
    Faults faults;
    const auto opened =
        grainside::document::open_compiled({reinterpret_cast<const char*>(words.data()), bytes.size()}, faults);
    require(!faults.any_errors() && opened.size() == 1);
    require(opened[0].file() == documents[0].file());
    require(grainside::document::same_trees(opened[0].root(), documents[0].root()));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // What longer inputs can reach are the limits, which have tests of their own.
    if (size > 4096) return 0;
    const std::string text(reinterpret_cast<const char*>(data), size);
    const auto line_count = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
    Faults faults;
    std::optional<Document> document = grainside::document::parse_yaml("fuzz.yaml", text, faults);
    require(document.has_value() != faults.any_errors());
    for (const grainside::Issue& issue : faults.take()) check_issue(issue, line_count);
    if (!document) return 0;
    if (document->root().exists()) check_texts(document->root(), line_count);
    check_round_trip(std::move(*document));
    return 0;
}
