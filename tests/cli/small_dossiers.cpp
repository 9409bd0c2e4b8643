#include "small_dossiers.h"

namespace grainside::tests {

const char* const kClearDossier =
    "sample: {what: \"Tote, tan\", category: bag, bought: 2024-08-14, price: 89.00 EUR, condition: used, "
    "months_in_use: 3}\n"
    "listing: {name: Cotton tote, description: \"Waterproof. Cotton, too.\"}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: look, outcome: film, date: 2024-08-20}\n"
    "      - {method: flame, outcome: melts, date: 2024-08-21, note: from the seam}\n";

const char* const kThinDossier =
    "sample: {what: Pouch}\n"
    "listing: {name: Cotton pouch}\n"
    "parts:\n"
    "  body: {readings: [{method: look, outcome: yarns}]}\n";

const char* const kNoListingDossier =
    "sample: {what: Scarf}\n"
    "parts:\n"
    "  body: {readings: [{method: look, outcome: film}]}\n";

const char* const kBareDossier = "sample: {what: Tote}\n";

const char* const kNearDossier =
    "sample: {what: Purse}\n"
    "listing: {name: Silk purse, region: eu}\n"
    "parts:\n"
    "  body: {readings: [{method: section, coat: 0.16 \xC2\xB1 0.02 mm, date: 2024-08-22}]}\n";

const char* const kBorneOutDossier =
    "sample: {what: Scarf}\n"
    "listing: {name: Silk scarf, region: eu, captured: 2024-08-12}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: look, outcome: yarns, date: 2024-08-20}\n"
    "      - {method: flame, outcome: hair, date: 2024-08-21}\n"
    "      - {method: flame, outcome: hair, date: 2024-08-22}\n"
    "      - {method: section, coat: 0.10 \xC2\xB1 0.02 mm, date: 2024-08-22}\n"
    "  lining: {readings: [{method: look, outcome: film, date: 2024-08-20}]}\n";

const char* const kOwnPriorsDossier =
    "sample: {what: Pouch}\n"
    "listing: {name: Cotton pouch}\n"
    "priors: {sheet: {polyurethane: 60}}\n"
    "parts:\n"
    "  body: {readings: [{method: look, outcome: yarns}]}\n";

const char* const kContradictoryDossier =
    "sample: {what: Tote}\n"
    "listing: {name: Cotton tote}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: flame, outcome: paper}\n"
    "      - {method: dissolve, outcome: gone}\n";

const char* const kConfirmedDossier =
    "sample: {what: Tote}\n"
    "listing: {name: Cotton tote}\n"
    "confirmed: {body: {sheet: polyurethane}}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: look, outcome: film}\n"
    "      - {method: flame, outcome: melts}\n";

const char* const kBrokenDossier =
    "sample: {what: Tote}\n"
    "parts:\n"
    "  body: {readings: [\n"
    "    {method: flamme, outcome: melts},\n"
    "    {method: section, coat: 0.2 mm}]}\n";

const char* const kHostileDossier =
    "sample: {what: \"Tote \\e[2J\\u202E<script>alert(1)</script>\\u2066\", seller: \"\\e]0;x\\a\"}\n"
    "listing:\n"
    "  name: \"\\e[31m Cotton\\u202E tote \\u009B31m <script>x</script>\"\n"
    "  attributes: {\"Lin\\e[1ming\\u202E\": \"silk\\u2028\"}\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: flame, outcome: melts, note: \"\\e[2J\\u202E<b>\", photo: \"a\\e[2J.jpg\"}\n";

}  // namespace grainside::tests
