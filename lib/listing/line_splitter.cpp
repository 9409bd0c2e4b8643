#include "listing/line_splitter.h"

#include <cstring>

namespace grainside::listing {
namespace {

std::size_t find_line_end(std::string_view text, std::size_t from) {
    if (from >= text.size()) return std::string_view::npos;
    const void* found = std::memchr(text.data() + from, '\n', text.size() - from);
    if (found == nullptr) return std::string_view::npos;
    return static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
}

}  // namespace

bool LineSplitter::next(Line& line) {
    source_->consume(given_);
    given_ = 0;
    line = {};
    line.start = before_ + source_->offset();

    std::size_t searched = 0;
    std::size_t length = 0;
    for (;;) {
        const std::string_view text = source_->pending();
        length = find_line_end(text, searched);
        if (length != std::string_view::npos) {
            given_ = length + 1;
            break;
        }
        searched = text.size();
        if (searched > max_line_bytes_) break;
        if (!source_->more()) {
            if (text.empty() || source_->error() != 0) return false;
            length = text.size();
            given_ = length;
            break;
        }
    }
    line.number = ++number_;
    if (length > max_line_bytes_) {
        line.too_large = true;
        if (given_ == 0) pass_over();
        return true;
    }
    line.text = source_->pending().substr(0, length);
    line.readable_behind = source_->pending().size() - length + source_->readable_behind();
    if (line.text.ends_with('\r')) {
        line.text.remove_suffix(1);
        ++line.readable_behind;
    }
    return true;
}

// Goes to the end of a line whose end is not in memory yet, keeping nothing of it.
void LineSplitter::pass_over() {
    do {
        source_->consume(source_->pending().size());
        if (!source_->more()) return;
        const std::size_t end = find_line_end(source_->pending(), 0);
        if (end != std::string_view::npos) given_ = end + 1;
    } while (given_ == 0);
}

}  // namespace grainside::listing
