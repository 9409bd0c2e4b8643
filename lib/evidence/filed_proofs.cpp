// FiledProofs: reading the files, and what messages say of a document.
#include "grainside/filed_proofs.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "document/inert_text.h"
#include "document/yaml_document.h"
#include "evidence/list_file.h"
#include "evidence/proof_index.h"
#include "evidence/proof_reader.h"
#include "rules/book_data.h"

namespace grainside {
inline namespace v0 {

namespace {

namespace fs = std::filesystem;

void read_text(std::string file, std::string text, const fs::path& folder, const RuleBook& book,
               evidence::ProofReader& proofs, document::Faults& faults) {
    const auto parsed = document::parse_yaml(std::move(file), std::move(text), faults);
    if (!parsed) return;
    const evidence::EntryReader reader(book.data(), *parsed, faults);
    proofs.read(reader, parsed->root(), folder, "file of proofs");
}

// "ISO 811 or IEC 60529", each once.
std::string standards_asked(const RuleBook& book, ConceptId says) {
    std::vector<std::string_view> names;
    for (const Demand& demand : book.demands_for(says)) {
        if (demand.standard.empty()) continue;
        if (std::find(names.begin(), names.end(), demand.standard) == names.end()) names.push_back(demand.standard);
    }
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i != 0) text += i + 1 == names.size() ? " or " : ", ";
        text += names[i];
    }
    return text;
}

}  // namespace

void FiledProofs::Index::add(FiledProof proof) {
    const auto number = static_cast<std::uint32_t>(all.size());
    for (const ConceptId says : proof.says) {
        OfConcept& of = of_concept[says];
        if (proof.listings.empty()) of.of_any_listing.push_back(number);
        for (const std::string& listing : proof.listings) of.of_listing[listing].push_back(number);
    }
    all.push_back(std::move(proof));
}

FiledProofs::FiledProofs(std::unique_ptr<Index> index) : index_(std::move(index)) {}
FiledProofs::FiledProofs(FiledProofs&&) noexcept = default;
FiledProofs& FiledProofs::operator=(FiledProofs&&) noexcept = default;
FiledProofs::~FiledProofs() = default;

Result<FiledProofs> FiledProofs::read(std::span<const fs::path> files, const RuleBook& book) {
    document::Faults faults;
    auto index = std::make_unique<Index>();
    evidence::ProofReader proofs(*index);
    for (const fs::path& file : files) {
        if (auto text = evidence::read_list_file(file, "proofs", faults)) {
            read_text(file.generic_string(), std::move(*text), file.parent_path(), book, proofs, faults);
        }
    }
    if (faults.any_errors()) return faults.take();
    return FiledProofs(std::move(index));
}

Result<FiledProofs> FiledProofs::parse(std::string file, std::string text, const fs::path& folder,
                                       const RuleBook& book) {
    document::Faults faults;
    auto index = std::make_unique<Index>();
    evidence::ProofReader proofs(*index);
    read_text(std::move(file), std::move(text), folder, book, proofs, faults);
    if (faults.any_errors()) return faults.take();
    return FiledProofs(std::move(index));
}

std::span<const FiledProof> FiledProofs::all() const noexcept {
    return index_->all;
}

FiledProofs FiledProofs::joined_by(const FiledProofs& more) const {
    auto joined = std::make_unique<Index>(*index_);
    for (const FiledProof& proof : more.all()) joined->add(proof);
    return FiledProofs(std::move(joined));
}

std::string proof_text(const FiledProof& proof) {
    std::string text = fmt::format("{}, {}, {}", proof.document, proof.laboratory, proof.date);
    if (!proof.expires.empty()) text += fmt::format(", runs out {}", proof.expires);
    return text;
}

std::string why_not_lifted(const RuleBook& book, const FiledProof& proof, ProofOutcome outcome, ConceptId says) {
    switch (outcome) {
        case ProofOutcome::supports:
            break;
        case ProofOutcome::ran_out:
            return fmt::format("{} ran out on {}", proof.document, proof.expires);
        case ProofOutcome::not_yet:
            return fmt::format("{} holds only from {} on", proof.document, proof.date);
        case ProofOutcome::no_result:
            return fmt::format("{} states no result; a number is asked", proof.document);
        case ProofOutcome::other_standard:
            return fmt::format("{} names {}; {} is asked", proof.document, proof.standard, standards_asked(book, says));
    }
    return {};
}

void ProofLedger::add(std::span<const std::uint32_t> met) {
    for (const std::uint32_t proof : met) {
        if (proof < met_.size()) met_[proof] = true;
    }
}

void ProofLedger::add(const ProofLedger& other) {
    for (std::size_t at = 0; at < met_.size(); ++at) met_[at] = met_[at] || other.met_[at];
}

std::vector<Issue> ProofLedger::unused() const {
    constexpr std::size_t kMostNamedBytes = 60;
    std::vector<Issue> issues;
    for (std::size_t at = 0; at < met_.size(); ++at) {
        if (met_[at]) continue;
        const FiledProof& proof = proofs_.all()[at];
        Issue issue;
        issue.severity = Issue::Severity::warning;
        issue.code = "proof-unused";
        issue.file = proof.file;
        issue.line = proof.line;
        issue.message = fmt::format("the proof '{}' covered no claim",
                                    document::inert_text(proof.document.substr(0, kMostNamedBytes)));
        issue.hint = "are its listings, part and concepts those that `grainside claims` shows?";
        issues.push_back(std::move(issue));
    }
    return issues;
}

}  // namespace v0
}  // namespace grainside
