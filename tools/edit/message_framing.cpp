#include "edit/message_framing.h"

#include <algorithm>
#include <charconv>
#include <system_error>
#include <utility>

namespace grainside::tools::edit {
namespace {

constexpr std::string_view kLineEnd = "\r\n";
constexpr std::string_view kHeaderEnd = "\r\n\r\n";
constexpr std::string_view kLength = "content-length";
constexpr std::string_view kType = "content-type";

char in_small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string in_small(std::string_view text) {
    std::string small(text);
    std::transform(small.begin(), small.end(), small.begin(), [](char c) { return in_small(c); });
    return small;
}

std::string_view without_spaces(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
    return text;
}

// Digits and nothing else: no sign.
std::optional<std::size_t> length_of(std::string_view text) {
    std::size_t length = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), length);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return length;
}

// The protocol knows one encoding, by its name or by the one that it had by mistake.
bool is_readable_type(std::string_view value) {
    const std::string small = in_small(value);
    const std::size_t charset = small.find("charset");
    return charset == std::string::npos || small.find("utf-8", charset) != std::string::npos ||
           small.find("utf8", charset) != std::string::npos;
}

}  // namespace

void FrameReader::add(std::string_view bytes) {
    drop_consumed();
    bytes_ += bytes;
}

void FrameReader::drop_consumed() {
    // Not at each message: many small ones would move what is behind them each time.
    if (at_ < bytes_.size() / 2) return;
    bytes_.erase(0, at_);
    at_ = 0;
    constexpr std::size_t kKept = std::size_t{1} << 20U;
    if (bytes_.capacity() > kKept && bytes_.size() < kKept / 2) bytes_.shrink_to_fit();
}

FrameReader::Header FrameReader::read_header(std::string_view bytes) {
    Header header;
    const std::size_t end = bytes.substr(0, kMostHeaderBytes).find(kHeaderEnd);
    if (end == std::string_view::npos) {
        if (bytes.size() < kMostHeaderBytes) return header;
        return {Header::State::wrong, 0, 0, "the header part of a message does not end"};
    }
    std::optional<std::size_t> length;
    for (std::string_view rest = bytes.substr(0, end + kLineEnd.size()); !rest.empty();) {
        const std::size_t line_end = rest.find(kLineEnd);
        const std::string_view line = rest.substr(0, line_end);
        rest.remove_prefix(line_end + kLineEnd.size());
        const std::size_t colon = line.find(':');
        if (colon == std::string_view::npos) {
            return {Header::State::wrong, 0, 0, "a header line is 'Name: value'"};
        }
        const std::string name = in_small(line.substr(0, colon));
        const std::string_view value = without_spaces(line.substr(colon + 1));
        if (name == kLength) {
            length = length_of(value);
            if (!length) return {Header::State::wrong, 0, 0, "Content-Length is a number of bytes"};
        } else if (name == kType && !is_readable_type(value)) {
            return {Header::State::wrong, 0, 0, "the content of a message is UTF-8"};
        }
    }
    if (!length) return {Header::State::wrong, 0, 0, "a message needs the header Content-Length"};
    if (*length > kMostMessageBytes) {
        return {Header::State::wrong, 0, 0,
                "a message has at most " + std::to_string(kMostMessageBytes) + " bytes, and is left out"};
    }
    return {Header::State::whole, end + kHeaderEnd.size(), *length, {}};
}

// Goes on to where a header begins that is one; false where none is there yet.
bool FrameReader::find_header() {
    const auto same = [](char a, char b) { return in_small(a) == b; };
    for (;;) {
        const auto found = std::search(bytes_.begin() + static_cast<std::ptrdiff_t>(at_), bytes_.end(), kLength.begin(),
                                       kLength.end(), same);
        if (found == bytes_.end()) {
            // Its beginning may have come.
            at_ = std::max(at_, bytes_.size() - std::min(bytes_.size(), kLength.size() - 1));
            drop_consumed();
            return false;
        }
        at_ = static_cast<std::size_t>(found - bytes_.begin());
        const Header header = read_header(std::string_view(bytes_).substr(at_));
        if (header.state == Header::State::whole) return true;
        if (header.state == Header::State::unfinished) return false;
        ++at_;
    }
}

std::optional<Frame> FrameReader::next() {
    if (lost_) {
        if (!find_header()) return std::nullopt;
        lost_ = false;
    }
    if (!wanted_) {
        Header header = read_header(std::string_view(bytes_).substr(at_));
        if (header.state == Header::State::unfinished) return std::nullopt;
        if (header.state == Header::State::wrong) {
            lost_ = true;
            ++at_;
            return Frame{{}, std::move(header.fault)};
        }
        at_ += header.size;
        wanted_ = header.length;
    }
    if (bytes_.size() - at_ < *wanted_) return std::nullopt;
    Frame frame{bytes_.substr(at_, *wanted_), {}};
    at_ += *wanted_;
    wanted_.reset();
    return frame;
}

void append_frame(std::string& out, std::string_view content) {
    out.append("Content-Length: ").append(std::to_string(content.size())).append(kHeaderEnd).append(content);
}

}  // namespace grainside::tools::edit
