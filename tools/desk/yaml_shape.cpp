#include "desk/yaml_shape.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <cstdio>

namespace grainside::desk {

using document::Node;
using document::NodeKind;

namespace {

constexpr std::size_t kStep = 2;  // spaces of indentation
constexpr std::size_t kNoIndex = static_cast<std::size_t>(-1);

std::size_t index_of(std::string_view step) {
    std::size_t index = kNoIndex;
    const auto [end, fault] = std::from_chars(step.data(), step.data() + step.size(), index);
    return fault == std::errc() && end == step.data() + step.size() ? index : kNoIndex;
}

// A plain scalar that says nothing but its characters (YAML 1.2.2, 7.3.3, and more strictly).
bool is_plain(std::string_view text, bool in_brackets) {
    constexpr std::string_view kNulls[] = {"~", "null", "Null", "NULL"};
    if (text.empty() || text.front() == ' ' || text.back() == ' ' || text.back() == ':') return false;
    if (std::find(std::begin(kNulls), std::end(kNulls), text) != std::end(kNulls)) return false;
    const bool negative = text.size() > 1 && text[0] == '-' && text[1] >= '0' && text[1] <= '9';
    if (!negative && std::string_view("-?:,[]{}#&*!|>'\"%@`=<.").find(text.front()) != std::string_view::npos)
        return false;
    if (text.find(": ") != std::string_view::npos || text.find(" #") != std::string_view::npos) return false;
    if (in_brackets && text.find_first_of(",[]{}:") != std::string_view::npos) return false;
    return std::none_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte < 0x20 || byte == 0x7F;
    });
}

std::string in_quotes(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out.append(1, '\\').append(1, c);
        } else if (c == '\n') {
            out += "\\n";
        } else if (c == '\t') {
            out += "\\t";
        } else if (byte < 0x20 || byte == 0x7F) {
            std::array<char, 8> escape{};
            std::snprintf(escape.data(), escape.size(), "\\x%02x", static_cast<unsigned>(byte));
            out += escape.data();
        } else {
            out += c;
        }
    }
    return out += '"';
}

bool stands_in_lines(const YamlShape& shape) {
    const auto is_collection = [](const auto& child) { return !child.second.children.empty(); };
    if (shape.is_sequence()) return std::any_of(shape.children.begin(), shape.children.end(), is_collection);
    return std::any_of(shape.children.begin(), shape.children.end(), [](const auto& child) {
        return stands_in_lines(child.second) ||
               (child.second.is_scalar() && child.second.text.find('\n') != std::string::npos);
    });
}

// Of several lines, behind its key; nothing where a block would not give it back.
std::string written_block(std::string_view text, std::size_t indent, std::string_view line_end) {
    const bool plain = text.find('\n') != std::string_view::npos && text.front() != ' ' && text.front() != '\n' &&
                       !text.ends_with("\n\n") && std::none_of(text.begin(), text.end(), [](char c) {
                           const auto byte = static_cast<unsigned char>(c);
                           return (byte < 0x20 && c != '\n') || byte == 0x7F;
                       });
    if (!plain) return {};
    std::string out = text.back() == '\n' ? "|" : "|-";
    if (text.back() == '\n') text.remove_suffix(1);
    while (true) {
        const std::size_t end = text.find('\n');
        const std::string_view line = text.substr(0, end);
        out += line_end;
        if (!line.empty()) out.append(indent, ' ').append(line);
        if (end == std::string_view::npos) return out;
        text.remove_prefix(end + 1);
    }
}

}  // namespace

YamlShape YamlShape::of(Node node) {
    YamlShape shape{node.kind(), std::string(node.text()), {}};
    for (const Node child : node) shape.children.emplace_back(std::string(child.key()), of(child));
    return shape;
}

YamlShape YamlShape::scalar(std::string_view text) {
    return {NodeKind::scalar, std::string(text), {}};
}

YamlShape& YamlShape::add(std::string_view key, YamlShape child) {
    children.emplace_back(std::string(key), std::move(child));
    return *this;
}

YamlShape* YamlShape::find(std::string_view key) {
    const auto found =
        std::find_if(children.begin(), children.end(), [&](const auto& child) { return child.first == key; });
    return is_mapping() && found != children.end() ? &found->second : nullptr;
}

YamlShape* at_path(YamlShape& root, std::span<const std::string> path) {
    YamlShape* at = &root;
    for (const std::string& step : path) {
        if (at->is_sequence()) {
            const std::size_t index = index_of(step);
            at = index < at->children.size() ? &at->children[index].second : nullptr;
        } else {
            at = at->find(step);
        }
        if (at == nullptr) return nullptr;
    }
    return at;
}

Node at_path(Node root, std::span<const std::string> path) {
    Node at = root;
    for (const std::string& step : path) {
        if (!at.is_sequence()) {
            at = at.is_mapping() ? at.find(step) : Node();
            continue;
        }
        std::size_t left = index_of(step);
        Node found;
        for (const Node child : at) {
            if (left-- == 0) {
                found = child;
                break;
            }
        }
        at = found;
    }
    return at;
}

std::string written_scalar(std::string_view text, bool in_brackets) {
    return is_plain(text, in_brackets) ? std::string(text) : in_quotes(text);
}

std::string written_in_brackets(const YamlShape& shape) {
    if (shape.is_scalar()) return written_scalar(shape.text, true);
    if (shape.kind == NodeKind::null) return "~";
    std::string out = shape.is_mapping() ? "{" : "[";
    for (const auto& [key, child] : shape.children) {
        if (out.size() > 1) out += ", ";
        if (shape.is_mapping()) out.append(written_scalar(key, true)).append(": ");
        out += written_in_brackets(child);
    }
    return out += shape.is_mapping() ? '}' : ']';
}

std::string written_in_lines(std::string_view key, const YamlShape& shape, std::size_t indent,
                             std::string_view line_end) {
    std::string out = written_scalar(key, false) + ':';
    if (shape.is_scalar()) {
        const std::string block = written_block(shape.text, indent + kStep, line_end);
        return out.append(" ").append(block.empty() ? written_scalar(shape.text, false) : block);
    }
    // A section of the file stands in lines whatever it holds: more comes into it.
    const bool in_lines = stands_in_lines(shape) || (indent == 0 && shape.is_mapping() && !shape.children.empty());
    if (!in_lines) return out.append(" ").append(written_in_brackets(shape));
    for (const auto& [name, child] : shape.children) {
        out.append(line_end).append(indent + kStep, ' ');
        if (shape.is_mapping()) {
            out += written_in_lines(name, child, indent + kStep, line_end);
        } else {
            out.append("- ").append(written_in_brackets(child));
        }
    }
    return out;
}

std::string written_item_in_lines(const YamlShape& item, std::size_t indent, std::string_view line_end) {
    std::string out;
    for (const auto& [key, child] : item.children) {
        if (!out.empty()) out.append(line_end).append(indent, ' ');
        out += written_in_lines(key, child, indent, line_end);
    }
    return out;
}

}  // namespace grainside::desk
