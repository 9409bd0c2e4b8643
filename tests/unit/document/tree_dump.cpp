#include "tree_dump.h"

#include <gtest/gtest.h>

#include <optional>
#include <utility>

#include "document/yaml_document.h"

namespace grainside::document {
namespace {

std::string in_quotes(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '\n') {
            out += "\\n";
        } else if (c == '"' || c == '\\') {
            (out += '\\') += c;
        } else {
            out += c;
        }
    }
    return out + '"';
}

void append_places(std::string& out, Node node, std::size_t depth) {
    out.append(depth, ' ');
    out += std::to_string(node.line()) + ':' + std::to_string(node.column());
    if (!node.key().empty()) out += ' ' + std::string(node.key()) + " =";
    switch (node.kind()) {
        case NodeKind::null:
            out += " null";
            break;
        case NodeKind::scalar:
            out += ' ' + in_quotes(node.text()) + (node.quoted() ? " quoted" : "");
            break;
        case NodeKind::sequence:
            out += " []";
            break;
        case NodeKind::mapping:
            out += " {}";
            break;
    }
    out += '\n';
    for (const Node child : node) append_places(out, child, depth + 1);
}

}  // namespace

std::string dump(Node node) {
    if (!node.exists()) return "absent";
    if (node.kind() == NodeKind::null) return "null";
    if (node.is_scalar()) return in_quotes(node.text());
    std::string inner;
    for (const Node child : node) {
        if (!inner.empty()) inner += ", ";
        if (node.is_mapping()) inner += in_quotes(child.key()) + ": ";
        inner += dump(child);
    }
    return node.is_mapping() ? '{' + inner + '}' : '[' + inner + ']';
}

std::string dump_places(Node node) {
    std::string out;
    append_places(out, node, 0);
    return out;
}

std::string dump(std::vector<Issue> issues) {
    std::string out;
    for (const Issue& issue : issues) {
        if (!out.empty()) out += "; ";
        out += std::to_string(issue.line) + ':' + std::to_string(issue.column) + ' ' + issue.code;
    }
    return out;
}

Document parse_good(std::string_view text) {
    Faults faults;
    std::optional<Document> document = parse_yaml("test.yaml", std::string(text), faults);
    for (const Issue& issue : faults.take()) ADD_FAILURE() << to_text(issue);
    if (!document) return {"test.yaml", std::vector<NodeRecord>(), "", ""};
    return std::move(*document);
}

std::string faults_of(std::string_view text) {
    Faults faults;
    const std::optional<Document> document = parse_yaml("test.yaml", std::string(text), faults);
    EXPECT_EQ(document.has_value(), !faults.any_errors());
    return dump(faults.take());
}

}  // namespace grainside::document
