// Any text as a listing: rewording keeps what its header promises. Edits lie in the text on character borders and apart
// from one another, the texts are what they give, the reworded listing has no more findings than the listing, and a
// second run brings none either.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/utf8.h"
#include "grainside/reword.h"

namespace {

using namespace grainside;

// Each round checks the whole text again.
constexpr std::size_t kMaxInputBytes = 2048;

void require(bool holds) {
    if (!holds) std::abort();
}

const RuleBook& book() {
    static const RuleBook rules = std::move(RuleBook::built_in()).value();
    return rules;
}

Listing listing_of(std::string_view name, std::string_view description) {
    Listing listing;
    listing.id = "l";
    if (!name.empty()) listing.fields.push_back({"name", name});
    listing.fields.push_back({"description", description});
    return listing;
}

bool on_border(std::string_view text, std::size_t at) {
    return at == text.size() || (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80;
}

std::string applied(const Listing& listing, const Rewording& rewording, std::size_t field) {
    const std::string_view text = listing.fields[field].text;
    std::string out;
    std::size_t at = 0;
    for (const Edit& edit : rewording.edits) {
        if (edit.field != field) continue;
        require(edit.start >= at && edit.start <= edit.end && edit.end <= text.size());
        if (document::is_utf8(text)) require(on_border(text, edit.start) && on_border(text, edit.end));
        require(edit.words == text.substr(edit.start, edit.end - edit.start));
        out.append(text.substr(at, edit.start - at)).append(edit.wording);
        at = edit.end;
    }
    return out.append(text.substr(at));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    // The first line as a title, where a '#' begins it: a title against the text is where most cross-checks live.
    const std::size_t line = text.starts_with('#') ? text.find('\n') : std::string_view::npos;
    const Listing listing = line == std::string_view::npos
                                ? listing_of({}, text)
                                : listing_of(text.substr(1, line - 1), text.substr(line + 1));
    const CheckOptions options{{"us", "eu"}, "2026-11-26"};
    Checker checker(book(), options);
    const std::size_t before = checker.check(listing).findings.size();
    Reworder reworder(book(), options);
    const Rewording rewording = reworder.reword(listing);
    require(rewording.texts.size() == listing.fields.size());
    for (std::size_t field = 0; field < listing.fields.size(); ++field) {
        require(rewording.texts[field] == applied(listing, rewording, field));
    }
    Listing mended = listing;
    for (std::size_t field = 0; field < mended.fields.size(); ++field)
        mended.fields[field].text = rewording.texts[field];
    const std::size_t after = checker.check(mended).findings.size();
    require(after <= before);
    // A second run may settle more, never less.
    const Rewording again = reworder.reword(mended);
    Listing twice = mended;
    for (std::size_t field = 0; field < twice.fields.size(); ++field) twice.fields[field].text = again.texts[field];
    require(checker.check(twice).findings.size() <= after);
    return 0;
}
