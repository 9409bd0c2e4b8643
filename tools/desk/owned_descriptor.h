// A file descriptor that is closed with its owner.
#ifndef GRAINSIDE_TOOLS_DESK_OWNED_DESCRIPTOR_H
#define GRAINSIDE_TOOLS_DESK_OWNED_DESCRIPTOR_H

#include <unistd.h>

#include <utility>

namespace grainside::desk {

class OwnedDescriptor {
public:
    explicit OwnedDescriptor(int descriptor = -1) noexcept : descriptor_(descriptor) {}
    OwnedDescriptor(OwnedDescriptor&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}
    OwnedDescriptor& operator=(OwnedDescriptor&& other) noexcept {
        std::swap(descriptor_, other.descriptor_);
        return *this;
    }
    OwnedDescriptor(const OwnedDescriptor&) = delete;
    OwnedDescriptor& operator=(const OwnedDescriptor&) = delete;
    ~OwnedDescriptor() {
        if (descriptor_ >= 0) ::close(descriptor_);
    }

    bool is_open() const noexcept { return descriptor_ >= 0; }
    int get() const noexcept { return descriptor_; }
    // Gives what close(2) gives: what the system reports late counts too.
    int close() noexcept { return ::close(std::exchange(descriptor_, -1)); }

private:
    int descriptor_;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_OWNED_DESCRIPTOR_H
