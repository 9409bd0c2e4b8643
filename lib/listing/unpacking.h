// Packed bytes (gzip, RFC 1952; zstd, RFC 8878) as a supply of what is packed in them.
//
// Members and frames that stand one behind the other are one text. Nothing is held but a window and one block of input:
// gzip needs 32 KiB, zstd what the data ask for and at most 128 MiB (its own default limit, 2 to the 27th). A few bytes
// that unpack to many cost time and no memory.
#ifndef GRAINSIDE_LISTING_UNPACKING_H
#define GRAINSIDE_LISTING_UNPACKING_H

#include <cstdint>
#include <memory>
#include <string_view>

#include "listing/byte_supply.h"

namespace grainside::listing {

enum class Packing : std::uint8_t { none, gzip, zstd };

// So many first bytes say how a source is packed.
inline constexpr std::size_t kPackingMarkBytes = 4;

// By the first bytes (RFC 1952 section 2.3.1; RFC 8878 sections 3.1.1 and 3.1.2), whatever the name. None of these can
// begin a text in UTF-8.
Packing packing_of(std::string_view first_bytes);

// The name without .gz or .zst in any case of letters.
std::string_view name_without_packing(std::string_view name);

// `begin` was read from `supply` already and is taken first. Nothing where there is no memory for it. A failure of the
// data is `fault`, with EBADMSG as the error. REQUIRES: `packing` is not none.
std::unique_ptr<ByteSupply> unpacking_supply(Packing packing, std::unique_ptr<ByteSupply> supply,
                                             std::string_view begin);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_UNPACKING_H
