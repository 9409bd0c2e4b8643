// The C header as a program in C11 uses it: what it gives, whose it is, what is refused. tests/install builds one more
// program against an installed copy and compares its records with those of the tool.
#include <stdio.h>

#include "grainside/grainside_c.h"

static int failures = 0;
static int checks = 0;

static void check_that(bool holds, const char* what, int line) {
    ++checks;
    if (holds) return;
    ++failures;
    printf("line %d: %s\n", line, what);
}
#define GRAINSIDE_CHECK(condition) check_that((condition), #condition, __LINE__)

static bool is(GrainsideText text, const char* wanted) {
    const bool same = text.size == strlen(wanted) && memcmp(text.bytes, wanted, text.size) == 0;
    if (!same) printf("'%.*s' is not '%s'\n", (int)text.size, text.bytes, wanted);
    return same;
}

static bool holds_text(GrainsideText text, const char* wanted) {
    const size_t size = strlen(wanted);
    for (size_t at = 0; at + size <= text.size; ++at) {
        if (memcmp(text.bytes + at, wanted, size) == 0) return true;
    }
    return false;
}

static GrainsideBook* built_in(void) {
    GrainsideBook* book = NULL;
    GrainsideIssues* issues = NULL;
    GRAINSIDE_CHECK(grainside_book_built_in(&book, &issues) == grainside_ok);
    GRAINSIDE_CHECK(issues == NULL);
    GRAINSIDE_CHECK(grainside_book_digest(book).size == 16);
    return book;
}

static GrainsideChecker* checker_of(const GrainsideBook* book, const GrainsideCheckOptions* options) {
    GrainsideChecker* checker = NULL;
    GRAINSIDE_CHECK(grainside_checker_make(book, options, &checker, NULL) == grainside_ok);
    return checker;
}

// 16 CFR 24.2(a) of the US FTC's guides: what is not leather is not to be called by its name. The expected words are
// those that the built-in book's rule cites it for.
static void finds_what_misleads(const GrainsideBook* book) {
    GrainsideChecker* checker = checker_of(book, NULL);
    char name[] = "Genuine PU leather tote";
    GrainsideField fields[2] = {{grainside_text("name"), grainside_text(name)},
                                {grainside_text("additionalProperty.Lining"), grainside_text("no cotton, suede")}};
    const GrainsideListing listing = {.id = grainside_text("t-1"), .fields = fields, .field_count = 2};
    const GrainsideResult* result = NULL;
    GRAINSIDE_CHECK(grainside_check(checker, &listing, &result) == grainside_ok);
    // Nothing of the caller's is kept.
    memset(name, 'x', sizeof name - 1);
    memset(fields, 0, sizeof fields);
    GRAINSIDE_CHECK(is(grainside_result_listing(result), "t-1"));
    GRAINSIDE_CHECK(grainside_result_finding_count(result) == 1);
    GRAINSIDE_CHECK(grainside_result_worst(result) == grainside_misleading);
    GrainsideFinding finding;
    GRAINSIDE_CHECK(grainside_result_finding(result, 0, &finding) == grainside_ok);
    GRAINSIDE_CHECK(finding.grade == grainside_misleading);
    GRAINSIDE_CHECK(is(finding.field, "name"));
    GRAINSIDE_CHECK(finding.start == 0 && finding.end == 18);
    GRAINSIDE_CHECK(is(finding.words, "Genuine PU leather"));
    GRAINSIDE_CHECK(is(finding.says, "polyurethane"));
    GRAINSIDE_CHECK(is(finding.say_instead, "imitation leather"));
    GRAINSIDE_CHECK(finding.rule.size > 0 && finding.because.size > 0);
    GRAINSIDE_CHECK(grainside_result_finding(result, 1, &finding) == grainside_bad_call);

    bool is_denied = false;
    for (size_t at = 0; at < grainside_result_claim_count(result); ++at) {
        GrainsideClaim claim;
        GRAINSIDE_CHECK(grainside_result_claim(result, at, &claim) == grainside_ok);
        if (claim.negated && is(claim.says, "cotton") && is(claim.part, "lining")) is_denied = true;
    }
    GRAINSIDE_CHECK(is_denied);

    GrainsideText records;
    GRAINSIDE_CHECK(grainside_result_finding_records(result, &records) == grainside_ok);
    GRAINSIDE_CHECK(holds_text(records, "\"words\":\"Genuine PU leather\""));
    GRAINSIDE_CHECK(holds_text(records, "\"findings\":1,\"worst\":\"misleading\"}\n"));
    GRAINSIDE_CHECK(grainside_result_claim_records(result, &records) == grainside_ok);
    GRAINSIDE_CHECK(holds_text(records, "\"says\":\"polyurethane\",\"negated\":false"));

    // Asked again, it is another result in the same place.
    const GrainsideListing empty = {.id = grainside_text("none")};
    GRAINSIDE_CHECK(grainside_check(checker, &empty, &result) == grainside_ok);
    GRAINSIDE_CHECK(grainside_result_claim_count(result) == 0 && grainside_result_finding_count(result) == 0);
    GRAINSIDE_CHECK(grainside_result_worst(result) == grainside_consistent);
    grainside_checker_free(checker);
}

// Directive (EU) 2024/825 applies from 27 September 2026: generic environmental claims.
static void asks_markets_and_days(const GrainsideBook* book) {
    const GrainsideText eu = grainside_text("eu");
    GrainsideCheckOptions options = {.markets = &eu, .market_count = 1, .on = grainside_text("2026-09-26")};
    const GrainsideField field = {grainside_text("description"), grainside_text("An eco-friendly belt.")};
    const GrainsideListing listing = {.fields = &field, .field_count = 1};
    const GrainsideResult* result = NULL;
    GrainsideChecker* before = checker_of(book, &options);
    GRAINSIDE_CHECK(grainside_check(before, &listing, &result) == grainside_ok);
    GRAINSIDE_CHECK(grainside_result_worst(result) == grainside_vague);
    grainside_checker_free(before);
    options.on = grainside_text("2026-09-27");
    GrainsideChecker* after = checker_of(book, &options);
    GRAINSIDE_CHECK(grainside_check(after, &listing, &result) == grainside_ok);
    GRAINSIDE_CHECK(grainside_result_worst(result) == grainside_misleading);
    grainside_checker_free(after);

    const GrainsideText markets[2] = {eu, grainside_text("atlantis")};
    const GrainsideCheckOptions wrong = {.markets = markets, .market_count = 2, .on = grainside_text("2026-02-30")};
    GrainsideChecker* none = after;
    GrainsideIssues* issues = NULL;
    GRAINSIDE_CHECK(grainside_checker_make(book, &wrong, &none, &issues) == grainside_faults);
    GRAINSIDE_CHECK(none == NULL);
    GRAINSIDE_CHECK(grainside_issue_count(issues) == 2);
    GrainsideIssue issue;
    GRAINSIDE_CHECK(grainside_issue_at(issues, 0, &issue) == grainside_ok);
    GRAINSIDE_CHECK(is(issue.code, "unknown-market") && is(issue.message, "there is no market 'atlantis'"));
    GRAINSIDE_CHECK(grainside_issue_at(issues, 1, &issue) == grainside_ok && is(issue.code, "no-such-day"));
    GRAINSIDE_CHECK(issue.severity == grainside_error && issue.whole.bytes[issue.whole.size - 1] == '\n');
    GRAINSIDE_CHECK(grainside_issue_at(issues, 2, &issue) == grainside_bad_call);
    grainside_issues_free(issues);
}

static void reads_on_behind_a_broken_record(const GrainsideBook* book) {
    GrainsideChecker* checker = checker_of(book, NULL);
    GrainsideReader* reader = NULL;
    char bytes[] =
        "{\"sku\":\"a\",\"name\":\"Cotton tote\"}\n{\"sku\":\n{\"sku\":\"c\",\"name\":\"Vegan leather tote\"}\n";
    GRAINSIDE_CHECK(grainside_reader_of_bytes(grainside_text("feed.jsonl"), grainside_text(bytes),
                                              grainside_format_automatic, &reader) == grainside_ok);
    memset(bytes, 0, sizeof bytes);
    const GrainsideResult* result = NULL;
    GrainsideIssues* issues = NULL;
    GRAINSIDE_CHECK(grainside_check_next(checker, reader, &result, &issues) == grainside_ok);
    GRAINSIDE_CHECK(issues == NULL && is(grainside_result_listing(result), "a"));
    GRAINSIDE_CHECK(grainside_check_next(checker, reader, &result, &issues) == grainside_ok);
    GRAINSIDE_CHECK(is(grainside_result_listing(result), "c") && grainside_result_finding_count(result) == 1);
    GrainsideIssue issue;
    GRAINSIDE_CHECK(grainside_issue_at(issues, 0, &issue) == grainside_ok);
    GRAINSIDE_CHECK(is(issue.code, "json-syntax") && is(issue.file, "feed.jsonl") && issue.line == 2);
    grainside_issues_free(issues);
    GRAINSIDE_CHECK(grainside_check_next(checker, reader, &result, &issues) == grainside_end);
    GRAINSIDE_CHECK(result == NULL && issues == NULL);
    grainside_reader_free(reader);

    GRAINSIDE_CHECK(grainside_reader_open(grainside_text("no/such/file.jsonl"), grainside_format_automatic, &reader,
                                          &issues) == grainside_faults);
    GRAINSIDE_CHECK(reader == NULL && grainside_issue_count(issues) == 1);
    grainside_issues_free(issues);
    grainside_checker_free(checker);
}

// A format that is named decides how bytes are read; without a name, here, nothing tells it.
static void reads_the_format_that_is_named(const GrainsideBook* book) {
    static const char marked[] = "# <b>Genuine PU leather</b> tote\n";
    static const char columns[] = "sku\tname\na,1\tGenuine PU leather\n";
    const struct {
        GrainsideFormat format;
        const char* bytes;
        const char* listing;
        const char* field;
        size_t start;
    } rows[] = {
        {grainside_format_text, marked, "unnamed:1", "description", 5},
        {grainside_format_markdown, marked, "unnamed:1", "name", 3},
        {grainside_format_html, marked, "unnamed:1", "description", 2},
        {grainside_format_json, "[\n{\"sku\":\"a\",\"name\":\"Genuine PU leather\"}\n]", "a", "name", 0},
        {grainside_format_json_lines, "{\"sku\":\"a\"\n{\"sku\":\"b\",\"name\":\"Genuine PU leather\"}\n", "b", "name",
         0},
        {grainside_format_csv, "sku,name\na,\"Tote\tgenuine PU leather\"\n", "a", "name", 5},
        {grainside_format_tsv, columns, "a,1", "name", 0},
    };
    GrainsideChecker* checker = checker_of(book, NULL);
    for (size_t at = 0; at < sizeof rows / sizeof rows[0]; ++at) {
        GrainsideReader* reader = NULL;
        const GrainsideResult* result = NULL;
        GrainsideIssues* issues = NULL;
        GrainsideFinding finding;
        GRAINSIDE_CHECK(grainside_reader_of_bytes(grainside_text("unnamed"), grainside_text(rows[at].bytes),
                                                  rows[at].format, &reader) == grainside_ok);
        GRAINSIDE_CHECK(grainside_check_next(checker, reader, &result, &issues) == grainside_ok);
        GRAINSIDE_CHECK(grainside_result_finding(result, 0, &finding) == grainside_ok);
        GRAINSIDE_CHECK(is(grainside_result_listing(result), rows[at].listing));
        GRAINSIDE_CHECK(is(finding.field, rows[at].field));
        GRAINSIDE_CHECK(finding.start == rows[at].start);
        grainside_issues_free(issues);
        grainside_reader_free(reader);
    }
    grainside_checker_free(checker);
}

// The section shows yarns under a coat and the back a weave: no leather (rules/EVIDENCE.md, section 2).
static void judges_a_dossier(const GrainsideBook* book) {
    GrainsideJudge* judge = NULL;
    GRAINSIDE_CHECK(grainside_judge_make(book, NULL, grainside_text("2026-11-26"), &judge, NULL) == grainside_ok);
    const GrainsideText dossier = grainside_text(
        "sample: {what: Tote}\n"
        "listing: {name: Full grain leather tote}\n"
        "parts:\n"
        "  body:\n"
        "    readings:\n"
        "      - {method: cut-edge, outcome: yarns-under-coat}\n"
        "      - {method: back-side, outcome: woven-back}\n");
    const GrainsideJudgement* judgement = NULL;
    GrainsideIssues* issues = NULL;
    GRAINSIDE_CHECK(grainside_judge_bytes(judge, grainside_text("tote.yaml"), dossier, grainside_text("."), &judgement,
                                          &issues) == grainside_ok);
    GRAINSIDE_CHECK(grainside_judgement_worst(judgement) == grainside_contradicted);
    GRAINSIDE_CHECK(grainside_judgement_verdict_count(judgement) == 1);
    GrainsideVerdict verdict;
    GRAINSIDE_CHECK(grainside_judgement_verdict(judgement, 0, &verdict) == grainside_ok);
    GRAINSIDE_CHECK(verdict.grade == grainside_contradicted && is(verdict.words, "Full grain leather"));
    GRAINSIDE_CHECK(verdict.fails > 0.9 && verdict.holds + verdict.fails + verdict.open < 1.000001);
    GRAINSIDE_CHECK(grainside_judgement_verdict(judgement, 1, &verdict) == grainside_bad_call);
    GrainsideText text;
    GRAINSIDE_CHECK(grainside_judgement_records(judgement, &text) == grainside_ok);
    GRAINSIDE_CHECK(holds_text(text, "\"grade\":\"contradicted\"") && holds_text(text, "\"cautions\""));
    static const char* const marks[] = {"</html>", "# Tote\n", "\"schema\":1", "dossier,"};
    for (int form = grainside_report_html; form <= grainside_report_csv; ++form) {
        GRAINSIDE_CHECK(grainside_judgement_report(judgement, (GrainsideReportForm)form, &text) == grainside_ok);
        GRAINSIDE_CHECK(holds_text(text, marks[form]));
    }
    // A report leaves the judgement as it was.
    GRAINSIDE_CHECK(grainside_judgement_verdict(judgement, 0, &verdict) == grainside_ok && verdict.because.size > 0);
    grainside_issues_free(issues);

    GRAINSIDE_CHECK(grainside_judge_bytes(judge, grainside_text("bad.yaml"), grainside_text("sample: {wat: Tote}\n"),
                                          grainside_text("."), &judgement, &issues) == grainside_faults);
    GRAINSIDE_CHECK(judgement == NULL && grainside_issue_count(issues) > 0);
    grainside_issues_free(issues);
    GRAINSIDE_CHECK(grainside_judge_file(judge, grainside_text("no/such/dossier.yaml"), &judgement, &issues) ==
                    grainside_faults);
    grainside_issues_free(issues);
    grainside_judge_free(judge);

    GRAINSIDE_CHECK(grainside_judge_make(book, NULL, grainside_text("today"), &judge, NULL) == grainside_faults);
}

static void refuses_bad_calls(const GrainsideBook* book) {
    GrainsideChecker* checker = NULL;
    const GrainsideResult* result = NULL;
    const GrainsideListing nowhere = {.field_count = 1};
    const GrainsideField hole = {{NULL, 3}, {NULL, 0}};
    const GrainsideListing holed = {.fields = &hole, .field_count = 1};
    const GrainsideCheckOptions markets_nowhere = {.market_count = 1};
    GrainsideText text;
    GRAINSIDE_CHECK(grainside_book_built_in(NULL, NULL) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_checker_make(NULL, NULL, &checker, NULL) == grainside_bad_call && checker == NULL);
    GRAINSIDE_CHECK(grainside_checker_make(book, &markets_nowhere, &checker, NULL) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_checker_make(book, NULL, NULL, NULL) == grainside_bad_call);
    checker = checker_of(book, NULL);
    GRAINSIDE_CHECK(grainside_check(checker, NULL, &result) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_check(checker, &nowhere, &result) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_check(checker, &holed, &result) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_check_next(checker, NULL, &result, NULL) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_result_finding_records(NULL, &text) == grainside_bad_call);
    GRAINSIDE_CHECK(grainside_result_finding_count(NULL) == 0);
    GRAINSIDE_CHECK(grainside_result_worst(NULL) == grainside_consistent);
    GrainsideReader* reader = NULL;
    GRAINSIDE_CHECK(grainside_reader_of_bytes(grainside_text("x"), grainside_text("y"), (GrainsideFormat)99, &reader) ==
                    grainside_bad_call);
    GRAINSIDE_CHECK(grainside_judgement_verdict_count(NULL) == 0);
    grainside_checker_free(checker);
    grainside_checker_free(NULL);
    grainside_reader_free(NULL);
    grainside_judge_free(NULL);
    grainside_book_free(NULL);
    grainside_issues_free(NULL);
}

int main(void) {
    GRAINSIDE_CHECK(strlen(grainside_version()) >= 5);
    GRAINSIDE_CHECK(strcmp(grainside_grade_name(grainside_unsupported), "unsupported") == 0);
    GRAINSIDE_CHECK(strcmp(grainside_grade_name((GrainsideGrade)6), "") == 0);
    GRAINSIDE_CHECK(strlen(grainside_status_name((GrainsideStatus)99)) > 0);
    GrainsideBook* book = built_in();
    finds_what_misleads(book);
    asks_markets_and_days(book);
    reads_on_behind_a_broken_record(book);
    reads_the_format_that_is_named(book);
    judges_a_dossier(book);
    refuses_bad_calls(book);
    // A checker keeps what it needs of its book.
    GrainsideChecker* checker = checker_of(book, NULL);
    grainside_book_free(book);
    const GrainsideField field = {grainside_text("name"), grainside_text("Vegan leather belt")};
    const GrainsideListing listing = {.fields = &field, .field_count = 1};
    const GrainsideResult* result = NULL;
    GRAINSIDE_CHECK(grainside_check(checker, &listing, &result) == grainside_ok);
    GRAINSIDE_CHECK(grainside_result_finding_count(result) == 1);
    grainside_checker_free(checker);
    printf("%d checks, %d failed\n", checks, failures);
    return failures == 0 ? 0 : 1;
}
