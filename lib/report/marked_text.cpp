#include "report/marked_text.h"

#include <algorithm>
#include <cstdint>
#include <vector>

#include "document/inert_text.h"
#include "document/utf8.h"
#include "report/cell_width.h"

namespace grainside::report {
namespace {

constexpr std::uint8_t kUnmarked = 0xFF;
constexpr std::string_view kCutOff = "...";

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\r';
}

// One character, or a combining mark, as the view shows it.
struct Glyph {
    std::string_view bytes;
    std::size_t cells = 1;
    std::uint8_t grade = kUnmarked;  // of the worst mark that covers it
};

class MarkedLines {
public:
    MarkedLines(std::string& out, const Colours& colours, std::size_t indent, std::size_t width)
        : out_(out), colours_(colours), indent_(indent), room_(width - indent) {}

    void add(std::string_view text, std::span<const MarkedSpan> marks, const Excerpt& excerpt, bool more_before,
             bool more_behind) {
        const std::string_view shown = text.substr(excerpt.start, excerpt.end - excerpt.start);
        grades_.assign(shown.size(), kUnmarked);
        for (std::size_t i = excerpt.first_mark; i < excerpt.last_mark; ++i) cover(excerpt, marks[i]);
        std::size_t from = 0;
        while (from <= shown.size()) {
            const std::size_t to = std::min(shown.find('\n', from), shown.size());
            add_paragraph(shown, from, to, more_before && from == 0, more_behind && to == shown.size());
            from = to + 1;
        }
    }

private:
    void cover(const Excerpt& excerpt, const MarkedSpan& mark) {
        const std::size_t from = std::max(mark.start, excerpt.start);
        const std::size_t to = std::min(mark.end, excerpt.end);
        const auto grade = static_cast<std::uint8_t>(mark.grade);
        for (std::size_t at = from; at < to; ++at) {
            std::uint8_t& worst = grades_[at - excerpt.start];
            worst = std::min(worst, grade);
        }
    }

    // One line of the original, which may need several here.
    void add_paragraph(std::string_view shown, std::size_t from, std::size_t to, bool more_before, bool more_behind) {
        while (from < to && is_blank(shown[from])) ++from;
        while (to > from && is_blank(shown[to - 1])) --to;
        glyphs_.clear();
        if (more_before) add_plain(kCutOff), add_plain(" ");
        // Making it inert keeps every byte's place, so that the marks still fit.
        const std::string inert = document::inert_text(shown.substr(from, to - from));
        for (std::size_t at = 0; at < inert.size();) {
            const document::DecodedChar decoded = document::decode_utf8(inert, at);
            const bool repeated_space = inert[at] == ' ' && at > 0 && inert[at - 1] == ' ';
            if (!repeated_space) {
                glyphs_.push_back(
                    {std::string_view(inert).substr(at, decoded.length), cells_of(decoded.point), grades_[from + at]});
            }
            at += decoded.length;
        }
        if (more_behind) add_plain(" "), add_plain(kCutOff);
        if (!glyphs_.empty()) add_lines();
    }

    void add_plain(std::string_view ascii) {
        for (std::size_t i = 0; i < ascii.size(); ++i) glyphs_.push_back({ascii.substr(i, 1), 1, kUnmarked});
    }

    void add_lines() {
        for (std::size_t from = 0; from < glyphs_.size();) {
            std::size_t end = from;
            std::size_t used = 0;
            std::size_t space = from;
            while (end < glyphs_.size() && used + glyphs_[end].cells <= room_) {
                if (glyphs_[end].bytes == " ") space = end;
                used += glyphs_[end++].cells;
            }
            std::size_t next = end;
            if (end < glyphs_.size()) {
                if (glyphs_[end].bytes == " ") {
                    next = end + 1;
                } else if (space > from) {
                    end = space;
                    next = space + 1;
                }
            }
            add_line(std::span(glyphs_).subspan(from, end - from));
            from = next;
        }
    }

    void add_line(std::span<const Glyph> line) {
        out_.append(indent_, ' ');
        std::uint8_t grade = kUnmarked;
        for (const Glyph& glyph : line) {
            if (glyph.grade != grade) {
                if (grade != kUnmarked) out_ += colours_.plain();
                if (glyph.grade != kUnmarked) out_ += colours_.marked(static_cast<Grade>(glyph.grade));
                grade = glyph.grade;
            }
            out_ += glyph.bytes;
        }
        if (grade != kUnmarked) out_ += colours_.plain();
        out_ += '\n';
        if (!colours_.on()) add_carets(line);
    }

    void add_carets(std::span<const Glyph> line) {
        std::size_t pending = indent_;
        bool any = false;
        for (const Glyph& glyph : line) {
            if (glyph.grade == kUnmarked) {
                pending += glyph.cells;
                continue;
            }
            out_.append(pending, ' ');
            out_.append(glyph.cells, '^');
            pending = 0;
            any = true;
        }
        if (any) out_ += '\n';
    }

    std::string& out_;
    const Colours& colours_;
    std::size_t indent_;
    std::size_t room_;
    std::vector<std::uint8_t> grades_;  // by byte of the excerpt
    std::vector<Glyph> glyphs_;
};

bool has_words(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return !is_blank(c) && c != '\n'; });
}

}  // namespace

void append_marked_text(std::string& out, std::string_view text, std::span<const MarkedSpan> marks,
                        const Colours& colours, std::size_t indent, std::size_t width) {
    MarkedLines lines(out, colours, indent, width);
    const std::vector<Excerpt> excerpts = cut_excerpts(text, marks);
    std::size_t shown = 0;
    for (const Excerpt& excerpt : excerpts) {
        const bool last = &excerpt == &excerpts.back();
        lines.add(text, marks, excerpt, has_words(text.substr(shown, excerpt.start - shown)),
                  last && has_words(text.substr(excerpt.end)));
        shown = excerpt.end;
    }
}

}  // namespace grainside::report
