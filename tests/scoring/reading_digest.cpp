#include "reading_digest.h"

#include <fmt/format.h>

#include "grainside/listing.h"
#include "reading_lines.h"

namespace grainside::scoring {

std::string ReadingDigest::line() const {
    return fmt::format("~ {} texts, {} claims, {} findings, {:016x}\n", texts_, claims_, findings_, digest_);
}

void ReadingDigest::read(std::string_view field, std::string_view text) {
    Listing listing;
    listing.fields.push_back({field, text});
    const CheckResult& result = checker_.check(listing);
    ++texts_;
    claims_ += result.mentions.size();
    findings_ += result.findings.size();
    if (in_full_ != nullptr) *in_full_ += fmt::format("~ {} {}\n", field, quoted_line(text, text.size()));
    add(listing_line(book_, result));
    for (std::size_t at = 0; at < result.mentions.size(); ++at) add(claim_line(book_, listing, result, at));
    for (const Finding& finding : result.findings) {
        add(fmt::format("! {} {}", book_.rules()[finding.rule].id,
                        quoted_line(text.substr(finding.start, finding.end - finding.start), text.size())));
    }
}

void ReadingDigest::add(std::string_view line) {
    for (const char c : line) digest_ = (digest_ ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    digest_ = (digest_ ^ 0x0a) * 0x100000001b3ULL;
    if (in_full_ != nullptr) in_full_->append(line).append("\n");
}

}  // namespace grainside::scoring
