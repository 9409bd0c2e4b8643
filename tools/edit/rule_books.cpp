#include "edit/rule_books.h"

#include <algorithm>
#include <utility>

#include "document/compiled_document.h"
#include "document/digest.h"
#include "document/yaml_document.h"
#include "evidence/evidence_data.h"
#include "evidence/load_evidence.h"
#include "rules/book_data.h"
#include "rules/built_in_book.h"

namespace grainside::tools::edit {
namespace {

bool is_among(const std::vector<ChangedFile>& changed, std::string_view file) {
    return std::any_of(changed.begin(), changed.end(), [&](const ChangedFile& one) { return one.file == file; });
}

// The build has proven that it has no faults.
const std::shared_ptr<const BookFiles>& built_in_files() {
    static const auto kKept = [] {
        document::Faults faults;
        return std::make_shared<const BookFiles>(document::open_compiled(rules::built_in_book(), faults));
    }();
    return kKept;
}

BookReading loaded(std::shared_ptr<const BookFiles> base, Result<RuleBook> rules) {
    BookReading reading;
    if (!rules) {
        reading.faults = std::move(rules).issues();
        return reading;
    }
    auto book = std::make_shared<LoadedBook>(std::move(base), std::move(rules).value());
    if (EvidenceBook::is_there(book->rules)) {
        Result<EvidenceBook> evidence = EvidenceBook::load(book->rules);
        if (!evidence) {
            reading.faults = std::move(evidence).issues();
            return reading;
        }
        book->evidence.emplace(std::move(evidence).value());
    }
    reading.book = std::move(book);
    return reading;
}

}  // namespace

RuleBooks::RuleBooks(std::string folder) : folder_(std::move(folder)) {
    refresh();
}

void RuleBooks::refresh() {
    if (folder_.empty()) {
        files_ = built_in_files();
        return;
    }
    document::Faults faults;
    files_ = std::make_shared<const BookFiles>(document::read_yaml_folder(folder_, faults));
    unreadable_ = faults.take();
}

BookFiles RuleBooks::with(const std::vector<ChangedFile>& changed, document::Faults& faults) const {
    BookFiles files;
    for (const document::Document& file : *files_) {
        if (!is_among(changed, file.file())) files.emplace_back(file.file(), file.records(), file.strings());
    }
    for (const Issue& issue : unreadable_) {
        if (!is_among(changed, issue.file)) faults.add(issue);
    }
    for (const ChangedFile& one : changed) {
        auto parsed = document::parse_yaml(one.file, std::string(one.text), faults);
        if (parsed) files.push_back(std::move(*parsed));
    }
    // The order in which a folder is read.
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.file() < b.file(); });
    return files;
}

BookReading RuleBooks::read(const std::vector<ChangedFile>& changed) const {
    const auto read_anew = [&]() -> BookReading {
        document::Faults faults;
        BookFiles files = with(changed, faults);
        if (faults.any_errors()) return {nullptr, faults.take()};
        return loaded(files_, RuleBook::from_documents(std::move(files)));
    };
    if (!folder_.empty() || !changed.empty()) return read_anew();
    // Every session of a process shares it.
    static const BookReading kKept = read_anew();
    return kKept;
}

std::vector<std::string> RuleBooks::names_in_place(const std::vector<ChangedFile>& changed,
                                                   const std::string& word) const {
    document::Faults faults;
    faults.watch(word);
    BookFiles files = with(changed, faults);
    if (faults.any_errors()) return {};
    const std::uint64_t digest = document::digest_of(files);
    // The word is a fault, so there is no book; of the wording half the names are known then. Another half is read
    // with the rules as they are without the word, which stands in none of them.
    const auto data = rules::read_book(std::move(files), digest, faults);
    if (data != nullptr) {
        evidence::EvidenceData evidence;
        evidence::load_evidence(*data, evidence, faults);
    }
    return faults.names_in_place();
}

}  // namespace grainside::tools::edit
