#include "desk/yaml_editor.h"

#include <algorithm>
#include <utility>

#include "desk/desk_error.h"
#include "document/yaml_document.h"
#include "yaml_spans.h"

namespace grainside::desk {

using document::Node;
using document::NodeKind;
using tools::YamlSpans;

namespace {

[[noreturn]] void does_not_fit() {
    throw DeskError{400, "does-not-fit", "the change does not fit into the way this file is written",
                    "make it in the text of the file"};
}

std::size_t sure(std::optional<std::size_t> place) {
    if (!place) does_not_fit();
    return *place;
}

// Whether what is written of it last is a text whose last line has an end, as a block in the last line of a file needs
// it.
bool ends_with_line(const YamlShape& value) {
    const YamlShape* last = &value;
    while (!last->children.empty()) last = &last->children.back().second;
    return last->text.ends_with('\n');
}

Node last_child(Node parent) {
    Node last;
    for (const Node child : parent) last = child;
    return last;
}

}  // namespace

YamlEditor::YamlEditor(std::string text) : text_(std::move(text)) {
    document::Faults faults;
    document_ = document::parse_yaml("", text_, faults);
    if (!document_) throw DeskError{400, "not-yaml", "the file cannot be read as YAML", "mend its text", faults.take()};
}

std::string_view YamlEditor::line_end() const {
    const std::size_t end = text_.find('\n');
    return end != std::string::npos && end > 0 && text_[end - 1] == '\r' ? "\r\n" : "\n";
}

bool YamlEditor::ends_line(std::size_t at) const {
    const std::size_t next = text_.find_first_not_of(" \t\r", at);
    return next == std::string::npos || text_[next] == '\n';
}

void YamlEditor::apply(const Change& change, const YamlShape& meant) {
    std::string changed = text_;
    changed.replace(change.start, change.end - change.start, change.bytes);
    document::Faults faults;
    auto again = document::parse_yaml("", changed, faults);
    if (!again || YamlShape::of(again->root()) != meant) does_not_fit();
    text_ = std::move(changed);
    document_ = std::move(again);
}

void YamlEditor::set(YamlPath path, const std::string& key, const YamlShape& value) {
    YamlShape meant = YamlShape::of(root());
    std::string name = key;
    YamlShape wanted = value;
    // What is missing on the way, or is there without a value, comes with it.
    while (!at_path(root(), path).is_mapping()) {
        const Node there = at_path(root(), path);
        if (path.empty() || (there.exists() && there.kind() != NodeKind::null)) does_not_fit();
        wanted = std::move(YamlShape::mapping().add(name, std::move(wanted)));
        name = path.back();
        path.pop_back();
    }
    const Node mapping = at_path(root(), path);
    YamlShape& parent = *at_path(meant, path);
    const Node there = mapping.find(name);
    if (!there.exists()) {
        parent.add(name, wanted);
        apply(added_key(mapping, name, wanted), meant);
        return;
    }
    *parent.find(name) = wanted;
    const YamlSpans spans(text_, *document_);
    const bool flow = spans.in_brackets(mapping);
    const std::size_t key_at = spans.key_begin(there);
    const std::size_t end = sure(spans.end(there));
    std::string written;
    if (flow) {
        written = written_in_brackets(wanted);
    } else if (wanted.is_scalar() && !ends_line(end)) {
        // A block would take the comment behind it for text.
        written = written_scalar(wanted.text, false);
    } else {
        written = written_in_lines(name, wanted, key_at - spans.line_begin(key_at), line_end());
        written.erase(0, written_scalar(name, false).size() + 1);  // "key:"
        if (written.starts_with(' ')) written.erase(0, 1);
        if (ends_with_line(wanted) && text_.find('\n', end) == std::string::npos) written += line_end();
    }
    const bool in_lines = written.starts_with(line_end());
    if (there.kind() == NodeKind::null) {
        // Lines follow the comment behind the key.
        const std::size_t at = in_lines ? std::min(text_.find_first_of("\r\n", end), text_.size()) : end;
        apply({at, at, in_lines ? written : ' ' + written}, meant);
    } else {
        std::size_t begin = spans.begin(there);
        // What goes on in lines of its own leaves no space behind the colon.
        while (in_lines && begin > key_at && text_[begin - 1] == ' ') --begin;
        apply({begin, end, written}, meant);
    }
}

YamlEditor::Change YamlEditor::added_key(Node mapping, const std::string& key, const YamlShape& value) const {
    const YamlSpans spans(text_, *document_);
    const Node last = last_child(mapping);
    if (spans.in_brackets(mapping)) {
        const std::size_t at = last.exists() ? sure(spans.end(last)) : spans.begin(mapping) + 1;
        return {at, at, (last.exists() ? ", " : "") + written_scalar(key, true) + ": " + written_in_brackets(value)};
    }
    const std::size_t key_at = spans.key_begin(last);
    const std::size_t indent = key_at - spans.line_begin(key_at);
    const std::size_t at = spans.line_end(sure(spans.end(last)));
    std::string bytes(indent, ' ');
    bytes.append(written_in_lines(key, value, indent, line_end()));
    return {at, at, new_lines(at, std::move(bytes), value)};
}

// `bytes` as lines of their own at `at`, where a line begins or the file ends.
std::string YamlEditor::new_lines(std::size_t at, std::string bytes, const YamlShape& value) const {
    const bool closed = at > 0 && text_[at - 1] == '\n';
    if (!closed) bytes.insert(0, line_end());
    if (closed || ends_with_line(value)) bytes += line_end();
    return bytes;
}

void YamlEditor::append(const YamlPath& path, const YamlShape& item) {
    const Node sequence = at_path(root(), path);
    if (!sequence.is_sequence()) does_not_fit();
    YamlShape meant = YamlShape::of(root());
    at_path(meant, path)->add({}, item);
    const YamlSpans spans(text_, *document_);
    const Node last = last_child(sequence);
    if (spans.in_brackets(sequence)) {
        const std::size_t at = last.exists() ? sure(spans.end(last)) : spans.begin(sequence) + 1;
        std::string between = last.exists() ? ", " : "";
        if (last.exists()) {
            // Each on a line of its own where the last one is.
            const std::size_t begin = spans.begin(last);
            const std::size_t line = spans.line_begin(begin);
            const bool alone = begin > line && text_.find_first_not_of(" \t", line) == begin;
            if (alone) between = ',' + std::string(line_end()) + text_.substr(line, begin - line);
        }
        apply({at, at, between + written_in_brackets(item)}, meant);
        return;
    }
    const std::size_t begin = spans.begin(last);
    const std::size_t dash = last.kind() == NodeKind::null ? begin : text_.rfind('-', begin == 0 ? 0 : begin - 1);
    if (dash == std::string::npos) does_not_fit();
    const std::size_t indent = dash - spans.line_begin(dash);
    const bool in_lines = last.is_mapping() && !spans.in_brackets(last);
    std::string bytes(indent, ' ');
    bytes.append("- ").append(in_lines ? written_item_in_lines(item, indent + 2, line_end())
                                       : written_in_brackets(item));
    const std::size_t at = spans.line_end(sure(spans.end(last)));
    apply({at, at, new_lines(at, std::move(bytes), item)}, meant);
}

void YamlEditor::remove(const YamlPath& path) {
    const YamlPath parent_path(path.begin(), path.end() - 1);
    const Node parent = at_path(root(), parent_path);
    const Node child = at_path(root(), path);
    YamlShape meant = YamlShape::of(root());
    YamlShape& parent_shape = *at_path(meant, parent_path);
    const YamlShape* const gone = at_path(meant, path);
    std::erase_if(parent_shape.children, [&](const auto& one) { return &one.second == gone; });
    const bool flow = YamlSpans(text_, *document_).in_brackets(parent);
    apply(flow ? removed_from_brackets(parent, child) : removed_line(parent, child), meant);
}

// With the comma behind it, or of the last one the comma before it.
YamlEditor::Change YamlEditor::removed_from_brackets(Node parent, Node child) const {
    const YamlSpans spans(text_, *document_);
    const auto begin_of = [&](Node node) { return parent.is_mapping() ? spans.key_begin(node) : spans.begin(node); };
    std::optional<std::size_t> before;
    bool passed = false;
    for (const Node one : parent) {
        if (passed) return {begin_of(child), begin_of(one), {}};
        if (one.index() == child.index()) {
            passed = true;
        } else {
            before = spans.end(one);
        }
    }
    return {before ? *before : begin_of(child), sure(spans.end(child)), {}};
}

YamlEditor::Change YamlEditor::removed_line(Node parent, Node child) const {
    const YamlSpans spans(text_, *document_);
    std::size_t begin = 0;
    if (parent.is_mapping()) {
        begin = spans.key_begin(child);
    } else {
        const std::size_t value = spans.begin(child);
        begin = child.kind() == NodeKind::null ? value : text_.rfind('-', value == 0 ? 0 : value - 1);
        if (begin == std::string::npos) does_not_fit();
    }
    const std::size_t line = spans.line_begin(begin);
    if (text_.find_first_not_of(' ', line) == begin) {
        const std::size_t end = spans.line_end(sure(spans.end(child)));
        // The last line may have no end; then that of the line before it goes.
        if (end == text_.size() && (end == 0 || text_[end - 1] != '\n') && line > 0) {
            return {line - line_end().size(), end, {}};
        }
        return {line, end, {}};
    }
    // The first key behind a dash: the next one takes its place.
    bool passed = false;
    for (const Node one : parent) {
        if (passed) return {begin, spans.key_begin(one), {}};
        passed = one.index() == child.index();
    }
    does_not_fit();
}

void YamlEditor::replace(std::size_t start, std::size_t end, std::string_view bytes, const YamlPath& path,
                         std::string_view meant_text) {
    YamlShape meant = YamlShape::of(root());
    YamlShape* const scalar = at_path(meant, path);
    if (scalar == nullptr) does_not_fit();
    *scalar = YamlShape::scalar(meant_text);
    apply({start, end, std::string(bytes)}, meant);
}

}  // namespace grainside::desk
