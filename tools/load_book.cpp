#include "load_book.h"

#include <filesystem>
#include <system_error>
#include <utility>

#include "book_faults.h"

namespace grainside::tools {
namespace {

namespace fs = std::filesystem;

bool is_folder(const std::string& folder, Diagnostics& diagnostics) {
    std::error_code error;
    if (fs::is_directory(folder, error)) return true;
    Issue issue;
    issue.code = "unreadable";
    issue.file = folder;
    issue.message = error ? "the rule folder cannot be read: " + error.message() : "the rule folder is not a folder";
    issue.hint = "--rules takes a folder that is laid out like the project's own rules/";
    diagnostics.report(issue);
    return false;
}

}  // namespace

std::optional<RuleBook> load_book(const std::string& folder, Diagnostics& diagnostics) {
    if (!folder.empty() && !is_folder(folder, diagnostics)) return std::nullopt;
    Result<RuleBook> book = folder.empty() ? RuleBook::built_in() : RuleBook::load(folder);
    if (book) return std::move(book).value();
    diagnostics.report(with_folder(std::move(book).issues(), folder));
    return std::nullopt;
}

std::optional<EvidenceBook> load_evidence(const RuleBook& book, const std::string& folder, Diagnostics& diagnostics) {
    Result<EvidenceBook> evidence = EvidenceBook::load(book);
    if (evidence) return std::move(evidence).value();
    diagnostics.report(with_folder(std::move(evidence).issues(), folder));
    return std::nullopt;
}

std::optional<EvidenceBook> load_evidence_if_any(const RuleBook& book, const std::string& folder,
                                                 Diagnostics& diagnostics) {
    if (!EvidenceBook::is_there(book)) return std::nullopt;
    return load_evidence(book, folder, diagnostics);
}

}  // namespace grainside::tools
