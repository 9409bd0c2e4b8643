#include "listing/unpacking.h"

#include <zlib.h>
#include <zstd.h>
#include <zstd_errors.h>

#include <algorithm>
#include <cerrno>
#include <limits>
#include <string>
#include <utility>
#include <vector>

namespace grainside::listing {
namespace {

constexpr std::size_t kPackedBlockBytes = std::size_t{64} << 10;
constexpr int kMaxWindowLog = 27;

// The packed bytes, a block at a time, and what both unpackers say of themselves.
class Unpacker : public ByteSupply {
public:
    Unpacker(std::unique_ptr<ByteSupply> packed, std::string_view begin)
        : packed_(std::move(packed)), block_(begin.begin(), begin.end()), left_(begin.size()) {
        block_.resize(std::max(block_.size(), kPackedBlockBytes));
    }

    int error() const noexcept override { return error_ != 0 ? error_ : packed_->error(); }
    std::uint64_t bytes_taken() const noexcept override { return packed_->bytes_taken() - left_; }
    std::size_t stated_size() const noexcept override { return packed_->stated_size(); }
    void wake_by(int descriptor) noexcept override { packed_->wake_by(descriptor); }
    std::string_view fault() const noexcept override { return fault_; }
    std::string_view fault_hint() const noexcept override { return hint_; }

protected:
    std::string_view input() const noexcept { return {block_.data() + at_, left_}; }
    void took(std::size_t count) noexcept {
        at_ += count;
        left_ -= count;
    }
    // Whether there is any input; false at the end and after a read error.
    bool more_input() {
        if (left_ > 0) return true;
        at_ = 0;
        left_ = packed_->read(block_.data(), block_.size());
        return left_ > 0;
    }
    bool can_read_on() const noexcept { return error() == 0; }
    std::size_t fail(std::string fault, std::string hint) {
        fault_ = std::move(fault);
        hint_ = std::move(hint);
        error_ = EBADMSG;
        return 0;
    }
    std::size_t fail_at_end(std::string_view kind) {
        if (packed_->error() != 0) return 0;
        return fail("the " + std::string(kind) + " data break off", "fetch or pack the file again");
    }

private:
    std::unique_ptr<ByteSupply> packed_;
    std::vector<char> block_;
    std::size_t at_ = 0;
    std::size_t left_ = 0;
    int error_ = 0;
    std::string fault_;
    std::string hint_;
};

class GzipUnpacker final : public Unpacker {
public:
    using Unpacker::Unpacker;
    ~GzipUnpacker() override {
        if (ready_) ::inflateEnd(&stream_);
    }

    bool begin() {
        constexpr int kWindowBits = 15;
        constexpr int kGzipOnly = 16;
        ready_ = ::inflateInit2(&stream_, kWindowBits + kGzipOnly) == Z_OK;
        return ready_;
    }

    std::size_t read(char* to, std::size_t room) override {
        room = std::min<std::size_t>(room, std::numeric_limits<uInt>::max());
        std::size_t written = 0;
        while (written == 0 && can_read_on()) {
            const bool any = more_input();
            if (!in_member_ && (!any || !next_member())) return 0;
            // Without input a full buffer may have left some inside.
            written = inflate_some(to, room);
            if (!any && written == 0) return fail_at_end("gzip");
        }
        return written;
    }

private:
    // Behind a member stands another one, or zeros to the end of a block of tape, which gzip(1) passes over too.
    bool next_member() {
        if (!first_ && input().front() == '\0') {
            do {
                took(std::min(input().find_first_not_of('\0'), input().size()));
                if (!input().empty()) break;
            } while (more_input());
            if (input().empty()) return false;
        }
        if (!first_ && input().front() != '\x1F') {
            fail("what stands behind the gzip data is not gzip", "cut it off; what comes before was read");
            return false;
        }
        first_ = false;
        in_member_ = true;
        return ::inflateReset(&stream_) == Z_OK;
    }

    std::size_t inflate_some(char* to, std::size_t room) {
        const std::string_view from = input();
        stream_.next_in = reinterpret_cast<z_const Bytef*>(const_cast<char*>(from.data()));
        stream_.avail_in = static_cast<uInt>(from.size());
        stream_.next_out = reinterpret_cast<Bytef*>(to);
        stream_.avail_out = static_cast<uInt>(room);
        const int state = ::inflate(&stream_, Z_NO_FLUSH);
        took(from.size() - stream_.avail_in);
        const std::size_t written = room - stream_.avail_out;
        if (state == Z_STREAM_END) {
            in_member_ = false;
        } else if (state != Z_OK && state != Z_BUF_ERROR) {
            std::string fault = "the gzip data are damaged";
            if (stream_.msg != nullptr) fault.append(" (").append(stream_.msg).append(")");
            fail(std::move(fault), "fetch or pack the file again");
        }
        return written;
    }

    z_stream stream_{};
    bool ready_ = false;
    bool first_ = true;
    bool in_member_ = false;
};

class ZstdUnpacker final : public Unpacker {
public:
    using Unpacker::Unpacker;
    ~ZstdUnpacker() override { ::ZSTD_freeDStream(stream_); }

    bool begin() {
        stream_ = ::ZSTD_createDStream();
        return stream_ != nullptr &&
               ::ZSTD_isError(::ZSTD_DCtx_setParameter(stream_, ZSTD_d_windowLogMax, kMaxWindowLog)) == 0;
    }

    std::size_t read(char* to, std::size_t room) override {
        ZSTD_outBuffer out{to, room, 0};
        while (out.pos == 0 && can_read_on()) {
            // A full buffer may have left some of a frame inside, which needs no input.
            if (!more_input() && !has_rest_) return in_frame_ ? fail_at_end("zstd") : 0;
            const std::string_view from = input();
            ZSTD_inBuffer in{from.data(), from.size(), 0};
            const std::size_t state = ::ZSTD_decompressStream(stream_, &out, &in);
            took(in.pos);
            if (::ZSTD_isError(state) != 0) {
                report(state);
                break;
            }
            in_frame_ = state != 0;
            has_rest_ = in_frame_ && out.pos == out.size;
        }
        return out.pos;
    }

private:
    void report(std::size_t state) {
        switch (::ZSTD_getErrorCode(state)) {
            case ZSTD_error_frameParameter_windowTooLarge:
                fail("the zstd data ask for a window of more than 128 MiB", "pack it again with --long=27 or less");
                return;
            case ZSTD_error_prefix_unknown:
                fail("what stands behind the zstd data is not zstd", "cut it off; what comes before was read");
                return;
            case ZSTD_error_memory_allocation:
                fail("there is not enough memory for the window of the zstd data", "pack it again with less");
                return;
            default:
                fail(std::string("the zstd data are damaged (") + ::ZSTD_getErrorName(state) + ")",
                     "fetch or pack the file again");
        }
    }

    ZSTD_DStream* stream_ = nullptr;
    bool in_frame_ = false;
    bool has_rest_ = false;
};

template <typename Kind>
std::unique_ptr<ByteSupply> begun(std::unique_ptr<ByteSupply> supply, std::string_view begin) {
    auto unpacker = std::make_unique<Kind>(std::move(supply), begin);
    if (!unpacker->begin()) return nullptr;
    return unpacker;
}

bool ends_with_letters(std::string_view name, std::string_view ending) {
    if (name.size() < ending.size()) return false;
    const std::string_view end = name.substr(name.size() - ending.size());
    return std::equal(end.begin(), end.end(), ending.begin(), [](char a, char b) {
        return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b;
    });
}

}  // namespace

Packing packing_of(std::string_view first_bytes) {
    using namespace std::string_view_literals;
    if (first_bytes.size() < kPackingMarkBytes) return Packing::none;
    // The third byte is the method, and 8 is the only one.
    if (first_bytes.starts_with("\x1F\x8B\x08"sv)) return Packing::gzip;
    if (first_bytes.starts_with("\x28\xB5\x2F\xFD"sv)) return Packing::zstd;
    // A skippable frame, as parallel packers put in front.
    const bool skips =
        (static_cast<unsigned char>(first_bytes[0]) & 0xF0U) == 0x50U && first_bytes.substr(1, 3) == "\x2A\x4D\x18"sv;
    return skips ? Packing::zstd : Packing::none;
}

std::string_view name_without_packing(std::string_view name) {
    for (const std::string_view ending : {std::string_view(".gz"), std::string_view(".zst")}) {
        if (ends_with_letters(name, ending)) return name.substr(0, name.size() - ending.size());
    }
    return name;
}

std::unique_ptr<ByteSupply> unpacking_supply(Packing packing, std::unique_ptr<ByteSupply> supply,
                                             std::string_view begin) {
    return packing == Packing::gzip ? begun<GzipUnpacker>(std::move(supply), begin)
                                    : begun<ZstdUnpacker>(std::move(supply), begin);
}

}  // namespace grainside::listing
