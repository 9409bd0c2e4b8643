// Bytes from a file, a pipe or memory, a block at a time.
#ifndef GRAINSIDE_LISTING_BYTE_SOURCE_H
#define GRAINSIDE_LISTING_BYTE_SOURCE_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "grainside/result.h"

namespace grainside::listing {

// Keeps what was read and not yet consumed in one piece. read(2) writes into page-aligned memory, because it is several
// times slower into memory that is not; the rest of the block before is copied in front of the page. There is no mmap:
// a file that shrinks while it is read must be an end and not a signal. Movable, not copyable, not thread-safe.
class ByteSource {
public:
    static constexpr std::size_t kBlockBytes = std::size_t{256} << 10;
    // At least so many bytes behind `pending` may be read when it lies in our own buffer.
    static constexpr std::size_t kPaddingBytes = 64;

    // `path` "-" is standard input. Issues: "cannot-open", "is-directory".
    static Result<ByteSource> open(const std::string& path, std::size_t block_bytes = kBlockBytes);
    // Closes `descriptor` at the end if `owned`.
    static ByteSource from_descriptor(int descriptor, bool owned, std::string name,
                                      std::size_t block_bytes = kBlockBytes);
    // The caller keeps `bytes` alive.
    static ByteSource from_memory(std::string name, std::string_view bytes);

    ByteSource(ByteSource&& other) noexcept;
    ByteSource& operator=(ByteSource&& other) noexcept;
    ~ByteSource();

    const std::string& name() const noexcept { return name_; }

    // What was read and not consumed. Valid until the next `more`.
    std::string_view pending() const noexcept { return pending_; }
    // How many bytes behind `pending` may be read, whatever they hold.
    std::size_t readable_behind() const noexcept;

    // Reads on, so that `pending` becomes longer by at least one byte. False at the end and after an error.
    bool more();
    // REQUIRES: `size` is at most the size of `pending`. What is consumed stays readable until the next `more`.
    void consume(std::size_t size) noexcept;

    // The size that the source itself states, 0 where it states none; a hint and not a promise.
    std::size_t stated_size() const noexcept;
    // Makes room for `size` bytes of `pending`, so that it does not have to be copied while it grows to that.
    void reserve(std::size_t size);

    // From now on a wait for bytes ends when `descriptor` can be read; what it holds is left there. Then `more` returns
    // false and `error` is ECANCELED.
    void wake_by(int descriptor) noexcept { wake_ = descriptor; }
    // Whether `more` would have to wait for whoever writes.
    bool may_wait() const noexcept;

    // errno of the read or allocation that failed; 0 = none did.
    int error() const noexcept { return error_; }
    // Bytes of the source before `pending`.
    std::uint64_t offset() const noexcept { return descriptor_ < 0 ? bytes_read_ : bytes_read_ - pending_.size(); }
    // Bytes read, or of memory: bytes consumed.
    std::uint64_t bytes_read() const noexcept { return bytes_read_; }

private:
    struct PageDelete {
        void operator()(char* bytes) const noexcept;
    };
    using Pages = std::unique_ptr<char, PageDelete>;

    ByteSource(int descriptor, bool owned, std::string name, std::size_t block_bytes);
    bool make_room();
    bool wait_or_woken() const noexcept;
    bool move_pending(Pages to, std::size_t at, std::size_t new_size);
    static Pages allocate(std::size_t size) noexcept;

    std::string name_;
    std::string_view pending_;
    int descriptor_ = -1;  // -1 = memory
    int wake_ = -1;        // -1 = nothing ends a wait
    bool owned_ = false;
    bool ended_ = false;
    int error_ = 0;
    std::uint64_t bytes_read_ = 0;
    std::size_t block_bytes_ = kBlockBytes;
    Pages buffer_;
    std::size_t size_ = 0;  // of the buffer, without the padding
    std::size_t end_ = 0;   // where the bytes read end
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_BYTE_SOURCE_H
