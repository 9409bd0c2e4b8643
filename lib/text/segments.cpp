#include "text/segments.h"

#include <cstddef>

namespace grainside::text {
namespace {

// Kinds of tokens as bits: a test of one is an instruction or two, and this is asked of every token.
constexpr std::uint32_t bit(TokenKind kind) {
    return 1U << static_cast<unsigned>(kind);
}
constexpr std::uint32_t kEnding = bit(TokenKind::stop) | bit(TokenKind::question) | bit(TokenKind::exclamation) |
                                  bit(TokenKind::line_end) | bit(TokenKind::pipe) | bit(TokenKind::bullet) |
                                  bit(TokenKind::heading);
constexpr std::uint32_t kSaying = bit(TokenKind::word) | bit(TokenKind::number);
// A segment does not begin with a comma or the like.
constexpr std::uint32_t kBeginning = kSaying | bit(TokenKind::open) | bit(TokenKind::quote);

class SegmentCutter {
public:
    SegmentCutter(const Tokens& tokens, std::vector<Segment>& segments) : tokens_(tokens), segments_(segments) {}

    void run() {
        segments_.clear();
        const Token* const tokens = tokens_.list.data();
        const auto count = static_cast<std::uint32_t>(tokens_.list.size());
        for (std::uint32_t i = 0;; ++i) {
            while (i < count && (bit(tokens[i].kind) & (kBeginning | kEnding)) == 0) ++i;
            const std::uint32_t first = i;
            std::uint32_t kinds = 0;
            for (; i < count && (bit(tokens[i].kind) & kEnding) == 0; ++i) kinds |= bit(tokens[i].kind);
            if ((kinds & kSaying) != 0) add(first, i, i < count && tokens[i].kind == TokenKind::question, kinds);
            if (i == count) break;
            if (tokens[i].kind == TokenKind::line_end) {
                begin_line((tokens[i].flags & flag::kBlankLine) != 0);
            } else {
                begin_as(tokens[i].kind);
                // Quotes and brackets that close right after the mark belong to what has ended.
                while (i + 1 < count && closes_after_mark(tokens[i + 1])) ++i;
            }
        }
    }

private:
    void add(std::uint32_t first, std::uint32_t last, bool question, std::uint32_t kinds) {
        segments_.push_back({first, last, question ? SegmentKind::question : kind_,
                             static_cast<std::uint8_t>(starts_line_ ? 1 : 0),
                             static_cast<std::uint8_t>(starts_block_ ? 1 : 0), kinds});
        starts_line_ = false;
        starts_block_ = false;
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
    SegmentKind kind_ = SegmentKind::sentence;
    bool starts_line_ = true;
    bool starts_block_ = true;
};

}  // namespace

void cut_segments(const Tokens& tokens, std::vector<Segment>& segments) {
    SegmentCutter(tokens, segments).run();
}

}  // namespace grainside::text
