#include "report/concession_text.h"

#include <fmt/format.h>

#include <iterator>

#include "report/json_writer.h"

namespace grainside::report {

const Concession* concession_of(const Conceded* conceded, std::size_t at) {
    if (conceded == nullptr || conceded->matches[at].concession == kNoConcession) return nullptr;
    return &conceded->concessions->all()[conceded->matches[at].concession];
}

void append_concession_member(std::string& out, const Conceded* conceded, std::size_t at) {
    const Concession* concession = concession_of(conceded, at);
    if (concession == nullptr) return;
    out += conceded->stands(at) ? ",\"concession\":" : ",\"expired_concession\":";
    JsonWriter json(out);
    json.begin_object();
    json.member("reason", std::string_view(concession->reason));
    json.member("owner", std::string_view(concession->owner));
    json.member("until", std::string_view(concession->until));
    json.end_object();
}

std::string_view concession_label(const Conceded& conceded, std::size_t at) {
    return conceded.stands(at) ? "conceded" : "ran out";
}

std::string concession_line(const Conceded& conceded, std::size_t at) {
    const Concession* concession = concession_of(&conceded, at);
    if (concession == nullptr) return {};
    return conceded.stands(at)
               ? fmt::format("until {} by {}: {}", concession->until, concession->owner, concession->reason)
               : fmt::format("the concession of {} held until {}: {}", concession->owner, concession->until,
                             concession->reason);
}

std::size_t counting(const Conceded* conceded, std::size_t all) {
    return all - (conceded == nullptr ? 0 : conceded->count);
}

void append_conceded_count(std::string& out, std::size_t conceded) {
    if (conceded != 0) fmt::format_to(std::back_inserter(out), "; {} conceded", conceded);
}

}  // namespace grainside::report
