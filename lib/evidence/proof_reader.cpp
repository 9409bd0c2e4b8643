#include "evidence/proof_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "evidence/beside_file.h"
#include "evidence/stated_digest.h"

namespace grainside::evidence {

using document::Node;

namespace {

template <typename Items>
void keep_each_once(Items& items) {
    std::sort(items.begin(), items.end());
    items.erase(std::unique(items.begin(), items.end()), items.end());
}

// Equal for entries that say the same document of the same claims. Texts may hold any byte, so their lengths stand
// there.
std::string key_of(const FiledProof& proof) {
    std::string key;
    const auto add = [&](std::string_view text) { key += fmt::format("{}:{}", text.size(), text); };
    for (const std::string* text : {&proof.document, &proof.laboratory, &proof.date, &proof.standard}) add(*text);
    for (const std::string& listing : proof.listings) add(listing);
    key += '|';
    for (const ConceptId says : proof.says) key += fmt::format("{},", says);
    for (const Part part : proof.parts) add(name_of(part));
    return key;
}

bool few_enough(const EntryReader& reader, Node list) {
    if (std::distance(list.begin(), list.end()) <= static_cast<std::ptrdiff_t>(kMaxFiledProofScope)) return true;
    reader.error(list, "too-large", fmt::format("more than {} in one list", kMaxFiledProofScope),
                 "make an entry for each hundred");
    return false;
}

}  // namespace

void ProofReader::read(const EntryReader& reader, Node list, const std::filesystem::path& folder,
                       std::string_view owner) {
    if (!list.exists() || list.kind() == document::NodeKind::null) return;
    if (!list.is_sequence()) {
        reader.error(list, "wrong-type", "proofs on file are a list", "begin each with '- document: ...'");
        return;
    }
    for (const Node entry : list) read_one(reader, entry, {folder, owner});
}

void ProofReader::read_one(const EntryReader& reader, Node entry, const Home& home) {
    if (!reader.check_keys(
            entry, {"document", "laboratory", "date", "expires", "scope", "standard", "result", "file", "digest"})) {
        return;
    }
    if (index_.all.size() >= kMaxFiledProofs) {
        if (!full_) reader.error(entry, "too-many-proofs", fmt::format("more than {} proofs", kMaxFiledProofs));
        full_ = true;
        return;
    }
    FiledProof proof;
    proof.document = reader.required_text(entry, "document", kMaxFiledProofText);
    proof.laboratory = reader.required_text(entry, "laboratory", kMaxFiledProofText);
    proof.date = reader.required_day(entry, "date", "write the day of the document as YYYY-MM-DD");
    if (entry.find("expires").exists()) proof.expires = reader.required_day(entry, "expires", {});
    if (!proof.expires.empty() && !proof.date.empty() && proof.expires < proof.date) {
        reader.error(entry.find("expires"), "bad-date", "it runs out before the day from which it holds");
    }
    proof.standard = reader.text_if_named(entry, "standard", kMaxFiledProofText);
    proof.result = reader.text_if_named(entry, "result", kMaxFiledProofText);
    proof.file = reader.document().file();
    proof.line = entry.line();
    read_scope(reader, entry, proof);
    read_copy(reader, entry, home, proof);
    add(reader, entry, std::move(proof));
}

void ProofReader::read_scope(const EntryReader& reader, Node entry, FiledProof& proof) const {
    const Node scope = entry.find("scope");
    if (!scope.exists()) {
        reader.error(entry, "missing-key", "`scope` must stand here",
                     "say what the document is about, as in `scope: {says: [waterproof]}`");
        return;
    }
    if (!reader.check_keys(scope, {"listings", "part", "says"})) return;
    if (const Node says = scope.find("says"); !says.exists()) {
        reader.error(scope, "missing-key", "`says` must stand here",
                     "name the claims that the document supports by their concepts, as in `says: [waterproof]`");
    } else if (few_enough(reader, says)) {
        proof.says = reader.concepts(says);
        const bool empty = says.is_scalar() ? says.text().empty() : says.begin() == says.end();
        if (empty) reader.error(says, "missing-key", "`says` is empty");
        keep_each_once(proof.says);
    }
    if (const Node part = scope.find("part"); part.exists()) {
        reader.each_text(part, [&](Node one) {
            if (const auto named = reader.part(one, one.text())) proof.parts.push_back(*named);
        });
        keep_each_once(proof.parts);
    }
    const Node listings = scope.find("listings");
    if (!listings.exists() || !few_enough(reader, listings)) return;
    reader.each_text(listings, [&](Node one) {
        if (one.text().empty()) {
            reader.error(one, "missing-key", "a listing without a name", "leave `listings` out to mean all of them");
        } else if (one.text().size() > kMaxFiledProofText) {
            reader.error(one, "too-long", fmt::format("a listing's id of more than {} bytes", kMaxFiledProofText));
        } else {
            proof.listings.emplace_back(one.text());
        }
    });
    // An empty list would mean none to one reader and all to another.
    if (listings.begin() == listings.end() && !listings.is_scalar()) {
        reader.error(listings, "missing-key", "`listings` is empty", "leave it out to mean all of them");
    }
    keep_each_once(proof.listings);
}

void ProofReader::read_copy(const EntryReader& reader, Node entry, const Home& home, FiledProof& proof) {
    const Node copy = entry.find("file");
    const Node digest = entry.find("digest");
    if (!copy.exists()) {
        if (digest.exists()) {
            reader.error(digest, "missing-key", "`digest` is that of a `file`", "name the document's file, too");
        }
        return;
    }
    proof.copy = reader.required_text(entry, "file", kMaxFiledProofText);
    if (proof.copy.empty()) return;
    const BesideFile found = find_beside(home.folder, proof.copy, Where::below, kMaxProofCopyBytes, home.owner);
    if (!found.found()) {
        reader.error(copy, found.code, found.message, found.hint);
        return;
    }
    if (!digest.exists()) return;
    const BesideDigests::Answer answer = digests_.of(found.path);
    if (answer.trouble == BesideDigests::Trouble::too_large_together) {
        reader.error(copy, "too-large",
                     fmt::format("the files named here have more than {} MiB together", kMaxProofCopiesBytes >> 20U));
    } else if (answer.trouble == BesideDigests::Trouble::unreadable) {
        reader.error(copy, "unreadable", fmt::format("'{}' cannot be read", proof.copy));
    } else {
        check_stated_digest(reader, digest, answer.sha256,
                            "the document is not the one whose digest stands here: it has changed since",
                            "bring back the document as it was issued");
        proof.sha256 = answer.sha256;
    }
}

void ProofReader::add(const EntryReader& reader, Node entry, FiledProof proof) {
    const auto [same, is_new] = same_.try_emplace(key_of(proof), static_cast<std::uint32_t>(index_.all.size()));
    const bool complete =
        !proof.document.empty() && !proof.laboratory.empty() && !proof.date.empty() && !proof.says.empty();
    if (!is_new && complete) {
        const FiledProof& first = index_.all[same->second];
        reader.error(entry, "duplicate-proof",
                     fmt::format("this is on file already, in line {} of {}", first.line, first.file),
                     "keep one of them");
        return;
    }
    index_.add(std::move(proof));
}

}  // namespace grainside::evidence
