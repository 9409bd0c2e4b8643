// The entries of proofs on file: of a file of their own, and of a dossier's section `proofs` (rules/EVIDENCE.md,
// section 10).
#ifndef GRAINSIDE_EVIDENCE_PROOF_READER_H
#define GRAINSIDE_EVIDENCE_PROOF_READER_H

#include <filesystem>
#include <map>
#include <string>

#include "evidence/beside_digests.h"
#include "evidence/entry_reader.h"
#include "evidence/proof_index.h"

namespace grainside::evidence {

// Copies of documents, each and all together; beyond it is a fault "too-large".
inline constexpr std::uintmax_t kMaxProofCopyBytes = std::uintmax_t{256} << 20;
inline constexpr std::uintmax_t kMaxProofCopiesBytes = std::uintmax_t{1} << 30;

// Reads lists of entries into one index; faults: see FiledProofs::read. Not thread-safe.
class ProofReader {
public:
    explicit ProofReader(FiledProofs::Index& index) : index_(index), digests_(kMaxProofCopiesBytes) {}

    // `owner` is what messages call the file that names copies: "dossier".
    void read(const EntryReader& reader, document::Node list, const std::filesystem::path& folder,
              std::string_view owner);

private:
    struct Home {
        const std::filesystem::path& folder;
        std::string_view owner;
    };
    void read_one(const EntryReader& reader, document::Node entry, const Home& home);
    void read_scope(const EntryReader& reader, document::Node entry, FiledProof& proof) const;
    void read_copy(const EntryReader& reader, document::Node entry, const Home& home, FiledProof& proof);
    void add(const EntryReader& reader, document::Node entry, FiledProof proof);

    FiledProofs::Index& index_;
    BesideDigests digests_;
    std::map<std::string, std::uint32_t> same_;  // what makes an entry the same as another: its number
    bool full_ = false;
};

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_PROOF_READER_H
