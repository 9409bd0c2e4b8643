#include "support/allocations.h"

#include <atomic>
#include <cstdlib>
#include <limits>
#include <new>

namespace {

std::atomic<std::size_t> count{0};
std::atomic<std::size_t> bytes{0};
constexpr std::size_t kNoEnd = std::numeric_limits<std::size_t>::max();
thread_local std::size_t left = kNoEnd;

bool is_given(std::size_t size) noexcept {
    ++count;
    bytes += size;
    if (left == kNoEnd) return true;
    if (left == 0) return false;
    --left;
    return true;
}

void* piece(std::size_t size) noexcept {
    return is_given(size) ? std::malloc(size == 0 ? 1 : size) : nullptr;
}

void* piece(std::size_t size, std::align_val_t alignment) noexcept {
    const auto unit = static_cast<std::size_t>(alignment);
    return is_given(size) ? std::aligned_alloc(unit, (size + unit - 1) / unit * unit) : nullptr;
}

void* or_thrown(void* memory) {
    if (memory == nullptr) throw std::bad_alloc();
    return memory;
}

}  // namespace

// All forms, since a sanitizer brings its own of those that are not replaced.
void* operator new(std::size_t size) {
    return or_thrown(piece(size));
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    return piece(size);
}
void* operator new[](std::size_t size) {
    return or_thrown(piece(size));
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
    return piece(size);
}
void* operator new(std::size_t size, std::align_val_t alignment) {
    return or_thrown(piece(size, alignment));
}
void* operator new(std::size_t size, std::align_val_t alignment, const std::nothrow_t&) noexcept {
    return piece(size, alignment);
}
void* operator new[](std::size_t size, std::align_val_t alignment) {
    return or_thrown(piece(size, alignment));
}
void* operator new[](std::size_t size, std::align_val_t alignment, const std::nothrow_t&) noexcept {
    return piece(size, alignment);
}
void operator delete(void* memory) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}
void operator delete(void* memory, const std::nothrow_t&) noexcept {
    std::free(memory);
}
void operator delete[](void* memory) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, const std::nothrow_t&) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::align_val_t) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::align_val_t, const std::nothrow_t&) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, std::align_val_t) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, std::size_t, std::align_val_t) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, std::align_val_t, const std::nothrow_t&) noexcept {
    std::free(memory);
}

namespace grainside::support {

Allocations allocations() {
    return {count, bytes};
}

NoMemoryAfter::NoMemoryAfter(std::size_t pieces) {
    left = pieces;
}

NoMemoryAfter::~NoMemoryAfter() {
    left = kNoEnd;
}

}  // namespace grainside::support
