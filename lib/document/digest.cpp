#include "document/digest.h"

#include <xxhash.h>

#include <string>
#include <string_view>

namespace grainside::document {

namespace {

class Digest {
public:
    Digest() { XXH3_64bits_reset(&state_); }
    void add(std::string_view bytes) {
        constexpr char kEnd = '\xff';  // no byte of UTF-8: keeps 'ab','c' and 'a','bc' apart
        waiting_ += bytes;
        waiting_ += kEnd;
        if (waiting_.size() >= kPortion) flush();
    }
    std::uint64_t value() {
        flush();
        return XXH3_64bits_digest(&state_);
    }

private:
    static constexpr std::size_t kPortion = 4096;  // a call for each short text would cost more than its bytes
    void flush() {
        XXH3_64bits_update(&state_, waiting_.data(), waiting_.size());
        waiting_.clear();
    }
    XXH3_state_t state_;
    std::string waiting_;
};

void add_node(Digest& digest, Node node) {
    digest.add(node.key());
    digest.add(node.is_scalar() ? "=" : node.is_sequence() ? "[" : "{");
    digest.add(node.text());
    for (Node child : node) add_node(digest, child);
    digest.add("end");
}

}  // namespace

std::uint64_t digest_of(std::span<const Document> documents) {
    Digest digest;
    for (const Document& document : documents) {
        digest.add(document.file());
        if (document.root().exists()) add_node(digest, document.root());
    }
    return digest.value();
}

std::uint64_t digest_of(std::initializer_list<std::string_view> texts) {
    Digest digest;
    for (const std::string_view text : texts) digest.add(text);
    return digest.value();
}

}  // namespace grainside::document
