#include "yaml_places.h"

#include <algorithm>
#include <cstdint>

#include "document/document.h"
#include "document/faults.h"
#include "document/yaml_document.h"

namespace grainside::tools {
namespace {

bool is_yaml_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

std::size_t offset_of_place(std::string_view yaml, std::uint32_t line, std::uint32_t column) {
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    std::size_t at = yaml.starts_with(kMark) ? kMark.size() : 0;
    for (std::uint32_t n = 1; n < line && at < yaml.size(); ++n) at = std::min(yaml.find('\n', at), yaml.size()) + 1;
    return std::min(at + column - 1, yaml.size());
}

// Walks a scalar's text and its source side by side.
class ScalarWalk {
public:
    ScalarWalk(std::string_view yaml, std::size_t begin, std::string_view text) : yaml_(yaml), text_(text), at_(begin) {
        style_ = at_ < yaml_.size() ? yaml_[at_] : '\0';
        if (style_ == '"' || style_ == '\'') {
            ++at_;
        } else if (style_ == '|' || style_ == '>') {
            at_ = std::min(yaml_.find('\n', at_), yaml_.size());
        } else {
            style_ = ' ';
        }
    }

    // Goes on until `offset` of the text; the place in the source, or nothing where the two do not agree.
    std::optional<std::size_t> to(std::size_t offset) {
        while (done_ < offset) {
            if (!step()) return std::nullopt;
        }
        return at_;
    }

    // Passes white space of the source that the text has already had, so that a word begins here.
    std::size_t at_word() {
        while (at_ < yaml_.size() && is_yaml_space(yaml_[at_]) &&
               !(done_ < text_.size() && is_yaml_space(text_[done_]))) {
            ++at_;
        }
        return at_;
    }

private:
    bool step() {
        if (is_yaml_space(text_[done_])) {
            // As many line feeds and spaces as there are stand for one another.
            const std::size_t before = at_;
            while (at_ < yaml_.size() && is_yaml_space(yaml_[at_])) ++at_;
            if (at_ == before) return style_ == '"' && escape();
            while (done_ < text_.size() && is_yaml_space(text_[done_])) ++done_;
            return true;
        }
        at_word();
        if (at_ >= yaml_.size()) return false;
        if (style_ == '"' && yaml_[at_] == '\\') return escape();
        if (style_ == '\'' && yaml_.substr(at_).starts_with("''") && text_[done_] == '\'') {
            at_ += 2;
            ++done_;
            return true;
        }
        if (yaml_[at_] != text_[done_]) return false;
        ++at_;
        ++done_;
        return true;
    }

    // Those escapes that stand for one byte, and a line's end that is taken out.
    bool escape() {
        if (at_ + 1 >= yaml_.size() || yaml_[at_] != '\\') return false;
        const char letter = yaml_[at_ + 1];
        if (letter == '\n' || letter == '\r') {
            at_ += 2;
            while (at_ < yaml_.size() && is_yaml_space(yaml_[at_])) ++at_;
            return true;
        }
        constexpr std::string_view kLetters = "\"\\/nt ";
        constexpr std::string_view kMeant = "\"\\/\n\t ";
        const std::size_t known = kLetters.find(letter);
        if (known == std::string_view::npos || kMeant[known] != text_[done_]) return false;
        at_ += 2;
        ++done_;
        return true;
    }

    std::string_view yaml_;
    std::string_view text_;
    std::size_t at_;
    std::size_t done_ = 0;
    char style_ = ' ';
};

}  // namespace

YamlPlaces::YamlPlaces(std::string_view yaml, const std::vector<Field>& fields) : yaml_(yaml), scalars_(fields.size()) {
    document::Faults faults;
    const auto document = document::parse_yaml("", std::string(yaml), faults);
    if (!document) return;
    const auto note = [&](const std::string& name, document::Node node) {
        for (std::size_t i = 0; i < fields.size(); ++i) {
            if (fields[i].name != name || fields[i].text != node.text() || scalars_[i]) continue;
            scalars_[i] = Scalar{offset_of_place(yaml, node.line(), node.column()), fields[i].text};
            return;
        }
    };
    for (const document::Node child : document->root().find("listing")) {
        if (child.is_scalar()) note(std::string(child.key()), child);
        if (child.key() != "attributes") continue;
        for (const document::Node attribute : child)
            note("additionalProperty." + std::string(attribute.key()), attribute);
    }
}

std::optional<std::pair<std::size_t, std::size_t>> YamlPlaces::find(std::size_t field, std::size_t start,
                                                                    std::size_t end) const {
    if (!scalars_[field]) return std::nullopt;
    ScalarWalk walk(yaml_, scalars_[field]->begin, scalars_[field]->text);
    if (!walk.to(start)) return std::nullopt;
    const std::size_t from = walk.at_word();
    const auto to = walk.to(end);
    if (!to) return std::nullopt;
    return std::pair(from, *to);
}

std::optional<std::string> YamlPlaces::written(std::size_t field, std::string_view words) const {
    if (!scalars_[field] || scalars_[field]->begin >= yaml_.size()) return std::nullopt;
    const char style = yaml_[scalars_[field]->begin];
    std::string out;
    for (const char c : words) {
        if (style == '"' && (c == '"' || c == '\\')) out += '\\';
        if (style == '\'' && c == '\'') out += '\'';
        out += c;
    }
    return out;
}

}  // namespace grainside::tools
