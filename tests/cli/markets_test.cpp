// grainside markets: where copy stands, what is told once, what is coming. The book is small and of the tests: its
// dates and markets are invented.
#include <string>
#include <string_view>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

constexpr std::string_view kMarketsOfTest =
    "- {market: us, name: United States}\n- {market: eu, name: European Union}\n"
    "- {market: it, name: Italy, within: eu}\n- {market: jp, name: Japan}\n";

constexpr std::string_view kProofOfWool =
    "  proof:\n"
    "    flags: [{text: Wool., words: Wool}, {text: Of wool., words: wool}, {text: A wool., words: wool}]\n"
    "    passes: [{text: Wood.}, {text: Stone.}, {text: Paper.}]\n";

// Beside the small book: wool is misleading in the Union from 2027-03-01 on, and in the United States until 2026-12-31.
std::string wool_rules() {
    const std::string head = "  title: Wool\n  grade: misleading\n  when: {says: wool}\n";
    return "- rule: wool-eu\n" + head +
           "  because: The Union says so.\n  markets: eu\n  in_force: {from: 2027-03-01}\n" +
           "  remedy: Name the fibre.\n  sources: [unseen-standard]\n" + std::string(kProofOfWool) +
           "- rule: wool-us\n" + head + "  because: The states say so.\n  markets: us\n" +
           "  in_force: {until: 2026-12-31}\n  remedy: Name the fibre.\n  sources: [seen-law]\n" +
           std::string(kProofOfWool);
}

class Markets : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_book("book");
        write_file("book/markets.yaml", kMarketsOfTest);
        write_file("book/wording/wool.yaml", wool_rules());
    }
    ProcessResult ask(std::vector<std::string> arguments, const std::string& text) const {
        arguments.insert(arguments.begin(), "markets");
        arguments.insert(arguments.end(), {"--rules", "book"});
        return run_with_input(std::move(arguments), text);
    }
};

TEST_F(Markets, AreAskedOneByOne) {
    const ProcessResult result = ask({"--on", "2026-11-26"}, "Wool. Polyurethane.");
    EXPECT_EQ(result.status, 1) << result.err;
    const std::string::size_type end = result.out.find("This is not legal advice");
    ASSERT_NE(end, std::string::npos) << result.out;
    EXPECT_EQ(result.out.substr(0, end), R"(<stdin>:1

  market                        as it stands  worst         findings  rules
  us  United States             no            misleading    2         own
  eu  European Union            no            misleading    1         own
  it  Italy                     no            misleading    1         of eu
  jp  Japan                     yes           -             0         general

  'of ...': no rules of its own in this book; those of the larger market and
  general rules
  general: no rules of its own in this book; general rules only

Stands in 1 market, on 2026-11-26: jp.
Does not stand in 3 markets, on 2026-11-26: us, eu, it.

What to change

    misleading     'Wool' in description
      markets      us
      because      The states say so.
      remedy       Name the fibre.
      source       Law of the tests, section 1
      rule         wool-us

    misleading     'Polyurethane' in description
      markets      us, eu, it
      because      Polyurethane is a "plastic", says the rule of the tests.
      say instead  body of plastic sheet
      sources      Law of the tests, section 1
                   Standard of the tests (from memory)
      rule         plastic-named

What is coming

  from 2027-01-01 in us: 'Wool' (description) will be not flagged, until then
  misleading [wool-us]; it does not stand then
  from 2027-03-01 in eu, it: 'Wool' (description) will be misleading, until then
  not flagged [wool-eu]; it does not stand then
  from 2030-01-01 in us: 'Wool' (description) will be unsupported, until then
  not flagged [wool-named-later]; it does not stand then
  from 2030-01-01 in jp: 'Wool' (description) will be unsupported, until then
  not flagged [wool-named-later]; it stands then
)"
                                         "\n");
}

TEST_F(Markets, StandByTheGradeThatIsAsked) {
    const std::string cotton = "Cotton.";
    EXPECT_EQ(ask({"--on", "2026-11-26"}, cotton).status, 0);
    EXPECT_EQ(ask({"--on", "2026-11-26", "--fail-at", "vague"}, cotton).status, 1);
    const ProcessResult japan = ask({"--on", "2026-11-26", "--market", "JP", "--format", "jsonl"}, "Polyurethane.");
    EXPECT_EQ(japan.status, 0) << japan.err;
    EXPECT_EQ(japan.out, R"({"listing":"<stdin>:1","market":"jp","name":"Japan","on":"2026-11-26","rules":"general",)"
                         R"("stands":true,"worst":null,"findings":[],"coming":[]})"
                         "\n");
    EXPECT_EQ(ask({"--market", "mars"}, cotton).status, 2);
}

// The last day of a rule counts, and so does the first.
TEST_F(Markets, KnowTheFirstAndTheLastDay) {
    struct DayRow {
        std::string_view market, day;
        int status;
    };
    constexpr DayRow kDays[] = {
        {"us", "2026-12-31", 1}, {"us", "2027-01-01", 0}, {"it", "2027-02-28", 0}, {"it", "2027-03-01", 1}};
    for (const DayRow& row : kDays) {
        const ProcessResult result = ask({"--market", std::string(row.market), "--on", std::string(row.day)}, "Wool.");
        EXPECT_EQ(result.status, row.status) << row.market << ' ' << row.day << '\n' << result.out;
    }
}

TEST_F(Markets, AreRowsOfATable) {
    const ProcessResult result = ask({"--on", "2026-11-26", "--market", "us,jp", "--format", "csv"},
                                     "{\"sku\": \"=1+1\", \"name\": \"Silk, polyurethane\"}\n");
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.out,
              "listing,market,name,on,rules,stands,worst,findings,to change,coming\r\n"
              "'=1+1,us,United States,2026-11-26,own,no,misleading,1,'polyurethane' (misleading): body of plastic "
              "sheet,\r\n"
              "'=1+1,jp,Japan,2026-11-26,general,yes,,0,,\r\n");
}

TEST_F(Markets, FitTheirSchema) {
    const std::string feed =
        "{\"sku\": \"a\\u001b\", \"name\": \"Wool, polyurethane\", \"description\": \"Silk. Linen. Cotton \\u0000 "
        "wool\"}\n"
        "{\"name\": \"Tote\"}\n";
    const ProcessResult result = ask({"--format", "jsonl", "--on", "2026-11-26"}, feed);
    EXPECT_EQ(lines_of(result.out).size(), 8U) << result.err;
    EXPECT_NE(result.out.find("\"from_memory\":true"), std::string::npos);
    EXPECT_NE(result.out.find("\"coming\":[{"), std::string::npos);
    const ProcessResult valid = validate_records({"market"}, result.out, folder());
    EXPECT_EQ(valid.status, 0) << valid.out << valid.err;
    EXPECT_EQ(validate_records({"market"}, R"({"listing":"a","market":"us"})", folder()).status, 1);
}

TEST_F(Markets, ShowNothingThatATerminalWouldObey) {
    const ProcessResult result =
        ask({"--on", "2026-11-26"}, "{\"sku\": \"\\u001b[2J\", \"name\": \"Wool \\u001b[31m\"}\n");
    EXPECT_EQ(result.out.find('\x1B'), std::string::npos);
}

// A day for each of forty rules: 32 are looked at, and the view says that there are more.
TEST_F(Markets, LookAtABoundedNumberOfDays) {
    std::string rules;
    for (int year = 2031; year < 2071; ++year) {
        const std::string number = std::to_string(year);
        rules += "- rule: wool-" + number + "\n  title: Wool\n  grade: misleading\n  when: {says: wool}\n" +
                 "  because: B.\n  markets: jp\n  in_force: {from: " + number + "-01-01, until: " + number +
                 "-06-30}\n  sources: [seen-law]\n" + std::string(kProofOfWool);
    }
    write_file("book/wording/years.yaml", rules);
    const ProcessResult result = ask({"--on", "2030-06-01", "--market", "jp", "--format", "jsonl"}, "Wool.");
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_EQ(count_of(result.out, "\"day\":"), 32U);
    EXPECT_NE(result.out.find("\"more_days\":true"), std::string::npos);
    const ProcessResult view = ask({"--on", "2030-06-01", "--market", "jp"}, "Wool.");
    EXPECT_NE(view.out.find("more than 32 days to come in jp"), std::string::npos) << view.out;
}

}  // namespace
}  // namespace grainside::tests
