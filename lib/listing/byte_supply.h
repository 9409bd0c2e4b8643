// Where the bytes of a source come from: a file, a pipe, memory, or what is packed in another supply (unpacking.h).
#ifndef GRAINSIDE_LISTING_BYTE_SUPPLY_H
#define GRAINSIDE_LISTING_BYTE_SUPPLY_H

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace grainside::listing {

// Not thread-safe.
class ByteSupply {
public:
    ByteSupply() = default;
    ByteSupply(const ByteSupply&) = delete;
    ByteSupply& operator=(const ByteSupply&) = delete;
    virtual ~ByteSupply() = default;

    // Writes at least one and at most `room` bytes to `to` and says how many; 0 at the end and after a failure.
    // REQUIRES: `room` > 0.
    virtual std::size_t read(char* to, std::size_t room) = 0;

    // errno of what failed; 0 = nothing did.
    virtual int error() const noexcept = 0;
    // Bytes taken from the file, the pipe or the memory itself.
    virtual std::uint64_t bytes_taken() const noexcept = 0;
    // The size that the file states, 0 where it states none.
    virtual std::size_t stated_size() const noexcept = 0;

    // From now on a wait for bytes ends when `descriptor` can be read; what it holds is left there. Then `read` gives 0
    // and `error` is ECANCELED.
    virtual void wake_by(int descriptor) noexcept = 0;
    // Whether `read` would have to wait for whoever writes.
    virtual bool may_wait() const noexcept { return false; }

    // What is wrong with packed data, as the end of a sentence and with what to do about it; empty: nothing.
    virtual std::string_view fault() const noexcept { return {}; }
    virtual std::string_view fault_hint() const noexcept { return {}; }
};

// Closes `descriptor` at the end if `owned`. Waits where the descriptor was left non-blocking.
std::unique_ptr<ByteSupply> descriptor_supply(int descriptor, bool owned);

// The caller keeps `bytes` alive.
std::unique_ptr<ByteSupply> memory_supply(std::string_view bytes);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_BYTE_SUPPLY_H
