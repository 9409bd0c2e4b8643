// A stream buffer over a text that ends early when its reader takes too much without making progress.
//
// The parser keeps every token of a list in brackets until the bracket is closed, at 100 to 200 bytes each: without a
// bound, a file of 4 MiB takes a gigabyte. Not thread-safe.
#ifndef GRAINSIDE_DOCUMENT_BOUNDED_STREAM_H
#define GRAINSIDE_DOCUMENT_BOUNDED_STREAM_H

#include <array>
#include <cstddef>
#include <streambuf>
#include <string_view>

namespace grainside::document {

class BoundedStream : public std::streambuf {
public:
    // `text` must outlive the buffer. `most_ahead` is in bytes.
    BoundedStream(std::string_view text, std::size_t most_ahead) : rest_(text), most_ahead_(most_ahead) {}

    // Tells that the reader got somewhere: it may take another `most_ahead` bytes.
    void made_progress() noexcept { ahead_ = 0; }
    // True once the text was cut off.
    bool ended_early() const noexcept { return ended_early_; }

protected:
    int_type underflow() override;

private:
    std::string_view rest_;
    std::size_t most_ahead_;
    std::size_t ahead_ = 0;
    bool ended_early_ = false;
    std::array<char, 2048> block_{};
};

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_BOUNDED_STREAM_H
