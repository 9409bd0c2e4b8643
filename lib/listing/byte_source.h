// Bytes from a file, a pipe or memory, a block at a time, unpacked where they are packed.
#ifndef GRAINSIDE_LISTING_BYTE_SOURCE_H
#define GRAINSIDE_LISTING_BYTE_SOURCE_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "grainside/result.h"
#include "listing/byte_supply.h"

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
    ~ByteSource() = default;

    const std::string& name() const noexcept { return name_; }

    // Looks at the first bytes and from then on gives what is packed in them, if they are gzip or zstd; offsets then
    // count unpacked bytes. REQUIRES: nothing was consumed. False where there is no memory for it (`error`).
    bool unpack();
    bool is_unpacked() const noexcept { return unpacked_; }
    // What is wrong with the packed data, and what to do; empty: nothing. `error` is EBADMSG then.
    std::string_view unpacking_fault() const noexcept { return supply_ ? supply_->fault() : std::string_view(); }
    std::string_view unpacking_hint() const noexcept { return supply_ ? supply_->fault_hint() : std::string_view(); }

    // What was read and not consumed. Valid until the next `more`.
    std::string_view pending() const noexcept { return pending_; }
    // How many bytes behind `pending` may be read, whatever they hold.
    std::size_t readable_behind() const noexcept;

    // Reads on, so that `pending` becomes longer by at least one byte. False at the end and after an error.
    bool more();
    // REQUIRES: `size` is at most the size of `pending`. What is consumed stays readable until the next `more`.
    void consume(std::size_t size) noexcept;

    // The size that the source itself states, packed as it is, 0 where it states none; a hint and not a promise.
    std::size_t stated_size() const noexcept;
    // Bytes taken from the source itself, packed as they are.
    std::uint64_t source_bytes() const noexcept { return supply_ ? supply_->bytes_taken() : bytes_read_; }
    // Makes room for `size` bytes of `pending`, so that it does not have to be copied while it grows to that.
    void reserve(std::size_t size);

    // From now on a wait for bytes ends when `descriptor` can be read; what it holds is left there. Then `more` returns
    // false and `error` is ECANCELED.
    void wake_by(int descriptor) noexcept {
        if (supply_) supply_->wake_by(descriptor);
    }
    // Whether `more` would have to wait for whoever writes.
    bool may_wait() const noexcept;

    // errno of the read or allocation that failed; 0 = none did.
    int error() const noexcept { return error_; }
    // Bytes of the source, unpacked, before `pending`.
    std::uint64_t offset() const noexcept { return supply_ ? bytes_read_ - pending_.size() : bytes_read_; }
    // Bytes read, unpacked, or of memory: bytes consumed.
    std::uint64_t bytes_read() const noexcept { return bytes_read_; }

private:
    struct PageDelete {
        void operator()(char* bytes) const noexcept;
    };
    using Pages = std::unique_ptr<char, PageDelete>;

    ByteSource(std::unique_ptr<ByteSupply> supply, std::string name, std::size_t block_bytes);
    bool make_room();
    bool move_pending(Pages to, std::size_t at, std::size_t new_size);
    static Pages allocate(std::size_t size) noexcept;

    std::string name_;
    std::string_view pending_;
    std::unique_ptr<ByteSupply> supply_;  // none: memory, all of it in `pending_`
    bool unpacked_ = false;
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
