#include "support/allocations.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {
std::atomic<std::size_t> count{0};
std::atomic<std::size_t> bytes{0};
}  // namespace

void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    ++count;
    bytes += size;
    return std::malloc(size == 0 ? 1 : size);
}

void* operator new(std::size_t size) {
    if (void* const memory = ::operator new(size, std::nothrow)) return memory;
    throw std::bad_alloc();
}

void operator delete(void* memory) noexcept {
    std::free(memory);
}

void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}

namespace grainside::support {

Allocations allocations() {
    return {count, bytes};
}

}  // namespace grainside::support
