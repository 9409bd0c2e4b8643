#include "interrupt.h"

#include <fcntl.h>
#include <sys/eventfd.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdint>

namespace grainside::tools {
namespace {

constexpr std::array<int, 2> kSignals = {SIGINT, SIGTERM};

// What a signal handler can reach.
std::atomic<bool> stop_asked{false};
std::atomic<int> signal_seen{0};
std::atomic<int> wake{-1};
static_assert(std::atomic<bool>::is_always_lock_free && std::atomic<int>::is_always_lock_free);

void wake_all() noexcept {
    stop_asked.store(true);
    const std::uint64_t one = 1;
    // A full counter wakes as well.
    if (wake.load() >= 0 && ::write(wake.load(), &one, sizeof one) < 0) return;
}

// Not 0, 1 or 2, one of which the program may have been started without: output would go there.
int descriptor_to_wake() noexcept {
    const int made = ::eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK);
    if (made < 0 || made > STDERR_FILENO) return made;
    const int moved = ::fcntl(made, F_DUPFD_CLOEXEC, STDERR_FILENO + 1);
    ::close(made);
    return moved;
}

extern "C" void note_signal(int number) {
    const int error = errno;
    for (const int signal : kSignals) std::signal(signal, SIG_DFL);
    signal_seen.store(number);
    wake_all();
    errno = error;
}

}  // namespace

Interrupt::Interrupt() {
    stop_asked.store(false);
    signal_seen.store(0);
    wake.store(descriptor_to_wake());
    for (const int signal : kSignals) {
        struct sigaction now {};
        if (::sigaction(signal, nullptr, &now) != 0 || now.sa_handler == SIG_IGN) continue;
        struct sigaction ours {};
        ours.sa_handler = note_signal;
        ours.sa_flags = SA_RESTART;
        ::sigaction(signal, &ours, nullptr);
    }
}

Interrupt::~Interrupt() {
    for (const int signal : kSignals) {
        struct sigaction now {};
        if (::sigaction(signal, nullptr, &now) == 0 && now.sa_handler == note_signal) std::signal(signal, SIG_DFL);
    }
    const int descriptor = wake.exchange(-1);
    if (descriptor >= 0) ::close(descriptor);
}

const std::atomic<bool>& Interrupt::stop() const noexcept {
    return stop_asked;
}

int Interrupt::wake_descriptor() const noexcept {
    return wake.load();
}

void Interrupt::ask_to_stop() noexcept {
    wake_all();
}

bool Interrupt::by_signal() const noexcept {
    return signal_seen.load() != 0;
}

int Interrupt::end(int status) {
    if (!by_signal()) return status;
    std::signal(signal_seen.load(), SIG_DFL);
    std::raise(signal_seen.load());
    return status;
}

}  // namespace grainside::tools
