#include "counting_new.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {

std::atomic<std::size_t> count{0};

void* checked(void* bytes) {
    if (bytes == nullptr) throw std::bad_alloc();
    return bytes;
}

}  // namespace

namespace grainside::testing_listing {

std::size_t allocations() {
    return count.load();
}

}  // namespace grainside::testing_listing

// The array and nothrow forms of the standard library call these.
void* operator new(std::size_t size) {
    ++count;
    return checked(std::malloc(size == 0 ? 1 : size));
}
void* operator new(std::size_t size, std::align_val_t alignment) {
    ++count;
    const auto unit = static_cast<std::size_t>(alignment);
    return checked(std::aligned_alloc(unit, (size + unit - 1) / unit * unit));
}
void operator delete(void* bytes) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::size_t) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::align_val_t) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::size_t, std::align_val_t) noexcept {
    std::free(bytes);
}
