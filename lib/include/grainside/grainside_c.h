// Grainside for C, and for languages that call C: rules, listings, checks and dossiers behind opaque handles (C11).
//
//     GrainsideBook* book = NULL;
//     GrainsideChecker* checker = NULL;
//     if (grainside_book_built_in(&book, NULL) != grainside_ok) return 2;
//     if (grainside_checker_make(book, NULL, &checker, NULL) != grainside_ok) return 2;
//
//     const GrainsideField field = {grainside_text("name"), grainside_text("Genuine PU leather tote")};
//     const GrainsideListing listing = {.id = grainside_text("t-1"), .fields = &field, .field_count = 1};
//     const GrainsideResult* result = NULL;
//     if (grainside_check(checker, &listing, &result) != grainside_ok) return 2;
//     for (size_t at = 0; at < grainside_result_finding_count(result); ++at) {
//         GrainsideFinding finding;
//         if (grainside_result_finding(result, at, &finding) != grainside_ok) return 2;
//         printf("%s: %.*s\n", grainside_grade_name(finding.grade), (int)finding.words.size, finding.words.bytes);
//     }
//     // prints: misleading: Genuine PU leather
//
//     // What cannot be used is told with what to do about it.
//     GrainsideIssues* issues = NULL;
//     GrainsideBook* none = NULL;
//     if (grainside_book_load(grainside_text("no/such/folder"), &none, &issues) == grainside_faults) {
//         GrainsideIssue issue;
//         if (grainside_issue_at(issues, 0, &issue) != grainside_ok) return 2;
//         printf("%.*s\n", (int)issue.code.size, issue.code.bytes);
//     }
//     // prints: missing-file
//     grainside_issues_free(issues);
//     grainside_checker_free(checker);
//     grainside_book_free(book);
//
// Ownership. What a function gives through a pointer to a pointer without `const` (book, checker, reader, judge,
// issues) is the caller's, who frees it with the function of its name; NULL may be freed. Handles may be freed in any
// order: what was made with a book keeps what it needs of it. What comes with `const` (results, judgements) and every
// text in them belongs to the checker or judge that gave it, and lives until that is asked again or freed. Texts of
// issues live as long as the issues. What the caller passes is read during the call only; nothing of it is kept.
//
// Errors. Every function that can fail gives a GrainsideStatus, and sets what it would have given to NULL where it
// fails. No exception comes out. `issues` may be NULL; else it becomes NULL where there is nothing to tell. Warnings
// are told with grainside_ok, too. When memory runs out, the status says so, and every handle can still be asked again
// and freed. (The C libraries that read packed files and pages may answer in their own way: the file is then told as
// broken.)
//
// Threads. A book may be used by any number of threads. A checker, a reader or a judge, and what it gave, serve one
// thread at a time: make one a thread.
//
// Texts are UTF-8 with a length, and are not ended by NUL. They are as the seller wrote them: what goes to a terminal,
// a page or a shell must be made inert for it (the records below are JSON, and escaped as JSON asks).
//
// Limits: as in listing.h, listing_reader.h and dossier.h: 16 MiB a field, 64 MiB a record, 4 MiB a dossier.
#ifndef GRAINSIDE_GRAINSIDE_C_H
#define GRAINSIDE_GRAINSIDE_C_H

// C has neither <cstddef> nor `using` nor nullptr.
// NOLINTBEGIN(modernize-deprecated-headers, modernize-use-using, modernize-use-nullptr)
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

// Any int may come from C, and C++ must be able to hold it.
#ifdef __cplusplus
#define GRAINSIDE_OF_INT : int
extern "C" {
#else
#define GRAINSIDE_OF_INT
#endif

typedef struct GrainsideText {
    const char* bytes;  // may be NULL where `size` is 0
    size_t size;
} GrainsideText;

// A text of the caller's that ends with NUL; NULL gives an empty one.
static inline GrainsideText grainside_text(const char* text) {
    GrainsideText made;
    made.bytes = text;
    made.size = text == NULL ? 0 : strlen(text);
    return made;
}

typedef enum GrainsideStatus GRAINSIDE_OF_INT {
    grainside_ok = 0,
    grainside_end,        // of a reader: nothing follows
    grainside_faults,     // rules, a file or what was asked for cannot be used: the issues say where and why
    grainside_bad_call,   // a pointer is NULL that must not be, or an index is too large
    grainside_no_memory,  // nothing was done
    grainside_broken      // an error of the library itself
} GrainsideStatus;
// In English, ended by NUL, never NULL; for every number.
const char* grainside_status_name(GrainsideStatus status);

// "0.1.0", ended by NUL: of the library that is linked.
const char* grainside_version(void);

// What is wrong.

typedef struct GrainsideIssues GrainsideIssues;
typedef enum GrainsideSeverity GRAINSIDE_OF_INT {
    grainside_error = 0,
    grainside_warning,
    grainside_note
} GrainsideSeverity;
typedef struct GrainsideIssue {
    GrainsideSeverity severity;
    uint32_t line, column;  // from 1, columns in bytes; 0 = not known
    GrainsideText code;     // permanent and short, "unknown-key"; rules/README.md explains each
    GrainsideText file;
    GrainsideText message;
    GrainsideText hint;   // what to do; may be empty
    GrainsideText whole;  // all of it for a terminal, several lines, inert, with the line end
} GrainsideIssue;
size_t grainside_issue_count(const GrainsideIssues* issues);  // 0 for NULL
GrainsideStatus grainside_issue_at(const GrainsideIssues* issues, size_t index, GrainsideIssue* issue);
void grainside_issues_free(GrainsideIssues* issues);

// The rule book. Immutable.

typedef struct GrainsideBook GrainsideBook;
// The default book, which is part of the library.
GrainsideStatus grainside_book_built_in(GrainsideBook** book, GrainsideIssues** issues);
// A folder of rules (rules/README.md).
GrainsideStatus grainside_book_load(GrainsideText folder, GrainsideBook** book, GrainsideIssues** issues);
void grainside_book_free(GrainsideBook* book);
// Sixteen hexadecimal digits: books with the same give the same findings. Lives as long as the book. Empty for NULL.
GrainsideText grainside_book_digest(const GrainsideBook* book);

// Checking words.

typedef enum GrainsideGrade GRAINSIDE_OF_INT {
    grainside_contradicted = 0,  // worst first
    grainside_misleading,
    grainside_unsupported,
    grainside_inconclusive,
    grainside_vague,
    grainside_consistent
} GrainsideGrade;
const char* grainside_grade_name(GrainsideGrade grade);  // "misleading", ended by NUL; "" for another number

// A struct of zeros asks for nothing in particular: the markets that each listing states, and rules whatever their
// days.
typedef struct GrainsideCheckOptions {
    const GrainsideText* markets;  // "us", "eu", ... of the book, in small letters; none: those that the listing states
    size_t market_count;
    GrainsideText on;  // the day whose rules apply, YYYY-MM-DD; empty: every rule whatever its days
} GrainsideCheckOptions;

typedef struct GrainsideChecker GrainsideChecker;
// `options` may be NULL. Issues: "unknown-market", "no-such-day".
GrainsideStatus grainside_checker_make(const GrainsideBook* book, const GrainsideCheckOptions* options,
                                       GrainsideChecker** checker, GrainsideIssues** issues);
void grainside_checker_free(GrainsideChecker* checker);

typedef struct GrainsideField {
    GrainsideText name;  // "name", "description", "material", "category" or "additionalProperty.NAME"
    GrainsideText text;
} GrainsideField;
typedef struct GrainsideListing {
    GrainsideText id, language, region, seller;  // each may be empty
    const GrainsideField* fields;
    size_t field_count;
} GrainsideListing;

typedef struct GrainsideResult GrainsideResult;
GrainsideStatus grainside_check(GrainsideChecker* checker, const GrainsideListing* listing,
                                const GrainsideResult** result);

// Reading listings from files.

typedef enum GrainsideFormat GRAINSIDE_OF_INT {
    grainside_format_automatic = 0,
    grainside_format_text,
    grainside_format_markdown,
    grainside_format_json,
    grainside_format_json_lines,
    grainside_format_html,
    grainside_format_csv,
    grainside_format_tsv
} GrainsideFormat;

typedef struct GrainsideReader GrainsideReader;
// "-" is standard input.
GrainsideStatus grainside_reader_open(GrainsideText path, GrainsideFormat format, GrainsideReader** reader,
                                      GrainsideIssues** issues);
// Reads a copy of `bytes`, which issues call `name`.
GrainsideStatus grainside_reader_of_bytes(GrainsideText name, GrainsideText bytes, GrainsideFormat format,
                                          GrainsideReader** reader);
void grainside_reader_free(GrainsideReader* reader);
// The next listing, checked. A broken record is passed over and told among the issues, and the rest goes on; so issues
// may come with grainside_ok and with grainside_end. A listing for which memory runs out is lost.
GrainsideStatus grainside_check_next(GrainsideChecker* checker, GrainsideReader* reader, const GrainsideResult** result,
                                     GrainsideIssues** issues);

// What was found. Indices count from 0; a NULL result has no claims and no findings.

typedef struct GrainsideClaim {
    GrainsideText field;
    size_t start, end;  // bytes of the field's text, end exclusive
    GrainsideText words;
    GrainsideText part;  // "lining"
    GrainsideText kind;  // "material"
    GrainsideText says;  // a concept of the book: "full-grain-leather"
    bool negated, hedged;
} GrainsideClaim;
typedef struct GrainsideFinding {
    GrainsideGrade grade;
    GrainsideText field;
    size_t start, end;
    GrainsideText words;
    GrainsideText part, kind, says;
    GrainsideText rule;         // its permanent id
    GrainsideText because;      // for a copywriter
    GrainsideText say_instead;  // what would pass; empty where nothing is known that does
    GrainsideText remedy;       // what a person can do about it; may be empty
} GrainsideFinding;

GrainsideText grainside_result_listing(const GrainsideResult* result);  // the listing's id
size_t grainside_result_claim_count(const GrainsideResult* result);
size_t grainside_result_finding_count(const GrainsideResult* result);
size_t grainside_result_fields_left_out(const GrainsideResult* result);  // longer than 16 MiB, and so not read
GrainsideGrade grainside_result_worst(const GrainsideResult* result);    // grainside_consistent without findings
GrainsideStatus grainside_result_claim(const GrainsideResult* result, size_t index, GrainsideClaim* claim);
GrainsideStatus grainside_result_finding(const GrainsideResult* result, size_t index, GrainsideFinding* finding);
// The same as JSON Lines, byte for byte what `grainside check --format jsonl` and `grainside claims --format jsonl`
// write: sources, markets and what stands against the words are there as well (tools/schema).
GrainsideStatus grainside_result_finding_records(const GrainsideResult* result, GrainsideText* records);
GrainsideStatus grainside_result_claim_records(const GrainsideResult* result, GrainsideText* records);

// Judging a dossier: the listing's claims against what the tests showed (rules/EVIDENCE.md).

typedef struct GrainsideJudge GrainsideJudge;
// `today`, YYYY-MM-DD, is for dossiers that do not say when their listing was captured, and no date of a dossier may
// lie behind it; empty: not known. A day in `options` goes before.
GrainsideStatus grainside_judge_make(const GrainsideBook* book, const GrainsideCheckOptions* options,
                                     GrainsideText today, GrainsideJudge** judge, GrainsideIssues** issues);
void grainside_judge_free(GrainsideJudge* judge);

typedef struct GrainsideJudgement GrainsideJudgement;
// A dossier with a fault is refused whole; warnings come with grainside_ok.
GrainsideStatus grainside_judge_file(GrainsideJudge* judge, GrainsideText path, const GrainsideJudgement** judgement,
                                     GrainsideIssues** issues);
// `name` stands in issues and gives the dossier its id; files that the dossier names are looked for in `folder`.
GrainsideStatus grainside_judge_bytes(GrainsideJudge* judge, GrainsideText name, GrainsideText bytes,
                                      GrainsideText folder, const GrainsideJudgement** judgement,
                                      GrainsideIssues** issues);

typedef struct GrainsideVerdict {
    GrainsideGrade grade;
    GrainsideText field;
    size_t start, end;
    GrainsideText words;
    GrainsideText part, kind, says;
    double holds, fails, open;  // belief that it is true, false, not told apart; together 1
    GrainsideText because;
    GrainsideText say_instead;  // may be empty, as the next two
    GrainsideText remedy;
    GrainsideText next_test;  // the method that would tell most; see its cautions in the records or the report
} GrainsideVerdict;

size_t grainside_judgement_verdict_count(const GrainsideJudgement* judgement);
GrainsideGrade grainside_judgement_worst(const GrainsideJudgement* judgement);
GrainsideStatus grainside_judgement_verdict(const GrainsideJudgement* judgement, size_t index,
                                            GrainsideVerdict* verdict);
// As `grainside judge --format jsonl` writes them: with readings, limits, sources, methods and their cautions.
GrainsideStatus grainside_judgement_records(const GrainsideJudgement* judgement, GrainsideText* records);

typedef enum GrainsideReportForm GRAINSIDE_OF_INT {
    grainside_report_html = 0,
    grainside_report_markdown,
    grainside_report_json,
    grainside_report_csv
} GrainsideReportForm;
// The whole report, as `grainside report` writes it.
GrainsideStatus grainside_judgement_report(const GrainsideJudgement* judgement, GrainsideReportForm form,
                                           GrainsideText* report);

#ifdef __cplusplus
}
#endif
// NOLINTEND(modernize-deprecated-headers, modernize-use-using, modernize-use-nullptr)

#endif  // GRAINSIDE_GRAINSIDE_C_H
