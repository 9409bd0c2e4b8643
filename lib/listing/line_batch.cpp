#include "listing/line_batch.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <limits>

#include "listing/byte_order_mark.h"

namespace grainside::listing {
namespace {

constexpr std::uint64_t kAll = std::numeric_limits<std::uint64_t>::max();
// A buffer more than so many times larger than needed is given back.
constexpr std::size_t kMostSlack = 8;

// Behind the last line end of `text`; 0 where it has none.
std::size_t end_of_lines(std::string_view text) {
    const void* found = ::memrchr(text.data(), '\n', text.size());
    return found == nullptr ? 0 : static_cast<std::size_t>(static_cast<const char*>(found) - text.data()) + 1;
}

}  // namespace

LineBatcher::LineBatcher(ByteSource& source, std::size_t batch_bytes, std::uint64_t pass_over,
                         std::size_t max_record_bytes)
    : source_(&source),
      batch_bytes_(std::max<std::size_t>(batch_bytes, 1)),
      pass_over_(pass_over),
      max_record_bytes_(max_record_bytes),
      count_(max_record_bytes) {}

bool LineBatcher::take(LineBatch& batch) {
    batch.lines = {};
    batch.records = 0;
    batch.too_large = 0;
    batch.ends_input = false;
    batch.at_the_end.clear();
    if (ended_) return false;
    if (!begun_) {
        begun_ = true;
        IssueSink sink(source_->name());
        sink.begin(batch.at_the_end);
        if (!pass_byte_order_mark(*source_, sink)) {
            ended_ = batch.ends_input = true;
            return true;
        }
        at_.bytes = source_->offset();
    }
    for (;;) {
        std::size_t size = gather();
        if (source_->error() == ECANCELED) {
            ended_ = true;
            return false;
        }
        if (skip(size)) continue;
        fill(batch, size);
        if (source_ended_ && source_->pending().empty() && too_large_ == 0) finish(batch);
        return true;
    }
}

// The bytes of whole lines at the beginning of what is pending. 0 only at the end of the source and behind a line that
// is too large.
std::size_t LineBatcher::gather() {
    std::size_t searched = 0;
    for (;;) {
        const std::string_view text = source_->pending();
        if (text.size() >= batch_bytes_ || source_ended_ || source_->may_wait()) {
            // What a block brought beyond a batch is not left for a small one of its own.
            const bool all = text.size() <= batch_bytes_ + batch_bytes_ / 4;
            const std::size_t limit = all ? text.size() : batch_bytes_;
            if (searched < limit) {
                const std::size_t end = end_of_lines(text.substr(searched, limit - searched));
                if (end != 0) return searched + end;
                searched = limit;
            }
            const std::size_t end = text.find('\n', searched);
            if (end != std::string_view::npos) return end + 1;
            searched = text.size();
            if (searched > max_record_bytes_) {
                pass_over_line();
                return 0;
            }
            if (source_ended_) {
                if (source_->error() == 0) return searched;
                source_->consume(searched);  // what an error broke off is no line
                return 0;
            }
        }
        source_ended_ = !source_->more();
    }
}

// Goes behind the line that has begun, keeping nothing of it.
void LineBatcher::pass_over_line() {
    too_large_ = at_.lines + 1;
    for (;;) {
        const std::size_t end = source_->pending().find('\n');
        if (end != std::string_view::npos) {
            source_->consume(end + 1);
            return;
        }
        source_->consume(source_->pending().size());
        if (!source_->more()) {
            source_ended_ = true;
            return;
        }
    }
}

// Leaves out records that are to be passed over; true where nothing is left to give.
bool LineBatcher::skip(std::size_t& size) {
    if (pass_over_ > at_.records) {
        const LineCount::Counted passed = count_.count(source_->pending().substr(0, size), pass_over_ - at_.records);
        source_->consume(passed.bytes);
        size -= passed.bytes;
        at_.lines += passed.lines;
        at_.records += passed.records;
        at_.bytes = source_->offset();
        if (too_large_ != 0 && pass_over_ > at_.records) {
            too_large_ = 0;
            ++at_.lines;
            ++at_.records;
        }
    }
    return size == 0 && too_large_ == 0 && !(source_ended_ && source_->pending().empty());
}

void LineBatcher::fill(LineBatch& batch, std::size_t size) {
    if (batch.room < size || batch.room / kMostSlack > std::max(size, batch_bytes_)) {
        const std::size_t room = size + size / 4;
        batch.memory = std::make_unique_for_overwrite<char[]>(room);
        batch.room = room;
    }
    std::copy_n(source_->pending().data(), size, batch.memory.get());
    batch.lines = {batch.memory.get(), size};
    source_->consume(size);
    const LineCount::Counted counted = count_.count(batch.lines, kAll);
    batch.before = at_;
    batch.records = counted.records;
    if (too_large_ != 0) {
        batch.too_large = too_large_;
        ++batch.records;
        ++at_.lines;
        too_large_ = 0;
    }
    at_.lines += counted.lines;
    at_.records += batch.records;
    at_.bytes = source_->offset();
}

void LineBatcher::finish(LineBatch& batch) {
    ended_ = batch.ends_input = true;
    IssueSink sink(source_->name());
    sink.begin(batch.at_the_end);
    report_read_error(*source_, sink);
}

}  // namespace grainside::listing
