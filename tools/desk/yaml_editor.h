// Changing what a YAML text says and nothing else of it: comments, order and the writing of all that stays are kept
// byte for byte. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_YAML_EDITOR_H
#define GRAINSIDE_TOOLS_DESK_YAML_EDITOR_H

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "desk/yaml_shape.h"
#include "document/document.h"

namespace grainside::desk {

// Every change is read again: where the new text does not say what was meant, DeskError 400 "does-not-fit" is thrown
// and the text is what it was. New items and keys stand behind their siblings and are written as those are.
class YamlEditor {
public:
    // Throws DeskError 400 "not-yaml" with its faults.
    explicit YamlEditor(std::string text);

    const std::string& text() const noexcept { return text_; }
    document::Node root() const noexcept { return document_->root(); }

    // Gives the value at `path` + `key` in place of the one there, or adds the key. Mappings on the way that are
    // missing or empty are made. REQUIRES: the root is a mapping.
    void set(YamlPath path, const std::string& key, const YamlShape& value);
    // Adds an item to the sequence at `path`.
    void append(const YamlPath& path, const YamlShape& item);
    // Takes out the key or item at `path`; a line goes with the comment behind it. REQUIRES: it is there.
    void remove(const YamlPath& path);
    // Puts `bytes` in place of text()[start, end), after which the scalar at `path` says `meant`.
    void replace(std::size_t start, std::size_t end, std::string_view bytes, const YamlPath& path,
                 std::string_view meant);

private:
    struct Change {
        std::size_t start, end;
        std::string bytes;
    };
    // Makes the change if the text says `meant` then.
    void apply(const Change& change, const YamlShape& meant);
    Change added_key(document::Node mapping, const std::string& key, const YamlShape& value) const;
    Change removed_from_brackets(document::Node parent, document::Node child) const;
    Change removed_line(document::Node parent, document::Node child) const;
    std::string new_lines(std::size_t at, std::string bytes, const YamlShape& value) const;
    std::string_view line_end() const;
    // Whether nothing but blanks stands behind `at` on its line.
    bool ends_line(std::size_t at) const;

    std::string text_;
    std::optional<document::Document> document_;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_YAML_EDITOR_H
