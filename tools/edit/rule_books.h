// The rule book as it stands on disk or is built in, and as it stands in the editor.
#ifndef GRAINSIDE_TOOLS_EDIT_RULE_BOOKS_H
#define GRAINSIDE_TOOLS_EDIT_RULE_BOOKS_H

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/evidence_book.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside::tools::edit {

using BookFiles = std::vector<document::Document>;

// Immutable. Neither moves nor is copied: the evidence half points at the rules.
struct LoadedBook {
    LoadedBook(std::shared_ptr<const BookFiles> base, RuleBook book) : files(std::move(base)), rules(std::move(book)) {}
    LoadedBook(const LoadedBook&) = delete;
    LoadedBook& operator=(const LoadedBook&) = delete;

    std::shared_ptr<const BookFiles> files;  // what the rules' texts point into
    RuleBook rules;
    std::optional<EvidenceBook> evidence;  // nothing where the book has no such half
};

// A file of the book that is open: its place in the book ("wording/split.yaml") and its text.
struct ChangedFile {
    std::string file;
    std::string_view text;
};

struct BookReading {
    std::shared_ptr<const LoadedBook> book;  // nullptr: it has faults
    std::vector<Issue> faults;               // of all files, with their places in the book
};

// Not thread-safe.
class RuleBooks {
public:
    // An empty folder stands for the book that is built in.
    explicit RuleBooks(std::string folder);

    const std::string& folder() const noexcept { return folder_; }
    // Reads the folder again.
    void refresh();
    // The book with these files in the place of its own, or beside them.
    BookReading read(const std::vector<ChangedFile>& changed) const;
    // The names that a reader of the book would have taken where `word` stands in one of the files.
    std::vector<std::string> names_in_place(const std::vector<ChangedFile>& changed, const std::string& word) const;

private:
    BookFiles with(const std::vector<ChangedFile>& changed, document::Faults& faults) const;

    std::string folder_;
    std::shared_ptr<const BookFiles> files_;
    std::vector<Issue> unreadable_;  // of the files of the folder that are no YAML
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_RULE_BOOKS_H
