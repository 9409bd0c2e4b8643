#include "grainside/evidence_book.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "evidence/load_alloys.h"
#include "evidence/load_candidates.h"
#include "evidence/load_costs.h"
#include "evidence/load_evidence.h"
#include "evidence/load_judging.h"
#include "evidence/load_limits.h"
#include "evidence/load_methods.h"
#include "rules/book_data.h"

namespace grainside {

void evidence::load_evidence(const rules::BookData& book, EvidenceData& data, document::Faults& faults) {
    // Each refers to those before it only.
    load_judging(book, data, faults);
    load_alloys(book, data, faults);
    load_candidates(book, data, faults);
    load_methods(book, data, faults);
    load_limits(book, data, faults);
    load_costs(book, data, faults);
}

inline namespace v0 {

EvidenceBook::EvidenceBook(const RuleBook& book, std::unique_ptr<evidence::EvidenceData> data)
    : book_(&book), data_(std::move(data)) {}
EvidenceBook::EvidenceBook(EvidenceBook&&) noexcept = default;
EvidenceBook& EvidenceBook::operator=(EvidenceBook&&) noexcept = default;
EvidenceBook::~EvidenceBook() = default;

bool EvidenceBook::is_there(const RuleBook& book) noexcept {
    constexpr std::string_view kFiles[] = {"candidates.yaml", "alloys.yaml", "judging.yaml"};
    constexpr std::string_view kFolders[] = {"methods/", "limits/", "costs/"};
    const auto& documents = book.data().documents;
    return std::any_of(documents.begin(), documents.end(), [&](const document::Document& document) {
        const std::string_view file = document.file();
        return std::find(std::begin(kFiles), std::end(kFiles), file) != std::end(kFiles) ||
               std::any_of(std::begin(kFolders), std::end(kFolders),
                           [&](std::string_view folder) { return file.starts_with(folder); });
    });
}

Result<EvidenceBook> EvidenceBook::load(const RuleBook& book) {
    document::Faults faults;
    auto data = std::make_unique<evidence::EvidenceData>();
    evidence::load_evidence(book.data(), *data, faults);
    if (faults.any_errors()) return faults.take();
    return EvidenceBook(book, std::move(data));
}

std::size_t EvidenceBook::method_count() const noexcept {
    return data_->methods.size();
}
std::size_t EvidenceBook::limit_count() const noexcept {
    return data_->limits.size();
}
std::size_t EvidenceBook::candidate_count() const noexcept {
    std::size_t count = 0;
    for (const evidence::Frame& frame : data_->frames) count += frame.candidates.size();
    return count;
}

}  // namespace v0
}  // namespace grainside
