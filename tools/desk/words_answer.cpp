#include "desk/words_answer.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "calendar.h"
#include "desk/checked_text.h"
#include "desk/desk_error.h"
#include "report/json_writer.h"

namespace grainside::desk {
namespace {

CheckOptions options_of(const DeskBooks& books, const JsonValue& request) {
    CheckOptions options;
    options.markets = request["market"].is_null() ? books.markets : texts_member(request, "market");
    const std::vector<std::string> known = books.rules.markets();
    for (const std::string& market : options.markets) {
        if (std::find(known.begin(), known.end(), market) == known.end()) {
            throw DeskError{400, "bad-request", "the rule book has no market '" + market + "'"};
        }
    }
    options.on = optional_text(request, "on").value_or(books.on);
    if (options.on.empty()) options.on = tools::today();
    if (!tools::is_day(options.on)) throw DeskError{400, "bad-request", "'on' is no day written as YYYY-MM-DD"};
    return options;
}

}  // namespace

std::string words_answer(const DeskBooks& books, const JsonValue& request) {
    const std::string_view text = text_member(request, "text");
    if (text.size() > kMostWordsBytes) throw DeskError{413, "too-large", "a text has at most 256 KiB"};
    const CheckOptions options = options_of(books, request);
    Listing listing;
    listing.id = "words";
    listing.fields.push_back({"description", text});
    if (const auto category = optional_text(request, "category"); category && !category->empty()) {
        listing.fields.push_back({"category", *category});
    }
    Reworder reworder(books.rules, options);
    const CheckedText checked(books.rules, listing, options, &reworder.reword(listing));

    std::string out;
    report::JsonWriter json(out);
    json.begin_object();
    checked.write_field(json, 0);
    json.key("summary");
    json.begin_object();
    json.member("claims", std::uint64_t{checked.result().claim_count});
    json.member("findings", std::uint64_t{checked.result().findings.size()});
    json.key("worst");
    if (checked.result().findings.empty()) {
        json.value_null();
    } else {
        json.value(name_of(checked.worst()));
    }
    json.end_object();
    json.end_object();
    return out;
}

}  // namespace grainside::desk
