#include "document/bounded_stream.h"

namespace grainside::document {

BoundedStream::int_type BoundedStream::underflow() {
    ended_early_ = ended_early_ || (!rest_.empty() && ahead_ >= most_ahead_);
    const std::size_t count = ended_early_ ? 0 : rest_.copy(block_.data(), block_.size());
    if (count == 0) return traits_type::eof();
    rest_.remove_prefix(count);
    ahead_ += count;
    setg(block_.data(), block_.data(), block_.data() + count);
    return traits_type::to_int_type(block_[0]);
}

}  // namespace grainside::document
