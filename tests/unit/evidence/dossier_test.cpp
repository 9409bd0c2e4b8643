// What a dossier holds once it is read: its sample, readings, computed quantities, listing and priors.
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>

#include "document/sha256.h"
#include "evidence/colour_change.h"
#include "evidence/dossier_data.h"
#include "evidence/picture_files.h"
#include "grainside/dossier.h"
#include "measure/colour_difference.h"
#include "measure/monte_carlo.h"
#include "small_evidence.h"
#include "support/fault_dump.h"
#include "support/temporary_folder.h"

namespace grainside::evidence {
namespace {

namespace fs = std::filesystem;

static_assert(std::is_nothrow_move_constructible_v<Dossier> && !std::is_copy_constructible_v<Dossier>);

using Folder = support::TemporaryFolder;

Dossier parsed(std::string text, const fs::path& folder = {}) {
    auto dossier = Dossier::parse("of/tote.v2.yaml", std::move(text), folder, support::small_evidence_book(),
                                  {.today = "2026-11-26"});
    if (!dossier) throw std::runtime_error(to_text(dossier.issues().front()));
    return std::move(dossier).value();
}

Reading only_reading(std::string_view part, std::string_view reading) {
    const Dossier dossier = parsed("sample: {what: bag}\nparts: {" + std::string(part) + ": {readings: [{" +
                                   std::string(reading) + "}]}}\n");
    return dossier.data().parts.at(0).readings.at(0);
}

measure::Measured value_of(const Reading& reading, std::string_view name) {
    for (const NamedQuantity& one : reading.quantities) {
        if (one.name == name) return one.measured;
    }
    throw std::runtime_error("the reading has no " + std::string(name));
}

constexpr std::string_view kWhole =
    "sample:\n"
    "  what: Tote bag, tan\n"
    "  category: bag\n"
    "  seller: Ferrow and Tide\n"
    "  bought: 2026-08-14\n"
    "  price: 189.00 USD\n"
    "  condition: used\n"
    "  months_in_use: 0.5\n"
    "listing:\n"
    "  captured: 2026-08-12\n"
    "  digest: sha256:e1634ed708a401f80b336f4ce4bfadab5cf600c97c4c139dc41c1e3e6521a9ca\n"
    "  name: Lumen tote\n"
    "  description: |\n"
    "    Full grain.\n"
    "  material: leather\n"
    "  attributes: {Lining: cotton, Empty: ''}\n"
    "  category: bags\n"
    "  region: eu\n"
    "  language: en\n"
    "parts:\n"
    "  body:\n"
    "    readings:\n"
    "      - {method: edge, outcome: yarns, date: 2026-08-20, photo: cut-01.jpg, note: at the seam}\n"
    "      - {method: section, coat: 0.21 +- 0.02 mm, total: 1.10 +- 0.03 mm}\n"
    "  whole: {}\n"
    "confirmed:\n"
    "  body: {sheet: cotton}\n"
    "priors:\n"
    "  sheet: {suede: 40, cotton: 30}\n"
    "costs: {materials: 3.00 USD}\n";

TEST(DossierReading, HoldsTheRecord) {
    const Dossier dossier = parsed(std::string(kWhole));
    EXPECT_EQ(dossier.id(), "tote.v2");
    EXPECT_EQ(dossier.file(), "of/tote.v2.yaml");
    EXPECT_EQ(dossier.reading_count(), 2U);
    const DossierData& data = dossier.data();
    EXPECT_EQ(data.what, "Tote bag, tan");
    EXPECT_EQ(data.category, "bag");
    EXPECT_EQ(data.seller, "Ferrow and Tide");
    EXPECT_EQ(data.bought, "2026-08-14");
    EXPECT_EQ(data.price, "189.00 USD");
    EXPECT_EQ(data.condition, "used");
    EXPECT_EQ(data.months_in_use, 0.5);
    EXPECT_TRUE(data.worn());
    ASSERT_EQ(data.parts.size(), 2U);
    EXPECT_EQ(data.parts[0].part, Part::body);
    EXPECT_EQ(data.parts[1].part, Part::whole);
    const Reading& edge = data.parts[0].readings[0];
    const EvidenceData& book = support::small_evidence_book().data();
    EXPECT_EQ(book.methods[edge.method].id, "edge");
    EXPECT_EQ(book.methods[edge.method].outcomes[edge.outcome].id, "yarns");
    EXPECT_EQ(edge.date, "2026-08-20");
    EXPECT_EQ(edge.photo, "cut-01.jpg");
    EXPECT_EQ(edge.note, "at the seam");
    EXPECT_EQ(edge.line, 23U);
    EXPECT_EQ(data.parts[0].readings[1].outcome, kNone);
    ASSERT_EQ(data.confirmed.size(), 1U);
    EXPECT_EQ(book.frames[data.confirmed[0].frame].candidates[data.confirmed[0].candidate].id, "cotton");
    EXPECT_EQ(support::dump_places(dossier.warnings()), "23:65 no-picture; 25:10 no-readings");
}

TEST(DossierReading, SharesWhatOwnPriorsLeave) {
    const Dossier dossier = parsed(std::string(kWhole));
    ASSERT_EQ(dossier.data().priors.size(), 1U);
    // The book has 3, 1, 4 and 2 parts; the 30 % that are left go to the first and the last as 3 to 2.
    const std::array<double, 4> want = {0.18, 0.4, 0.3, 0.12};
    ASSERT_EQ(dossier.data().priors[0].prior.size(), want.size());
    for (std::size_t i = 0; i < want.size(); ++i) EXPECT_NEAR(dossier.data().priors[0].prior[i], want[i], 1e-12) << i;
}

TEST(DossierReading, HoldsTheListingInWrittenOrder) {
    Dossier first = parsed(std::string(kWhole));
    const Dossier dossier = std::move(first);  // views stay where they point
    ASSERT_NE(dossier.listing(), nullptr);
    const Listing& listing = *dossier.listing();
    EXPECT_EQ(listing.id, "tote.v2");
    EXPECT_EQ(listing.region, "eu");
    EXPECT_EQ(listing.language, "en");
    EXPECT_EQ(dossier.data().captured, "2026-08-12");
    std::string fields;
    for (const Field& field : listing.fields) fields += std::string(field.name) + "=" + std::string(field.text) + ";";
    EXPECT_EQ(
        fields,
        "name=Lumen tote;description=Full grain.\n;material=leather;additionalProperty.Lining=cotton;category=bags;");
}

TEST(DossierReading, TakesTheKindOfProductFromTheSampleWhereTheListingIsSilent) {
    const auto category_of = [](const Dossier& dossier) {
        std::string found;
        for (const Field& field : dossier.listing()->fields) {
            if (field.name == "category") found += std::string(field.text) + ";";
        }
        return found;
    };
    EXPECT_EQ(category_of(parsed(std::string(kWhole))), "bags;");
    EXPECT_EQ(category_of(parsed("sample: {what: bag, category: belt}\nlisting: {name: Lumen}\n")), "belt;");
    EXPECT_EQ(category_of(parsed("sample: {what: bag}\nlisting: {name: Lumen}\n")), "");
}

TEST(DossierReading, NeedsNoListingAndNoParts) {
    const Dossier dossier = parsed("sample: {what: bag}\n");
    EXPECT_EQ(dossier.listing(), nullptr);
    EXPECT_EQ(dossier.reading_count(), 0U);
    EXPECT_FALSE(dossier.data().worn());
    EXPECT_TRUE(dossier.warnings().empty());
}

TEST(DossierReading, WarnsOfWhatIsOdd) {
    const Dossier dossier = parsed(
        "sample: {what: bag, bought: 2026-08-14, condition: new, months_in_use: 2}\n"
        "parts: {body: {readings: [{method: edge, outcome: yarns, date: 2026-08-13}, {method: section, coat: exactly 1 "
        "mm}]}}\n");
    EXPECT_EQ(support::dump_places(dossier.warnings()),
              "1:72 worn-though-new; 2:64 before-purchase; 2:77 missing-quantity");
    EXPECT_TRUE(dossier.data().worn());
}

// The first bound that is met beyond the expanded uncertainty (k = 2); a word that is written goes
// before numbers that do not surely speak against it.
TEST(ImpliedOutcomes, AreWhatTheNumbersSurelyAre) {
    struct Case {
        std::string_view reading, want;
    };
    constexpr Case kCases[] = {
        {"film: 0.23 +- 0.02 mm", "thick"},
        {"film: 0.22 +- 0.02 mm", "middling"},  // only touches 0.2
        {"film: 0.17 +- 0.02 mm", "middling"},
        {"film: 0.07 +- 0.02 mm", "thin"},
        {"film: 0.09 +- 0.02 mm", ""},
        {"film: exactly 0.1 mm", "thin"},
        {"film: exactly 210 um", "thick"},
        {"film: 0.3 +- 0.05 mm (k=1)", "middling"},
        {"outcome: thick, film: 0.17 +- 0.04 mm", "thick"},
    };
    const EvidenceData& book = support::small_evidence_book().data();
    for (const Case& one : kCases) {
        const Reading reading = only_reading("body", "method: film, " + std::string(one.reading));
        const std::string_view got =
            reading.outcome == kNone ? "" : std::string_view(book.methods[reading.method].outcomes[reading.outcome].id);
        EXPECT_EQ(got, one.want) << one.reading;
    }
}

// Fact hyd-budget-brass of our fact base, an uncertainty budget worked out on its own.
TEST(ComputedQuantities, DensityByWeighing) {
    const Reading reading = only_reading("hardware",
                                         "method: weighing, in_air: 41.5090 +- 0.0012 g (k=1), in_water: 36.6177 +- "
                                         "0.0030 g (k=1), water: 20.0 +- 0.3 degC (k=1)");
    const measure::Measured density = value_of(reading, "density");
    EXPECT_NEAR(density.value, 8.46209, 0.00001);
    EXPECT_NEAR(density.u, 0.00553, 0.00001);
}

// By hand: 100 c/t, and u^2 = (100 u_c/t)^2 + (100 c u_t/t^2)^2 (JCGM 100:2008, 5.1.2).
TEST(ComputedQuantities, ShareOfTheCoat) {
    const Reading reading = only_reading("body", "method: section, coat: 0.40 +- 0.02 mm, total: 1200 +- 30 um");
    const measure::Measured share = value_of(reading, "coat-share");
    EXPECT_NEAR(share.value, 100.0 / 3, 1e-9);
    EXPECT_NEAR(share.u, std::hypot(100 * 0.01 / 1.2, 100 * 0.4 * 0.015 / (1.2 * 1.2)), 1e-9);
}

TEST(ComputedQuantities, CoatAboveTheTotalWithinItsUncertaintyIsAllOfIt) {
    const Reading reading = only_reading("body", "method: section, coat: 1.06 +- 0.05 mm, total: 1.00 +- 0.05 mm");
    EXPECT_DOUBLE_EQ(value_of(reading, "coat-share").value, 100);
    EXPECT_GT(value_of(reading, "coat-share").u, 2.5);
}

// Pair 1 of the test data of Sharma, Wu and Dalal (2005): 2.0425.
TEST(ComputedQuantities, ChangeOfColour) {
    const Reading reading =
        only_reading("body",
                     "method: colour, before: {L: exactly 50, a: exactly 2.6772, b: exactly -79.7751}, after: {L: "
                     "exactly 50, a: exactly 0, b: exactly -82.7485}");
    EXPECT_NEAR(value_of(reading, "colour-change").value, 2.0425, 0.00005);
    EXPECT_EQ(value_of(reading, "colour-change").u, 0);
    const double rating = value_of(reading, "grey-scale").value;
    EXPECT_GT(rating, 1);
    EXPECT_LT(rating, 5);
}

// Two equal greys at L = 50: all weights are 1 there, and a counts 1.5 times (G = 0.5 at chroma 0; ISO/CIE 11664-6).
// The root mean square of the difference is then u sqrt(2 (1 + 1.5^2 + 1)), to the few per cent that the chroma weight
// takes.
TEST(ColourChange, OfEqualReadingsIsUncertain) {
    const MeasuredColour grey = {{{50, 0.2}, {0, 0.2}, {0, 0.2}}};
    const ColourChange change = colour_change(grey, grey);
    EXPECT_EQ(change.ciede2000.value, 0);
    EXPECT_NEAR(change.ciede2000.u, 0.2 * std::sqrt(8.5), 0.02);
    EXPECT_GT(change.difference.u, 0.2);
}

// Where the formula is near linear, drawing (JCGM 101) gives the same spread.
TEST(ColourChange, OfDistantReadingsIsThatOfMonteCarlo) {
    const MeasuredColour before = {{{48.2, 0.2}, {12.1, 0.2}, {20.3, 0.2}}};
    const MeasuredColour after = {{{55.2, 0.2}, {9.1, 0.2}, {26.3, 0.2}}};
    const ColourChange change = colour_change(before, after);
    std::array<measure::Draw, 6> draws;
    for (std::size_t i = 0; i < 3; ++i) {
        draws[i] = measure::draw_of(before[i]);
        draws[i + 3] = measure::draw_of(after[i]);
    }
    const auto drawn = measure::monte_carlo(
        [](std::span<const double> at) {
            return measure::difference_ciede2000({at[0], at[1], at[2]}, {at[3], at[4], at[5]});
        },
        draws, {.digits = 1});
    ASSERT_TRUE(drawn);
    EXPECT_NEAR(change.ciede2000.u, drawn->u, 0.03 * drawn->u);
}

TEST(DossierReading, NamesEachShare) {
    const Reading metal = only_reading("hardware", "method: xrf, composition: {Zn: 95.4 +- 0.6 %, Al: 4.0 +- 0.3 %}");
    ASSERT_EQ(metal.composition.size(), 2U);
    EXPECT_EQ(metal.composition[0].first, "Zn");
    EXPECT_DOUBLE_EQ(metal.composition[0].second.u, 0.3);
    EXPECT_DOUBLE_EQ(value_of(metal, "content.Al").value, 4);
    const Reading cloth = only_reading("lining", "method: fibres, shares: {cotton: 60 +- 2 %, polyester: 40 +- 2 %}");
    EXPECT_DOUBLE_EQ(value_of(cloth, "fibre-share.cotton").value, 60);
    EXPECT_TRUE(cloth.composition.empty());
}

TEST(DossierReading, TakesTemperaturesBelowZero) {
    EXPECT_DOUBLE_EQ(value_of(only_reading("body", "method: rub, heat: -5 +- 1 degC"), "heat").value, -5);
}

TEST(ListingFile, IsReadBesideTheDossier) {
    const Folder folder;
    folder.write("tote.txt", "A full grain tote.");
    const Dossier dossier = parsed("sample: {}\nlisting: {file: tote.txt, region: eu}\n", folder.path());
    ASSERT_NE(dossier.listing(), nullptr);
    ASSERT_EQ(dossier.listing()->fields.size(), 1U);
    EXPECT_EQ(dossier.listing()->fields[0].name, "description");
    EXPECT_EQ(dossier.listing()->fields[0].text, "A full grain tote.");
    EXPECT_EQ(dossier.listing()->id, "tote.v2");
    EXPECT_EQ(dossier.listing()->region, "eu");
    EXPECT_EQ(dossier.data().listing_file, "tote.txt");
}

TEST(ListingFile, MayBeALinkToANeighbour) {
    const Folder folder;
    folder.write("tote.txt", "A full grain tote.");
    fs::create_symlink("tote.txt", folder.path() / "link.txt");
    EXPECT_NE(parsed("sample: {}\nlisting: {file: link.txt}\n", folder.path()).listing(), nullptr);
}

TEST(DossierFile, IsReadWithItsListing) {
    const Folder folder;
    folder.write("tote.json", R"({"@type": "Product", "name": "Tote", "material": "leather"})");
    folder.write("bag.yaml", "sample: {what: bag}\nlisting: {file: tote.json}\n");
    const auto dossier = Dossier::read(folder.path() / "bag.yaml", support::small_evidence_book());
    ASSERT_TRUE(dossier) << to_text(dossier.issues().front());
    EXPECT_EQ(dossier.value().id(), "bag");
    ASSERT_EQ(dossier.value().listing()->fields.size(), 2U);
}

// The places of faults in files beside the dossier are those in the dossier, and in the file what its reader tells.
std::string listing_faults(const Folder& folder, std::string_view file) {
    const auto dossier = Dossier::parse("d.yaml", "sample: {}\nlisting: {file: " + std::string(file) + "}\n",
                                        folder.path(), support::small_evidence_book());
    std::string dump;
    for (const Issue& issue : dossier.issues()) {
        dump +=
            issue.file + ":" + std::to_string(issue.line) + ":" + std::to_string(issue.column) + " " + issue.code + ";";
    }
    return dump;
}

TEST(ListingFile, StaysInsideTheFolder) {
    const Folder folder;
    const Folder other;
    other.write("tote.txt", "A tote.");
    fs::create_symlink(other.path() / "tote.txt", folder.path() / "out.txt");
    EXPECT_EQ(listing_faults(folder, "out.txt"), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "../tote.txt"), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "/etc/hostname"), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "sub/tote.txt"), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, ".."), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "."), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "'-'"), "d.yaml:2:17 outside-folder;");
    EXPECT_EQ(listing_faults(folder, "''"), "d.yaml:2:17 outside-folder;");
}

// Digests by sha256sum of coreutils.
TEST(ListingFile, IsHeldAgainstItsDigest) {
    constexpr std::string_view kDigest = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
    const Folder folder;
    folder.write("tote.txt", "A full grain tote.");
    const auto faults = [&](std::string_view digest) {
        return listing_faults(folder, "tote.txt, digest: " + std::string(digest));
    };
    const std::string right = document::sha256_of("A full grain tote.");
    EXPECT_EQ(right, "231468b2d87a129707ff45afe6a82b960ae4b86d15cc28f65237b45b7ce7ec15");
    EXPECT_EQ(faults(right), "");
    EXPECT_EQ(faults("sha256:" + right), "");
    EXPECT_EQ(faults(kDigest), "d.yaml:2:35 digest-differs;");
    EXPECT_EQ(faults("sha256:1"), "d.yaml:2:35 bad-digest;");
    EXPECT_EQ(faults("md5"), "d.yaml:2:35 bad-digest;");
}

TEST(Pictures, AreFoundBelowTheFolderAndNowhereElse) {
    const Folder folder;
    const Folder other;
    folder.write("cut.jpg", "abc");
    folder.write("more/edge.jpg", "abc");
    other.write("secret.jpg", "abc");
    fs::create_symlink(other.path() / "secret.jpg", folder.path() / "out.jpg");
    std::string text = "sample: {}\nparts: {body: {readings: [";
    for (const std::string_view photo :
         {"cut.jpg", "more/edge.jpg", "out.jpg", "../x.jpg", "/etc/hostname", "gone.jpg", "more", "cut.jpg"}) {
        text += "{method: edge, outcome: yarns, photo: " + std::string(photo) + "}, ";
    }
    const Dossier dossier = parsed(text + "]}}\n", folder.path());
    std::string dump;
    for (const PictureFile& picture : pictures_of(dossier.data())) {
        dump +=
            picture.path + (picture.missing.empty() ? "=" + picture.sha256.substr(0, 8) : "!" + picture.missing) + ";";
    }
    EXPECT_EQ(dump,
              "cut.jpg=ba7816bf;more/edge.jpg=ba7816bf;out.jpg!'out.jpg' leads out of the dossier's folder;"
              "../x.jpg!there is no file '../x.jpg' beside the dossier;"
              "/etc/hostname!'/etc/hostname' is no path from the dossier's folder down;"
              "gone.jpg!there is no file 'gone.jpg' beside the dossier;more!'more' is no readable file;");
    // Each that a report could not show is told with the dossier, which holds without it.
    dump.clear();
    for (const Issue& warning : dossier.warnings()) dump += warning.code + " " + warning.message + ";";
    EXPECT_EQ(dump,
              "no-picture 'out.jpg' leads out of the dossier's folder;"
              "no-picture there is no file '../x.jpg' beside the dossier;"
              "no-picture '/etc/hostname' is no path from the dossier's folder down;"
              "no-picture there is no file 'gone.jpg' beside the dossier;no-picture 'more' is no readable file;"
              "same-reading-twice the same reading stands twice: in line 2 it is the same in every member;");
}

// Sparse files: nothing is read beyond what fits, and one file is read once.
TEST(Pictures, AreReadOnceAndNotWithoutEnd) {
    const Folder folder;
    constexpr std::uintmax_t kLarge = kMaxPictureBytes - 1;
    std::string text = "sample: {}\nparts: {body: {readings: [";
    const auto read = [&](const std::string& photo) {
        text += "{method: edge, outcome: yarns, photo: " + photo + "}, ";
    };
    folder.write("small.jpg", "abc");
    for (const char* spelling : {"small.jpg", "./small.jpg", "././small.jpg"}) read(spelling);
    folder.write("huge.jpg", "");
    fs::resize_file(folder.path() / "huge.jpg", kMaxPictureBytes + 1);
    read("huge.jpg");
    const std::vector<PictureFile> pictures = pictures_of(parsed(text + "]}}\n", folder.path()).data());
    ASSERT_EQ(pictures.size(), 4U);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_TRUE(pictures[i].sha256.starts_with("ba7816bf")) << i;
    EXPECT_EQ(pictures[3].missing, "'huge.jpg' is larger than 256 MiB");
    static_assert(kLarge * 4 < kMaxPicturesBytes && kMaxPicturesBytes < kLarge * 5);
}

TEST(ListingFile, HoldsExactlyOneListing) {
    const Folder folder;
    fs::create_directory(folder.path() / "sub");
    ASSERT_EQ(::mkfifo((folder.path() / "pipe.txt").c_str(), 0600), 0);
    folder.write("two.jsonl", "{\"name\": \"a\"}\n{\"name\": \"b\"}\n");
    folder.write("none.jsonl", "");
    folder.write("broken.json", "{\"name\": ");
    fs::resize_file(folder.path() / "none.jsonl", 0);
    folder.write("large.txt", "x");
    fs::resize_file(folder.path() / "large.txt", (16U << 20U) + 1);
    EXPECT_EQ(listing_faults(folder, "gone.txt"), "d.yaml:2:17 unreadable;");
    EXPECT_EQ(listing_faults(folder, "sub"), "d.yaml:2:17 unreadable;");
    EXPECT_EQ(listing_faults(folder, "pipe.txt"), "d.yaml:2:17 unreadable;");
    EXPECT_EQ(listing_faults(folder, "large.txt"), "d.yaml:2:17 too-large;");
    EXPECT_EQ(listing_faults(folder, "two.jsonl"), "d.yaml:2:17 many-listings;");
    EXPECT_EQ(listing_faults(folder, "none.jsonl"), "d.yaml:2:17 no-listing;");
    EXPECT_EQ(listing_faults(folder, "broken.json"), "broken.json:1:10 json-syntax;d.yaml:2:17 no-listing;");
}

TEST(DossierFile, ThatCannotBeReadIsAFault) {
    const Folder folder;
    const auto& book = support::small_evidence_book();
    const auto missing = Dossier::read(folder.path() / "gone.yaml", book);
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.issues().front().code, "unreadable");
    EXPECT_FALSE(missing.issues().front().hint.empty());
    const auto a_folder = Dossier::read(folder.path(), book);
    ASSERT_FALSE(a_folder);
    EXPECT_EQ(a_folder.issues().front().code, "unreadable");
    folder.write("large.yaml", "");
    fs::resize_file(folder.path() / "large.yaml", (4U << 20U) + 1);
    const auto large = Dossier::read(folder.path() / "large.yaml", book);
    ASSERT_FALSE(large);
    EXPECT_EQ(large.issues().front().code, "too-large");
}

TEST(DossierFile, TodayMustBeADay) {
    const auto dossier =
        Dossier::parse("d.yaml", "sample: {}\n", {}, support::small_evidence_book(), {.today = "26 November 2026"});
    ASSERT_FALSE(dossier);
    EXPECT_EQ(dossier.issues().front().code, "wrong-type");
}

}  // namespace
}  // namespace grainside::evidence
