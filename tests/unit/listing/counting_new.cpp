#include "counting_new.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {

std::atomic<std::size_t> count{0};

void* counted(std::size_t size) {
    ++count;
    return std::malloc(size == 0 ? 1 : size);
}

void* counted(std::size_t size, std::align_val_t alignment) {
    ++count;
    const auto unit = static_cast<std::size_t>(alignment);
    return std::aligned_alloc(unit, (size + unit - 1) / unit * unit);
}

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

// All forms, since a sanitizer brings its own of those that are not replaced.
void* operator new(std::size_t size) {
    return checked(counted(size));
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    return counted(size);
}
void* operator new[](std::size_t size) {
    return checked(counted(size));
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
    return counted(size);
}
void* operator new(std::size_t size, std::align_val_t alignment) {
    return checked(counted(size, alignment));
}
void* operator new(std::size_t size, std::align_val_t alignment, const std::nothrow_t&) noexcept {
    return counted(size, alignment);
}
void operator delete(void* bytes) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::size_t) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, const std::nothrow_t&) noexcept {
    std::free(bytes);
}
void operator delete[](void* bytes) noexcept {
    std::free(bytes);
}
void operator delete[](void* bytes, std::size_t) noexcept {
    std::free(bytes);
}
void operator delete[](void* bytes, const std::nothrow_t&) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::align_val_t) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::size_t, std::align_val_t) noexcept {
    std::free(bytes);
}
void operator delete(void* bytes, std::align_val_t, const std::nothrow_t&) noexcept {
    std::free(bytes);
}
