#include "c_interface/book.h"

#include <filesystem>
#include <string>

#include "c_interface/border.h"
#include "c_interface/issues.h"
#include "grainside/version.h"

using namespace grainside::c_interface;

namespace {

GrainsideStatus give_book(grainside::Result<grainside::RuleBook> book, GrainsideBook** to, GrainsideIssues** issues) {
    if (!book) {
        give_issues(std::move(book).issues(), issues);
        return grainside_faults;
    }
    *to = std::make_unique<GrainsideBook>(GrainsideBook{std::make_shared<const SharedBook>(std::move(book).value())})
              .release();
    return grainside_ok;
}

}  // namespace

GrainsideStatus grainside_book_built_in(GrainsideBook** book, GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (book == nullptr) return grainside_bad_call;
    *book = nullptr;
    return guarded([&] { return give_book(grainside::RuleBook::built_in(), book, issues); });
}

GrainsideStatus grainside_book_load(GrainsideText folder, GrainsideBook** book, GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (book != nullptr) *book = nullptr;
    if (book == nullptr || !is_text(folder)) return grainside_bad_call;
    return guarded(
        [&] { return give_book(grainside::RuleBook::load(std::filesystem::path(view_of(folder))), book, issues); });
}

void grainside_book_free(GrainsideBook* book) {
    delete book;
}

GrainsideText grainside_book_digest(const GrainsideBook* book) {
    return book == nullptr ? GrainsideText{} : text_of(book->shared->rules.digest());
}

const char* grainside_version(void) {
    // A literal, which ends with NUL.
    return grainside::kVersion.data();
}

const char* grainside_status_name(GrainsideStatus status) {
    switch (status) {
        case grainside_ok:
            return "done";
        case grainside_end:
            return "nothing follows";
        case grainside_faults:
            return "faults in what was given: the issues tell";
        case grainside_bad_call:
            return "a pointer is NULL that must not be, or an index is too large";
        case grainside_no_memory:
            return "memory has run out";
        case grainside_broken:
            return "an error of the library itself";
    }
    return "no status of this library";
}

const char* grainside_grade_name(GrainsideGrade grade) {
    switch (grade) {
        case grainside_contradicted:
        case grainside_misleading:
        case grainside_unsupported:
        case grainside_inconclusive:
        case grainside_vague:
        case grainside_consistent:
            // Literals, which end with NUL.
            return grainside::name_of(static_cast<grainside::Grade>(grade)).data();
    }
    return "";
}
