#include "listing/page_text.h"

#include <algorithm>
#include <array>

#include "document/character_reference.h"
#include "listing/html_element.h"
#include "listing/json_string.h"

namespace grainside::listing {
namespace {

bool is_control(char c) {
    return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
}

constexpr char kBar = '\x03';

constexpr char mark_byte(PageText::Mark mark) {
    return static_cast<char>(mark);
}

// The reference at `at` as UTF-8 in `into`, and how many bytes it takes; 0 = there is none.
std::size_t reference_at(std::string_view raw, std::size_t at, std::array<char, 4>& into, std::size_t& size) {
    const document::CharacterReference reference = document::read_character_reference(raw, at);
    if (reference.length == 0) return 0;
    size = static_cast<std::size_t>(put_utf8(into.data(), static_cast<unsigned>(reference.code)) - into.data());
    return reference.length;
}

void trim(std::string& text) {
    const auto is_gap = [](char c) { return is_html_space(c); };
    text.erase(std::find_if_not(text.rbegin(), text.rend(), is_gap).base(), text.end());
    text.erase(text.begin(), std::find_if_not(text.begin(), text.end(), is_gap));
}

// Puts the bytes of a PageText into a text for people: a cut leaves no hole, marks become what people write.
class Writer {
public:
    explicit Writer(bool keeps_first_mark) : keeps_mark_(keeps_first_mark) {}

    void add(std::string_view bytes) {
        for (const char c : bytes) {
            if (c == '\n') {
                ++lines_;
                bar_ = false;
                holds_mark_ = '\0';
            } else if (c == ' ') {
                space_ = true;
            } else if (c == kBar) {
                bar_ = true;
            } else if (c == mark_byte(PageText::Mark::item) || c == mark_byte(PageText::Mark::heading)) {
                holds_mark_ = c;
            } else {
                begin_word();
                out_ += c;
            }
        }
    }
    std::string take() { return std::move(out_); }

private:
    void begin_word() {
        if (!out_.empty()) {
            if (lines_ > 0) out_ += lines_ > 1 ? "\n\n" : "\n";
            if (lines_ == 0 && bar_) out_ += " | ";
            if (lines_ == 0 && !bar_ && space_) out_ += ' ';
        }
        if (holds_mark_ != '\0' && (keeps_mark_ || !out_.empty())) {
            out_ += holds_mark_ == mark_byte(PageText::Mark::item) ? "- " : "## ";
        }
        holds_mark_ = '\0';
        lines_ = 0;
        space_ = false;
        bar_ = false;
    }

    bool keeps_mark_;
    std::string out_;
    unsigned lines_ = 0;
    bool space_ = false;
    bool bar_ = false;
    char holds_mark_ = '\0';
};

}  // namespace

void PageText::add(std::string_view raw, bool keeps_lines) {
    std::size_t at = 0;
    while (at < raw.size()) {
        const char c = raw[at];
        if (is_html_space(c)) {
            if (keeps_lines && c == '\n') break_line();
            if (gap_ == Gap::none) gap_ = Gap::space;
            ++at;
            continue;
        }
        if (is_control(c)) {
            ++at;
            continue;
        }
        if (c == '&') {
            std::array<char, 4> bytes{};
            std::size_t size = 0;
            const std::size_t length = reference_at(raw, at, bytes, size);
            if (length != 0) {
                if (is_html_space(bytes[0])) {
                    if (gap_ == Gap::none) gap_ = Gap::space;
                } else if (!is_control(bytes[0])) {
                    put({bytes.data(), size});
                }
                at += length;
                continue;
            }
        }
        std::size_t end = at + 1;
        while (end < raw.size() && raw[end] != '&' && raw[end] != ' ' && !is_control(raw[end])) ++end;
        put(raw.substr(at, end - at));
        at = end;
    }
}

void PageText::put(std::string_view bytes) {
    if (!text_.empty()) {
        const bool is_bar = has_bar_ && gap_ != Gap::paragraph;
        if (is_bar) text_ += kBar;
        if (!is_bar && gap_ == Gap::space) text_ += ' ';
        if (!is_bar && gap_ >= Gap::line) text_ += gap_ == Gap::line ? "\n" : "\n\n";
    }
    gap_ = Gap::none;
    has_bar_ = false;
    if (has_mark_) text_ += mark_byte(mark_);
    has_mark_ = false;
    text_ += bytes;
}

std::string written(const PageText& text, PageRange range, const std::vector<PageRange>& cuts, bool keeps_first_mark) {
    Writer writer(keeps_first_mark);
    std::uint32_t at = range.begin;
    auto cut = std::lower_bound(cuts.begin(), cuts.end(), range.begin,
                                [](const PageRange& one, std::uint32_t begin) { return one.begin < begin; });
    for (; cut != cuts.end() && cut->begin < range.end; ++cut) {
        if (cut->holds(range) || cut->end <= at) continue;
        if (cut->begin > at) writer.add(text.slice({at, cut->begin}));
        at = std::min(cut->end, range.end);
        // The gap before what is cut out stays a gap.
        const std::string_view cut_out = text.slice({cut->begin, at});
        writer.add(cut_out.substr(0, std::min(cut_out.find_first_not_of(" \n\x03"), cut_out.size())));
    }
    if (at < range.end) writer.add(text.slice({at, range.end}));
    return writer.take();
}

std::string written_in_a_line(const PageText& text, PageRange range, const std::vector<PageRange>& cuts) {
    std::string out = written(text, range, cuts, false);
    std::replace(out.begin(), out.end(), '\n', ' ');
    const auto both_spaces = [](char a, char b) { return a == ' ' && b == ' '; };
    out.erase(std::unique(out.begin(), out.end(), both_spaces), out.end());
    return out;
}

std::string resolved(std::string_view raw) {
    std::string out;
    out.reserve(raw.size());
    for (std::size_t at = 0; at < raw.size();) {
        std::array<char, 4> bytes{};
        std::size_t size = 0;
        const std::size_t length = raw[at] == '&' ? reference_at(raw, at, bytes, size) : 0;
        if (length != 0) {
            out.append(bytes.data(), size);
            at += length;
        } else {
            if (raw[at] != '\0') out += raw[at];
            ++at;
        }
    }
    trim(out);
    return out;
}

}  // namespace grainside::listing
