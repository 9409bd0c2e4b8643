// A SHA-256 that was written down, held against that of what is here now. Thread-safe for distinct readers.
#ifndef GRAINSIDE_EVIDENCE_STATED_DIGEST_H
#define GRAINSIDE_EVIDENCE_STATED_DIGEST_H

#include <string>
#include <string_view>

#include "evidence/entry_reader.h"

namespace grainside::evidence {

// `stated`, 64 digits 0-9 and a-f with or without "sha256:" before them, must be `found`. Nothing is asked where it is
// absent. Faults: "bad-digest", "digest-differs"; of the latter `differs` is the message, and the hint ends in `found`.
void check_stated_digest(const EntryReader& reader, document::Node stated, std::string_view found,
                         std::string_view differs, std::string_view hint);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_STATED_DIGEST_H
