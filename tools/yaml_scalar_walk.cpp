#include "yaml_scalar_walk.h"

#include <algorithm>

namespace grainside::tools {
namespace {

bool is_yaml_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

YamlScalarWalk::YamlScalarWalk(std::string_view yaml, std::size_t begin, std::string_view text)
    : yaml_(yaml), text_(text), at_(begin) {
    const char first = at_ < yaml_.size() ? yaml_[at_] : ' ';
    if (std::string_view("\"'|>").find(first) != std::string_view::npos) style_ = first;
    if (style_ == '"' || style_ == '\'') {
        ++at_;
    } else if (style_ == '|' || style_ == '>') {
        at_ = std::min(yaml_.find('\n', at_), yaml_.size());
    }
}

std::optional<std::size_t> YamlScalarWalk::to(std::size_t offset) {
    while (done_ < offset) {
        if (!step()) return std::nullopt;
    }
    return at_;
}

std::size_t YamlScalarWalk::at_word() {
    while (at_ < yaml_.size() && is_yaml_space(yaml_[at_]) && !(done_ < text_.size() && is_yaml_space(text_[done_]))) {
        ++at_;
    }
    return at_;
}

bool YamlScalarWalk::step() {
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
bool YamlScalarWalk::escape() {
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

}  // namespace grainside::tools
