#include "text/segments.h"

#include <cstddef>

namespace grainside::text {
namespace {

bool is_word_or_number(const Token& token) {
    return token.kind == TokenKind::word || token.kind == TokenKind::number;
}

bool ends_segment(TokenKind kind) {
    switch (kind) {
        case TokenKind::stop:
        case TokenKind::question:
        case TokenKind::exclamation:
        case TokenKind::line_end:
        case TokenKind::pipe:
        case TokenKind::bullet:
        case TokenKind::heading:
            return true;
        default:
            return false;
    }
}

class SegmentCutter {
public:
    SegmentCutter(const Tokens& tokens, std::vector<Segment>& segments) : tokens_(tokens), segments_(segments) {}

    void run() {
        segments_.clear();
        const auto count = static_cast<std::uint32_t>(tokens_.list.size());
        for (std::uint32_t i = 0; i < count; ++i) {
            const Token& token = tokens_.list[i];
            if (!ends_segment(token.kind)) {
                take_inner(i);
            } else if (token.kind == TokenKind::line_end) {
                close(i, false);
                begin_line((token.flags & flag::kBlankLine) != 0);
            } else {
                close(i, token.kind == TokenKind::question);
                begin_as(token.kind);
                // Quotes and brackets that close right after the mark belong to what has ended.
                while (i + 1 < count && closes_after_mark(tokens_.list[i + 1])) ++i;
            }
        }
        close(count, false);
    }

private:
    void take_inner(std::uint32_t i) {
        const Token& token = tokens_.list[i];
        if (is_word_or_number(token)) {
            has_words_ = true;
        } else if (!open_ && token.kind != TokenKind::open && token.kind != TokenKind::quote) {
            return;  // a segment does not begin with a comma or the like
        }
        if (!open_) first_ = i;
        open_ = true;
        kinds_ |= 1U << static_cast<unsigned>(token.kind);
    }

    void close(std::uint32_t last, bool question) {
        if (has_words_) {
            segments_.push_back({first_, last, question ? SegmentKind::question : kind_,
                                 static_cast<std::uint8_t>(starts_line_ ? 1 : 0),
                                 static_cast<std::uint8_t>(starts_block_ ? 1 : 0), kinds_});
            starts_line_ = false;
            starts_block_ = false;
        }
        open_ = false;
        has_words_ = false;
        kinds_ = 0;
    }

    void begin_line(bool blank) {
        // A heading and an item end with their line, so what follows them is a block of its own.
        if (blank || kind_ != SegmentKind::sentence) starts_block_ = true;
        starts_line_ = true;
        kind_ = SegmentKind::sentence;
    }

    void begin_as(TokenKind mark) {
        if (mark != TokenKind::bullet && mark != TokenKind::heading) return;
        kind_ = mark == TokenKind::bullet ? SegmentKind::item : SegmentKind::heading;
        starts_block_ = true;
    }

    static bool closes_after_mark(const Token& token) {
        return (token.kind == TokenKind::close || token.kind == TokenKind::quote) &&
               (token.flags & flag::kSpaceBefore) == 0;
    }

    const Tokens& tokens_;
    std::vector<Segment>& segments_;
    std::uint32_t first_ = 0;
    SegmentKind kind_ = SegmentKind::sentence;
    std::uint32_t kinds_ = 0;
    bool open_ = false;
    bool has_words_ = false;
    bool starts_line_ = true;
    bool starts_block_ = true;
};

}  // namespace

void cut_segments(const Tokens& tokens, std::vector<Segment>& segments) {
    SegmentCutter(tokens, segments).run();
}

}  // namespace grainside::text
