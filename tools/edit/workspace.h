// Everything that is known of the open documents: what they are, what is said of them, by which rules and concessions.
//
// Besides what the client opened, it reads the rule folder of the call, the file of concessions and what an open
// dossier names in its own folder; nothing else. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_EDIT_WORKSPACE_H
#define GRAINSIDE_TOOLS_EDIT_WORKSPACE_H

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "edit/agreed_file.h"
#include "edit/check_context.h"
#include "edit/completion.h"
#include "edit/document_kind.h"
#include "edit/open_documents.h"
#include "edit/remark.h"
#include "edit/rule_books.h"
#include "edit/wording_edit.h"

namespace grainside::tools::edit {

struct WorkspaceOptions {
    std::string rules_folder;          // absolute; empty: the book that is built in
    std::vector<std::string> markets;  // in the letters of the book
    std::string on;                    // empty: today; of dossiers the day of capture
    std::string concessions;           // absolute; empty: concessions.yaml in the workspace's root
};

class Workspace {
public:
    // `root`: the workspace's folder; empty: none.
    Workspace(WorkspaceOptions options, PositionEncoding encoding, std::string root);

    OpenDocument* open(const std::optional<Json>& item);
    void changed(std::string_view uri);
    bool close(std::string_view uri);
    // Files that are not open may be others now.
    void files_changed();
    OpenDocument* find(std::string_view uri) { return documents_.find(uri); }

    // The open documents of which something else may be said than the client was told; asking leaves none.
    std::vector<std::string> take_untold();
    bool any_untold() const noexcept;

    // In the order of the text.
    const std::vector<Remark>& remarks(const OpenDocument& document);
    // Of edits that meet `where`; of none that lies in another.
    std::vector<WordingEdit> wordings(const OpenDocument& document, const TextSpan& where);
    Completion completion(const OpenDocument& document, std::size_t caret);
    // Whether names of the rule book stand in it.
    bool holds_names(const OpenDocument& document);

    // nullptr: the book has faults, which `book_faults` tells.
    const LoadedBook* book() const noexcept { return book_.get(); }
    // The book as it stands in the open files, for what is asked of them; else that of `book`.
    const LoadedBook* book_as_edited();
    const std::vector<Issue>& book_faults() const noexcept { return reading_.faults; }
    AgreedFile& agreed() noexcept { return agreed_; }

private:
    struct Entry {
        Recognised what;
        bool fresh = false;  // `remarks` are of the text as it stands
        bool told = false;
        std::vector<Remark> remarks;
    };

    Entry& entry(const OpenDocument& document);
    void look_at(const OpenDocument& document);
    void forget_all(bool rule_files);
    void settle_book();
    std::vector<ChangedFile> rule_files(std::string_view except) const;
    CheckContext context();
    std::string name_of_document(const OpenDocument& document) const;
    std::vector<Remark> read(const OpenDocument& document, const Recognised& what);

    WorkspaceOptions options_;
    std::string root_;
    OpenDocuments documents_;
    std::map<std::string, Entry, std::less<>> entries_;
    RuleBooks books_;
    BookReading reading_;  // with the rule files that are open
    std::shared_ptr<const LoadedBook> book_;
    bool book_is_settled_ = false;
    AgreedFile agreed_;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_WORKSPACE_H
