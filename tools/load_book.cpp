#include "load_book.h"

#include <filesystem>
#include <system_error>
#include <utility>

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
    for (Issue issue : book.issues()) {
        // Issues name files relative to the folder.
        if (!folder.empty() && issue.file != fs::path(folder).generic_string()) {
            issue.file = (fs::path(folder) / issue.file).generic_string();
        }
        diagnostics.report(issue);
    }
    return std::nullopt;
}

}  // namespace grainside::tools
