// The base protocol's frames: a header part, an empty line, and as many bytes of content as the header says (Language
// Server Protocol 3.17, 'Base Protocol').
//
// A stream that broke its rules is picked up again at the next header: within sound JSON no line break stands between
// quotes, so that 'Content-Length: N' and an empty line behind it can be nothing else. Each break gives one fault,
// however many bytes it takes. Memory: one message and what has come behind it. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_EDIT_MESSAGE_FRAMING_H
#define GRAINSIDE_TOOLS_EDIT_MESSAGE_FRAMING_H

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace grainside::tools::edit {

// A document of kMostDocumentBytes (open_documents.h) is less than this, also where JSON writes much of it as \uXXXX.
inline constexpr std::size_t kMostMessageBytes = std::size_t{64} << 20U;
inline constexpr std::size_t kMostHeaderBytes = std::size_t{8} << 10U;

struct Frame {
    std::string content;
    std::string fault;  // why there is no content; empty: there is
};

class FrameReader {
public:
    void add(std::string_view bytes);
    // The next message or fault; nothing where more bytes are needed.
    std::optional<Frame> next();
    // Whether the stream may end here.
    bool between_messages() const noexcept { return at_ == bytes_.size() && !wanted_; }

private:
    struct Header {
        enum class State { whole, unfinished, wrong } state = State::unfinished;
        std::size_t size = 0;    // bytes of it, the empty line included
        std::size_t length = 0;  // of the content
        std::string fault;
    };
    static Header read_header(std::string_view bytes);
    bool find_header();
    void drop_consumed();

    std::string bytes_;
    std::size_t at_ = 0;                 // what is before it was consumed
    std::optional<std::size_t> wanted_;  // length of the content that comes next
    bool lost_ = false;
};

// With its header, behind `out`.
void append_frame(std::string& out, std::string_view content);

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_MESSAGE_FRAMING_H
