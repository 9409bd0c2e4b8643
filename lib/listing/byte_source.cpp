#include "listing/byte_source.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <new>
#include <system_error>
#include <utility>

#include "listing/unpacking.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kPageBytes = 4096;
// The room in front of the aligned block: the longest rest that is copied there. Longer ones stay where they are and
// the buffer grows.
constexpr std::size_t kFrontBytes = std::size_t{64} << 10;

Issue opening_issue(const std::string& path, std::string_view code, std::string message, std::string hint) {
    Issue issue;
    issue.code = code;
    issue.file = path;
    issue.message = std::move(message);
    issue.hint = std::move(hint);
    return issue;
}

std::size_t whole_pages(std::size_t size) {
    return (size + kPageBytes - 1) / kPageBytes * kPageBytes;
}

}  // namespace

Result<ByteSource> ByteSource::open(const std::string& path, std::size_t block_bytes) {
    if (path == "-") return ByteSource(descriptor_supply(STDIN_FILENO, false), "<stdin>", block_bytes);
    int descriptor = -1;
    do {
        descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY);
    } while (descriptor < 0 && errno == EINTR);
    if (descriptor < 0) {
        const int reason = errno;
        return opening_issue(path, "cannot-open",
                             "the file cannot be opened: " + std::generic_category().message(reason),
                             reason == ENOENT ? "check the spelling of the path" : "");
    }
    ByteSource source(descriptor_supply(descriptor, true), path, block_bytes);
    struct stat status {};
    if (::fstat(descriptor, &status) == 0 && S_ISDIR(status.st_mode)) {
        return opening_issue(path, "is-directory", "this is a folder and not a file", "name the files in it");
    }
    return source;
}

ByteSource ByteSource::from_descriptor(int descriptor, bool owned, std::string name, std::size_t block_bytes) {
    return ByteSource(descriptor_supply(descriptor, owned), std::move(name), block_bytes);
}

ByteSource ByteSource::from_memory(std::string name, std::string_view bytes) {
    ByteSource source(nullptr, std::move(name), kBlockBytes);
    source.pending_ = bytes;
    return source;
}

ByteSource::ByteSource(std::unique_ptr<ByteSupply> supply, std::string name, std::size_t block_bytes)
    : name_(std::move(name)), supply_(std::move(supply)), block_bytes_(std::max<std::size_t>(block_bytes, 1)) {}

ByteSource::ByteSource(ByteSource&& other) noexcept
    : name_(std::move(other.name_)),
      pending_(std::exchange(other.pending_, {})),
      supply_(std::move(other.supply_)),
      unpacked_(other.unpacked_),
      ended_(other.ended_),
      error_(other.error_),
      bytes_read_(other.bytes_read_),
      block_bytes_(other.block_bytes_),
      buffer_(std::move(other.buffer_)),
      size_(std::exchange(other.size_, 0)),
      end_(std::exchange(other.end_, 0)) {}

ByteSource& ByteSource::operator=(ByteSource&& other) noexcept {
    std::swap(name_, other.name_);
    std::swap(pending_, other.pending_);
    std::swap(supply_, other.supply_);
    std::swap(unpacked_, other.unpacked_);
    std::swap(ended_, other.ended_);
    std::swap(error_, other.error_);
    std::swap(bytes_read_, other.bytes_read_);
    std::swap(block_bytes_, other.block_bytes_);
    std::swap(buffer_, other.buffer_);
    std::swap(size_, other.size_);
    std::swap(end_, other.end_);
    return *this;
}

bool ByteSource::unpack() {
    while (pending_.size() < kPackingMarkBytes && more()) {
    }
    const Packing packing = packing_of(pending_);
    if (packing == Packing::none) return true;
    // All of a memory is pending, and is left where it lies.
    const bool is_memory = supply_ == nullptr;
    supply_ = unpacking_supply(packing, is_memory ? memory_supply(pending_) : std::move(supply_),
                               is_memory ? std::string_view() : pending_);
    pending_ = {};
    end_ = kFrontBytes;
    bytes_read_ = 0;
    unpacked_ = true;
    ended_ = supply_ == nullptr;
    if (ended_) error_ = ENOMEM;
    return !ended_;
}

std::size_t ByteSource::readable_behind() const noexcept {
    return !supply_ || !buffer_ ? 0 : size_ + kPaddingBytes - end_;
}

bool ByteSource::more() {
    if (!supply_ || ended_ || !make_room()) return false;
    const std::size_t room = std::min(size_ - end_, std::max(block_bytes_, std::size_t{1}));
    const std::size_t count = supply_->read(buffer_.get() + end_, room);
    if (count == 0) {
        error_ = supply_->error();
        ended_ = true;
        return false;
    }
    bytes_read_ += count;
    end_ += count;
    pending_ = {buffer_.get() + (end_ - count - pending_.size()), pending_.size() + count};
    return true;
}

bool ByteSource::may_wait() const noexcept {
    return supply_ && !ended_ && supply_->may_wait();
}

void ByteSource::consume(std::size_t size) noexcept {
    pending_.remove_prefix(size);
    if (!supply_) bytes_read_ += size;
}

std::size_t ByteSource::stated_size() const noexcept {
    return supply_ ? supply_->stated_size() : static_cast<std::size_t>(bytes_read_) + pending_.size();
}

void ByteSource::reserve(std::size_t size) {
    if (!supply_) return;
    const std::size_t needed = kFrontBytes + whole_pages(size + block_bytes_);
    // Without the memory reading goes on in smaller steps and fails there, if it must.
    if (size_ < needed) move_pending(allocate(needed + kPaddingBytes), kFrontBytes, needed);
}

// Leaves at least one byte of room at `end_`.
bool ByteSource::make_room() {
    const std::size_t rest = pending_.size();
    if (!buffer_) {
        const std::size_t size = kFrontBytes + block_bytes_;
        if (move_pending(allocate(size + kPaddingBytes), kFrontBytes, size)) return true;
    } else if (rest <= kFrontBytes && end_ >= kFrontBytes + block_bytes_) {
        // The usual way: a block is used up, its rest goes in front and the next block is read to the same place.
        std::memmove(buffer_.get() + (kFrontBytes - rest), pending_.data(), rest);
        pending_ = {buffer_.get() + (kFrontBytes - rest), rest};
        end_ = kFrontBytes;
        return true;
    } else if (end_ < size_) {
        return true;
    } else if (rest <= (size_ - kFrontBytes) / 2) {
        std::memmove(buffer_.get() + kFrontBytes, pending_.data(), rest);
        pending_ = {buffer_.get() + kFrontBytes, rest};
        end_ = kFrontBytes + rest;
        return true;
    } else {
        const std::size_t size = kFrontBytes + whole_pages(std::max(2 * rest, block_bytes_));
        if (move_pending(allocate(size + kPaddingBytes), kFrontBytes, size)) return true;
    }
    error_ = ENOMEM;
    ended_ = true;
    return false;
}

bool ByteSource::move_pending(Pages to, std::size_t at, std::size_t new_size) {
    if (!to) return false;
    std::copy(pending_.begin(), pending_.end(), to.get() + at);
    pending_ = {to.get() + at, pending_.size()};
    buffer_ = std::move(to);
    size_ = new_size;
    end_ = at + pending_.size();
    std::memset(buffer_.get() + size_, 0, kPaddingBytes);
    return true;
}

ByteSource::Pages ByteSource::allocate(std::size_t size) noexcept {
    return Pages(static_cast<char*>(::operator new (size, std::align_val_t{kPageBytes}, std::nothrow)));
}

void ByteSource::PageDelete::operator()(char* bytes) const noexcept {
    ::operator delete (bytes, std::align_val_t{kPageBytes});
}

}  // namespace grainside::listing
