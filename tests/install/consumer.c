// A program in C, built against an installed copy: prints what `grainside check --format jsonl` prints of the first
// file, and what `grainside judge --format jsonl` prints of the second.
#include <grainside/grainside_c.h>
#include <stdio.h>

static int fail(GrainsideStatus status, GrainsideIssues* issues) {
    fprintf(stderr, "%s\n", grainside_status_name(status));
    for (size_t at = 0; at < grainside_issue_count(issues); ++at) {
        GrainsideIssue issue;
        if (grainside_issue_at(issues, at, &issue) == grainside_ok)
            fwrite(issue.whole.bytes, 1, issue.whole.size, stderr);
    }
    grainside_issues_free(issues);
    return 2;
}

static GrainsideStatus check_file(const GrainsideBook* book, GrainsideText on, const char* path,
                                  GrainsideIssues** issues) {
    const GrainsideCheckOptions options = {.on = on};
    GrainsideChecker* checker = NULL;
    GrainsideReader* reader = NULL;
    GrainsideStatus status = grainside_checker_make(book, &options, &checker, issues);
    if (status == grainside_ok) {
        status = grainside_reader_open(grainside_text(path), grainside_format_automatic, &reader, issues);
    }
    while (status == grainside_ok) {
        const GrainsideResult* result = NULL;
        GrainsideText records;
        status = grainside_check_next(checker, reader, &result, issues);
        if (status == grainside_ok) status = grainside_result_finding_records(result, &records);
        if (status == grainside_ok) fwrite(records.bytes, 1, records.size, stdout);
    }
    grainside_reader_free(reader);
    grainside_checker_free(checker);
    return status == grainside_end ? grainside_ok : status;
}

static GrainsideStatus judge_file(const GrainsideBook* book, GrainsideText on, const char* path,
                                  GrainsideIssues** issues) {
    GrainsideJudge* judge = NULL;
    const GrainsideJudgement* judgement = NULL;
    GrainsideText records;
    GrainsideStatus status = grainside_judge_make(book, NULL, on, &judge, issues);
    if (status == grainside_ok) status = grainside_judge_file(judge, grainside_text(path), &judgement, issues);
    if (status == grainside_ok) status = grainside_judgement_records(judgement, &records);
    if (status == grainside_ok) fwrite(records.bytes, 1, records.size, stdout);
    grainside_judge_free(judge);
    return status;
}

int main(int argc, char** argv) {
    if (argc != 4) return 2;
    GrainsideBook* book = NULL;
    GrainsideIssues* issues = NULL;
    GrainsideStatus status = grainside_book_built_in(&book, &issues);
    const GrainsideText on = grainside_text(argv[3]);
    if (status == grainside_ok) status = check_file(book, on, argv[1], &issues);
    if (status == grainside_ok) status = judge_file(book, on, argv[2], &issues);
    grainside_book_free(book);
    return status == grainside_ok ? 0 : fail(status, issues);
}
