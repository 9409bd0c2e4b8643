#include "edit/workspace.h"

#include <algorithm>
#include <utility>

#include "calendar.h"
#include "document/yaml_document.h"
#include "edit/book_remarks.h"
#include "edit/dossier_remarks.h"
#include "edit/file_uri.h"
#include "edit/listing_remarks.h"
#include "evidence/dossier_data.h"
#include "evidence/dossier_reader.h"
#include "rules/book_data.h"
#include "verdict/concession_index.h"

namespace grainside::tools::edit {
namespace {

// Nothing lies below what is no folder.
constexpr const char* kNoFolder = "/dev/null";
constexpr const char* kUsualConcessions = "concessions.yaml";

std::string concessions_path(const WorkspaceOptions& options, const std::string& root) {
    if (!options.concessions.empty() || root.empty()) return options.concessions;
    return (std::filesystem::path(root) / kUsualConcessions).string();
}

std::filesystem::path folder_of(const OpenDocument& document) {
    const std::string path = path_of_uri(document.uri());
    return path.empty() ? std::filesystem::path(kNoFolder) : std::filesystem::path(path).parent_path();
}

std::vector<Remark> one_remark(std::string code, std::string message) {
    Remark remark;
    remark.code = std::move(code);
    remark.message = std::move(message);
    return {std::move(remark)};
}

std::vector<std::string> dossier_names(const std::string& text, const std::string& word, const OpenDocument& document,
                                       const LoadedBook& book) {
    document::Faults faults;
    faults.watch(word);
    const auto parsed = document::parse_yaml("", text, faults);
    if (!parsed) return {};
    evidence::DossierData dossier;
    dossier.folder = folder_of(document);
    evidence::read_dossier(*parsed, book.rules.data(), book.evidence->data(), {}, dossier, faults);
    return faults.names_in_place();
}

std::vector<std::string> concession_names(const std::string& text, const std::string& word, const LoadedBook& book) {
    document::Faults faults;
    faults.watch(word);
    Concessions::Index index;
    verdict::read_concessions("", text, *book.evidence, faults, index);
    return faults.names_in_place();
}

}  // namespace

Workspace::Workspace(WorkspaceOptions options, PositionEncoding encoding, std::string root)
    : options_(std::move(options)),
      root_(std::move(root)),
      documents_(encoding),
      books_(options_.rules_folder),
      agreed_(concessions_path(options_, root_)) {
    settle_book();
}

OpenDocument* Workspace::open(const std::optional<Json>& item) {
    OpenDocument* document = documents_.open(item);
    if (document != nullptr) look_at(*document);
    return document;
}

void Workspace::changed(std::string_view uri) {
    if (const OpenDocument* document = documents_.find(uri)) look_at(*document);
}

// What one document is now, and which others depend on it.
void Workspace::look_at(const OpenDocument& document) {
    Entry& entry = entries_[document.uri()];
    const bool was_rule_file = entry.what.kind == DocumentKind::rule_file;
    entry.what = recognise(document.uri(), document.language(), document.text(), options_.rules_folder);
    entry.fresh = false;
    entry.told = false;
    if (was_rule_file || entry.what.kind == DocumentKind::rule_file) book_is_settled_ = false;
    if (document.uri() == agreed_.uri() && agreed_.refresh(&document)) forget_all(false);
}

bool Workspace::close(std::string_view uri) {
    if (!documents_.close(uri)) return false;
    const auto entry = entries_.find(uri);
    if (entry != entries_.end()) {
        if (entry->second.what.kind == DocumentKind::rule_file) {
            books_.refresh();
            book_is_settled_ = false;
        }
        entries_.erase(entry);
    }
    if (uri == agreed_.uri() && agreed_.refresh(nullptr)) forget_all(false);
    return true;
}

void Workspace::files_changed() {
    if (!books_.folder().empty()) {
        books_.refresh();
        book_is_settled_ = false;
    }
    if (documents_.find(agreed_.uri()) == nullptr) agreed_.refresh(nullptr);
    forget_all(false);
}

void Workspace::forget_all(bool rule_files) {
    for (auto& [uri, entry] : entries_) {
        if ((entry.what.kind == DocumentKind::rule_file) != rule_files) continue;
        entry.fresh = false;
        entry.told = false;
    }
}

std::vector<std::string> Workspace::take_untold() {
    settle_book();
    std::vector<std::string> untold;
    for (auto& [uri, entry] : entries_) {
        if (!entry.told) untold.push_back(uri);
        entry.told = true;
    }
    return untold;
}

bool Workspace::any_untold() const noexcept {
    return std::any_of(entries_.begin(), entries_.end(), [](const auto& one) { return !one.second.told; });
}

Workspace::Entry& Workspace::entry(const OpenDocument& document) {
    return entries_[document.uri()];
}

const std::vector<Remark>& Workspace::remarks(const OpenDocument& document) {
    settle_book();
    Entry& known = entry(document);
    if (!known.fresh) {
        known.remarks = read(document, known.what);
        put_in_order(known.remarks);
        known.fresh = true;
    }
    return known.remarks;
}

std::vector<ChangedFile> Workspace::rule_files(std::string_view except) const {
    std::vector<ChangedFile> files;
    for (const auto& [uri, document] : documents_.all()) {
        const auto known = entries_.find(uri);
        if (known == entries_.end() || known->second.what.kind != DocumentKind::rule_file || uri == except) continue;
        const std::string& file = known->second.what.book_file;
        const bool twice =
            std::any_of(files.begin(), files.end(), [&](const ChangedFile& one) { return one.file == file; });
        // Of two that would be the same file, the first; both are told what is wrong with that one.
        if (!twice && document.text().size() <= kMostDocumentBytes) files.push_back({file, document.text()});
    }
    return files;
}

// Rules in the editor hold for listings in the editor only where they are those of the call's folder: a file that is
// opened by itself changes nothing.
void Workspace::settle_book() {
    if (book_is_settled_) return;
    book_is_settled_ = true;
    reading_ = books_.read(rule_files({}));
    if (reading_.book != nullptr && (book_ == nullptr || !books_.folder().empty())) {
        book_ = reading_.book;
        forget_all(false);
    }
    forget_all(true);
}

const LoadedBook* Workspace::book_as_edited() {
    settle_book();
    return reading_.book != nullptr ? reading_.book.get() : book_.get();
}

CheckContext Workspace::context() {
    CheckContext context;
    context.book = book_.get();
    context.today = today();
    context.options.markets = options_.markets;
    context.options.on = options_.on.empty() ? context.today : options_.on;
    context.asked_on = options_.on;
    if (book_ != nullptr) context.agreed = agreed_.read(*book_);
    return context;
}

std::string Workspace::name_of_document(const OpenDocument& document) const {
    const std::string path = path_of_uri(document.uri());
    if (!root_.empty() && path.size() > root_.size() + 1 && path.starts_with(root_) && path[root_.size()] == '/') {
        return path.substr(root_.size() + 1);
    }
    return name_in_uri(document.uri());
}

std::vector<Remark> Workspace::read(const OpenDocument& document, const Recognised& what) {
    if (what.kind == DocumentKind::nothing) return {};
    if (document.text().size() > kMostDocumentBytes) {
        return one_remark("too-large",
                          "This document has more than 16 MiB, and is not checked here; `grainside check` "
                          "reads it.");
    }
    const TextPlaces& places = document.places();
    if (what.kind == DocumentKind::rule_file) return rule_file_remarks(what.book_file, reading_, places);
    if (book_ == nullptr) {
        return one_remark("broken-book", "Nothing is checked, because the rule book has faults; its files tell them.");
    }
    const CheckContext checked_by = context();
    if (what.kind == DocumentKind::listing) {
        return listing_remarks({places, name_of_document(document), what.format}, checked_by);
    }
    if (!book_->evidence) {
        return one_remark("no-evidence-half",
                          "The rule book knows no test methods, and so reads no dossier and no "
                          "concession.");
    }
    if (what.kind == DocumentKind::concessions) return concession_remarks(places, checked_by);
    return dossier_remarks({places, name_of_document(document), folder_of(document)}, checked_by);
}

std::vector<WordingEdit> Workspace::wordings(const OpenDocument& document, const TextSpan& where) {
    settle_book();
    const Recognised& what = entry(document).what;
    if (book_ == nullptr || document.text().size() > kMostDocumentBytes) return {};
    const TextPlaces& places = document.places();
    if (what.kind == DocumentKind::listing) {
        return listing_wordings({places, name_of_document(document), what.format}, context(), where);
    }
    if (what.kind == DocumentKind::dossier && book_->evidence) {
        return dossier_wordings({places, name_of_document(document), folder_of(document)}, context(), where);
    }
    return {};
}

bool Workspace::holds_names(const OpenDocument& document) {
    const DocumentKind kind = entry(document).what.kind;
    return kind == DocumentKind::rule_file || kind == DocumentKind::dossier || kind == DocumentKind::concessions;
}

Completion Workspace::completion(const OpenDocument& document, std::size_t caret) {
    const Recognised& what = entry(document).what;
    if ((!holds_names(document) && !what.is_hardly_begun) || document.text().size() > document::kMaxYamlBytes)
        return {};
    settle_book();
    return complete(document.text(), caret, [&](const std::string& text, const std::string& word) {
        if (what.kind == DocumentKind::rule_file) {
            std::vector<ChangedFile> files = rule_files(document.uri());
            files.push_back({what.book_file, text});
            return books_.names_in_place(files, word);
        }
        if (book_ == nullptr || !book_->evidence) return std::vector<std::string>();
        if (what.kind == DocumentKind::concessions) return concession_names(text, word, *book_);
        return dossier_names(text, word, document, *book_);
    });
}

}  // namespace grainside::tools::edit
