// Uses what an installed copy gives: every public header, the built-in rule book, a check and a report.
#include <grainside/checker.h>
#include <grainside/claim.h>
#include <grainside/finding.h>
#include <grainside/listing.h>
#include <grainside/listing_reader.h>
#include <grainside/proof.h>
#include <grainside/report.h>
#include <grainside/result.h>
#include <grainside/rule_book.h>
#include <grainside/version.h>

#include <iostream>
#include <string>

int main() {
    const auto book = grainside::RuleBook::built_in();
    if (!book) {
        for (const grainside::Issue& issue : book.issues()) std::cerr << grainside::to_text(issue);
        return 2;
    }
    grainside::Listing listing;
    listing.id = "example";
    listing.fields = {{"name", "Genuine PU leather tote"}};
    grainside::Checker checker(book.value());
    const grainside::CheckResult& result = checker.check(listing);
    std::string out;
    grainside::RecordWriter(book.value()).write_findings(listing, result, checker, out);
    std::cout << "grainside " << grainside::kVersion << '\n' << out;
    return result.findings.size() == 1 ? 0 : 1;
}
