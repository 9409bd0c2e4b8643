#include "listing/markdown_cut.h"

#include <algorithm>
#include <cstddef>
#include <optional>

namespace grainside::listing {
namespace {

// Offsets into the file: the heading's words, and the lines that it takes.
struct Heading {
    std::size_t text_begin;
    std::size_t text_end;
    std::size_t begin;
    std::size_t end;
};

bool is_blank_char(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}
bool is_blank(std::string_view text) {
    return std::all_of(text.begin(), text.end(), is_blank_char);
}

std::string_view trim(std::string_view text) {
    while (!text.empty() && is_blank_char(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank_char(text.back())) text.remove_suffix(1);
    return text;
}

std::size_t run_of(std::string_view text, char c) {
    return std::min(text.find_first_not_of(c), text.size());
}

// The line without the up to three spaces that change nothing; nothing for a line that is indented further.
std::optional<std::string_view> unindented(std::string_view line) {
    const std::size_t spaces = run_of(line, ' ');
    if (spaces > 3 || line.substr(spaces).starts_with('\t')) return std::nullopt;
    return line.substr(spaces);
}

// The words of '## Words ##', whatever its level; `level` 0 = no such heading.
std::string_view atx_words(std::string_view line, std::size_t& level) {
    level = run_of(line, '#');
    const bool is_heading = level >= 1 && level <= 6 && (level == line.size() || is_blank_char(line[level]));
    if (!is_heading) {
        level = 0;
        return {};
    }
    std::string_view words = trim(line.substr(level));
    const std::size_t last = words.find_last_not_of('#');
    if (last == std::string_view::npos) return {};
    if (last + 1 < words.size() && is_blank_char(words[last])) words = trim(words.substr(0, last));
    return words;
}

// The length of the run of ` or ~ that opens or closes fenced code, 0 if there is none.
std::size_t fence_length(std::string_view line) {
    if (line.empty() || (line.front() != '`' && line.front() != '~')) return 0;
    const std::size_t length = run_of(line, line.front());
    if (length < 3) return 0;
    const bool is_code_in_line = line.front() == '`' && line.find('`', length) != std::string_view::npos;
    return is_code_in_line ? 0 : length;
}

// Quotes and list items: what they hold is no heading of the file.
bool begins_container(std::string_view line) {
    if (line.starts_with('>')) return true;
    std::size_t marker = 0;
    if (line.starts_with('-') || line.starts_with('*') || line.starts_with('+')) {
        marker = 1;
    } else {
        const std::size_t digits = std::min(line.find_first_not_of("0123456789"), line.size());
        if (digits == 0 || digits > 9 || digits == line.size() || (line[digits] != '.' && line[digits] != ')')) {
            return false;
        }
        marker = digits + 1;
    }
    return marker == line.size() || is_blank_char(line[marker]);
}

bool is_underline(std::string_view line) {
    const std::size_t length = run_of(line, '=');
    return length > 0 && is_blank(line.substr(length));
}

// Also the '---' under a second-level heading, which ends a paragraph as well.
bool is_thematic_break(std::string_view line) {
    if (line.empty() || (line.front() != '-' && line.front() != '*' && line.front() != '_')) return false;
    const char mark = line.front();
    return std::all_of(line.begin(), line.end(), [&](char c) { return c == mark || is_blank_char(c); }) &&
           std::count(line.begin(), line.end(), mark) >= 3;
}

std::optional<Heading> find_heading(std::string_view file) {
    const auto offset_of = [&](std::string_view part) { return static_cast<std::size_t>(part.data() - file.data()); };
    // Where the paragraph begins that an underline would make a heading; npos = there is none.
    constexpr std::size_t kNone = std::string_view::npos;
    std::size_t paragraph = kNone;
    bool in_container = false;
    std::string_view fence;  // the run that opened fenced code
    std::size_t next = 0;
    for (std::size_t begin = 0; begin < file.size(); begin = next) {
        const std::size_t line_break = file.find('\n', begin);
        next = line_break == std::string_view::npos ? file.size() : line_break + 1;
        const std::string_view whole = file.substr(begin, next - begin);
        const auto line = unindented(whole);

        if (!fence.empty()) {
            if (line && run_of(*line, fence.front()) >= fence.size() &&
                is_blank(line->substr(run_of(*line, fence.front())))) {
                fence = {};
            }
            continue;
        }
        if (is_blank(whole)) {
            paragraph = kNone;
            in_container = false;
            continue;
        }
        if (!line) {
            // Indented code, unless it goes on with a paragraph.
            continue;
        }
        if (const std::size_t length = fence_length(*line); length > 0) {
            fence = line->substr(0, length);
            paragraph = kNone;
            continue;
        }
        std::size_t level = 0;
        const std::string_view words = atx_words(*line, level);
        if (level == 1 && !words.empty()) {
            return Heading{offset_of(words), offset_of(words) + words.size(), begin, next};
        }
        if (paragraph != kNone && is_underline(*line)) {
            const std::string_view text = trim(file.substr(paragraph, begin - paragraph));
            return Heading{offset_of(text), offset_of(text) + text.size(), paragraph, next};
        }
        if (level > 0 || is_thematic_break(*line)) {
            paragraph = kNone;
            in_container = false;
        } else if (begins_container(*line)) {
            paragraph = kNone;
            in_container = true;
        } else if (paragraph == kNone && !in_container) {
            paragraph = begin;
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<Field> cut_markdown(std::string_view file) {
    std::vector<Field> fields;
    const auto add = [&](std::string_view name, std::string_view text) {
        if (!is_blank(text)) fields.push_back({name, text});
    };
    const auto heading = find_heading(file);
    if (!heading) {
        add("description", file);
        return fields;
    }
    add("description", file.substr(0, heading->begin));
    add("name", file.substr(heading->text_begin, heading->text_end - heading->text_begin));
    add("description", file.substr(heading->end));
    return fields;
}

}  // namespace grainside::listing
