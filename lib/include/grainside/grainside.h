// Start here: what most programs need of Grainside, in the order in which they need it, then which header serves which
// task. A test compiles and runs every example of this page, one behind the other, and compares what they print.
//
// 1. Load the rules. Loading may fail, and then says everything that is wrong, with its place and what to do; what is
//    loaded is immutable, and any number of threads may share it.
//
//     const auto book = grainside::RuleBook::built_in();
//     if (!book) {
//         for (const grainside::Issue& issue : book.issues()) std::cerr << grainside::to_text(issue);
//         return 2;
//     }
//     const auto no_book = grainside::RuleBook::load("no/such/folder");
//     std::cout << no_book.issues().front().code << '\n';
//     // prints: missing-file
//
// 2. Read listings: from a file, a pipe or memory, in any of the formats of listing_reader.h. A broken record is told,
//    and the others are read. Or fill a Listing with views of your own texts.
//
//     const std::string_view feed =
//         "{\"sku\":\"t-1\",\"name\":\"Genuine PU leather tote\"}\n"
//         "{\"sku\":\n"
//         "{\"sku\":\"t-2\",\"name\":\"Cotton tote\",\"material\":\"cotton\"}\n";
//     auto reader = grainside::ListingReader::from_memory("feed.jsonl", feed, {});
//
// 3. Check. Checking never fails, whatever the text is. A checker keeps its memory: make one a thread. Without a day
//    every rule applies, whatever its dates; programs that publish ask for the day of publication.
//
//     grainside::Checker checker(book.value(), {.markets = {"us"}, .on = "2026-11-26"});
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.next(listing, issues)) {
//         const grainside::CheckResult& result = checker.check(listing);
//         std::cout << listing.id << ": " << result.findings.size() << '\n';
//
// 4. Read the findings. A finding has a grade, worst first, and a place: bytes of a field's text, end exclusive.
//
//         for (const grainside::Finding& finding : result.findings) {
//             const grainside::Claim& claim = result.mentions[finding.claim];
//             const std::string_view text = listing.fields[claim.field].text;
//             std::cout << grainside::name_of(finding.grade) << ": '"
//                       << text.substr(finding.start, finding.end - finding.start) << "', say '"
//                       << checker.say_instead(listing, finding) << "'\n";
//         }
//     }
//     for (const grainside::Issue& issue : issues) std::cout << issue.code << ", line " << issue.line << '\n';
//     // prints: t-1: 1
//     // prints: misleading: 'Genuine PU leather', say 'imitation leather'
//     // prints: t-2: 0
//     // prints: json-syntax, line 2
//
// 5. Report: records for programs, a view for people. Text of strangers comes out inert. Nothing here prints: output is
//    added to a string of yours.
//
//     listing = {};
//     listing.id = "belt";
//     listing.fields = {{"name", "Vegetable-tanned belt"}};
//     std::string out;
//     const grainside::RecordWriter writer(book.value());
//     writer.write_findings(listing, checker.check(listing), checker, out);
//     std::cout << out;
//     // prints: {"listing":"belt","claims":1,"findings":0,"worst":null}
//
// 6. Where somebody tested the thing: a dossier, judged against the same words. One with a fault is refused whole.
//
//     const auto evidence = grainside::EvidenceBook::load(book.value());
//     if (!evidence) return 2;
//     const auto bad = grainside::Dossier::parse("tote.yaml", "sample: {wat: Tote}\n", ".", evidence.value());
//     std::cout << bad.issues().front().code << '\n';
//     // prints: unknown-key
//     const auto dossier = grainside::Dossier::parse("tote.yaml",
//                                                    "sample: {what: Tote}\n"
//                                                    "listing: {name: Full grain leather tote}\n"
//                                                    "parts:\n"
//                                                    "  body:\n"
//                                                    "    readings:\n"
//                                                    "      - {method: cut-edge, outcome: yarns-under-coat}\n"
//                                                    "      - {method: back-side, outcome: woven-back}\n",
//                                                    ".", evidence.value());
//     if (!dossier) return 2;
//     grainside::Judge judge(book.value(), evidence.value());
//     std::cout << grainside::name_of(judge.judge(dossier.value()).worst) << '\n';
//     // prints: contradicted
//     std::vector<grainside::FullReport> reports;
//     reports.push_back(grainside::FullReport::gather({book.value(), evidence.value(), dossier.value()}, judge));
//     std::string page;
//     grainside::write_markdown(reports, page);
//     std::cout << page.substr(0, page.find('\n')) << '\n';
//     // prints: # Tote
//
// Building: `find_package(grainside)` and `grainside::grainside`, or `pkg-config grainside` (tests/install is a whole
// project). From C, and from languages that call C: grainside_c.h.
//
// Which header for which task. Each begins with a short example, which a test compiles and runs as well: `book` and
// `evidence` are there what steps 1 and 6 have loaded, and this header is included besides.
//   faults, and functions of yours that tell them .......... result.h
//   rules, sources, concepts, markets of a book ............ rule_book.h, evidence_book.h
//   reading files, pipes, memory; tables with own columns .. listing_reader.h; by hand: listing.h
//   what a text claims, what is wrong with it .............. checker.h, claim.h, finding.h
//   where words stand in their file ........................ source_place.h
//   mending a listing ...................................... reword.h
//   one listing, many markets, the days to come ............ market_check.h, market_report.h
//   documents on file; findings agreed to stand a while .... filed_proofs.h, concessions.h
//   records and views of findings; logs for CI ............. report.h, sarif.h
//   rates over many listings ............................... survey.h, survey_report.h
//   a catalog on many machines ............................. line_partitions.h
//   a sample: its record, verdicts, next tests ............. dossier.h, judge.h, dossier_report.h
//   what a sample costs, and the price paid ................ cost.h, cost_report.h
//   a report to publish .................................... full_report.h
//   likelihoods out of confirmed dossiers .................. learn.h
//   all of this from C ..................................... grainside_c.h
// Names below `grainside::rules`, `evidence` and `report` are the library's own, and so are every `data()` and
// `index()`.
//
// A finding speaks of words and evidence, never of intent, and is no legal advice; local law and licensed practice
// decide. A method named in a verdict may hurt who makes it or the sample: show its cautions (NamedMethod,
// PlannedTest; the views, records and reports have them).
#ifndef GRAINSIDE_GRAINSIDE_H
#define GRAINSIDE_GRAINSIDE_H

#include "grainside/checker.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/finding.h"
#include "grainside/full_report.h"
#include "grainside/judge.h"
#include "grainside/listing.h"
#include "grainside/listing_reader.h"
#include "grainside/report.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"
#include "grainside/version.h"

#endif  // GRAINSIDE_GRAINSIDE_H
