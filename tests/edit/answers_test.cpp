// What a whole session answers on listings and dossiers, by the built-in rule book: ranges, actions, names to choose
// from. Messages are those of the Language Server Protocol 3.17.
#include <gtest/gtest.h>

#include <simdjson.h>
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "edit/message_framing.h"
#include "edit/session.h"
#include "report/json_text.h"

namespace grainside::tools::edit {
namespace {

using Texts = std::vector<std::string>;

std::string as_json(std::string_view text) {
    std::string out;
    report::append_json_string(out, text);
    return out;
}

// One document in one session.
class Editor {
public:
    // `text` has a '^' where the caret is, if any.
    Editor(std::string_view uri, std::string text) : uri_(uri) {
        caret_ = std::min(text.find('^'), text.size());
        if (caret_ < text.size()) text.erase(caret_, 1);
        text_ = text;
        ask("initialize",
            R"({"processId":null,"rootUri":null,"capabilities":{"general":{"positionEncodings":["utf-8"]},)"
            R"("textDocument":{"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":["quickfix"]}}}}}})");
        tell("textDocument/didOpen", R"({"textDocument":{"uri":)" + as_json(uri_) +
                                         R"(,"languageId":"","version":1,"text":)" + as_json(text_) + "}}");
    }

    // "words" of each diagnostic, with its code.
    Texts remarks() {
        std::string out;
        session_.publish(out);
        Texts found;
        simdjson::dom::parser parser;
        const auto said = parser.parse(content_of(out));
        for (const auto one : said["params"]["diagnostics"].get_array()) {
            found.push_back(std::string(one["code"].get_string().value()) + ": " +
                            text_.substr(byte_at(one["range"]["start"]),
                                         byte_at(one["range"]["end"]) - byte_at(one["range"]["start"])));
        }
        return found;
    }

    // The titles of what can be done at the first of `words`; a '*' in front of what is preferred. `only`: a kind.
    Texts actions(std::string_view words, std::string_view only = "quickfix") {
        simdjson::dom::parser parser;
        const std::string answer = ask_actions(words, only);
        Texts found;
        for (const auto one : parser.parse(answer)["result"].get_array()) {
            bool preferred = false;
            if (one["isPreferred"].get(preferred) != simdjson::SUCCESS) preferred = false;
            found.push_back((preferred ? "*" : "") + std::string(one["title"].get_string().value()));
        }
        return found;
    }

    // The text after the first action whose title begins with `title`.
    std::string after(std::string_view words, std::string_view title, std::string_view only = "quickfix") {
        simdjson::dom::parser parser;
        const std::string answer = ask_actions(words, only);
        std::string text = text_;
        for (const auto one : parser.parse(answer)["result"].get_array()) {
            if (!one["title"].get_string().value().starts_with(title)) continue;
            std::vector<simdjson::dom::element> edits;
            for (const auto edit : one["edit"]["changes"].at_key(uri_).get_array()) edits.push_back(edit);
            std::sort(edits.begin(), edits.end(), [&](const auto& a, const auto& b) {
                return byte_at(a["range"]["start"]) > byte_at(b["range"]["start"]);
            });
            for (const auto& edit : edits) {
                const std::size_t begin = byte_at(edit["range"]["start"]);
                text.replace(begin, byte_at(edit["range"]["end"]) - begin, edit["newText"].get_string().value());
            }
            return text;
        }
        return "no such action";
    }

    // The names that are offered at the caret.
    Texts names() {
        simdjson::dom::parser parser;
        const std::string answer = ask("textDocument/completion", R"({"textDocument":{"uri":)" + as_json(uri_) +
                                                                      R"(},"position":)" + position(caret_) + "}");
        Texts found;
        for (const auto one : parser.parse(answer)["result"].get_array()) {
            found.emplace_back(one["label"].get_string().value());
        }
        return found;
    }

private:
    static std::string content_of(std::string_view frames) {
        FrameReader reader;
        reader.add(frames);
        const auto frame = reader.next();
        return frame ? frame->content : std::string("{}");
    }

    void tell(std::string_view method, const std::string& params) {
        std::string out;
        session_.receive({R"({"jsonrpc":"2.0","method":)" + as_json(method) + R"(,"params":)" + params + "}", {}});
        while (session_.any_waiting()) session_.handle_next(out);
        EXPECT_EQ(out, "");
    }

    std::string ask(std::string_view method, const std::string& params) {
        std::string out;
        session_.receive(
            {R"({"jsonrpc":"2.0","id":1,"method":)" + as_json(method) + R"(,"params":)" + params + "}", {}});
        while (session_.any_waiting()) session_.handle_next(out);
        return content_of(out);
    }

    std::string ask_actions(std::string_view words, std::string_view only) {
        const std::size_t begin = text_.find(words);
        EXPECT_NE(begin, std::string::npos) << words;
        return ask("textDocument/codeAction", R"({"textDocument":{"uri":)" + as_json(uri_) + R"(},"range":{"start":)" +
                                                  position(begin) + R"(,"end":)" + position(begin + words.size()) +
                                                  R"(},"context":{"diagnostics":[],"only":[)" + as_json(only) + "]}}");
    }

    std::string position(std::size_t byte) const {
        const auto line = std::count(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(byte), '\n');
        const std::size_t begin = byte == 0 ? std::string::npos : text_.rfind('\n', byte - 1);
        return R"({"line":)" + std::to_string(line) + R"(,"character":)" +
               std::to_string(begin == std::string::npos ? byte : byte - begin - 1) + "}";
    }

    std::size_t byte_at(simdjson::dom::element place) const {
        std::size_t begin = 0;
        for (std::uint64_t line = place["line"].get_uint64(); line > 0; --line) begin = text_.find('\n', begin) + 1;
        return begin + place["character"].get_uint64();
    }

    std::string uri_;
    std::string text_;
    std::size_t caret_ = 0;
    Session session_{{}, [](std::string_view) {}};
};

TEST(ActionsTest, LinkTargetsAndAddressesStay) {
    Editor editor("untitled:a.md",
                  "![vegan leather](img/vegan-leather.jpg) A tote.\n\nMail eco-leather@shop.example today.\n");
    EXPECT_EQ(editor.after("vegan", "Write", "source.fixAll.grainside"), "no such action");
    EXPECT_EQ(editor.after("vegan", "Take every", "source.fixAll.grainside"),
              "![imitation leather](img/vegan-leather.jpg) A tote.\n\nMail eco-leather@shop.example today.\n");
    EXPECT_EQ(editor.remarks().size(), 1U);
}

TEST(ActionsTest, OffersToLeaveOutWhatNoWordingMends) {
    Editor unproven("untitled:a.txt", "A waterproof tote in canvas.\n");
    EXPECT_EQ(unproven.actions("waterproof"), (Texts{"Leave out 'waterproof'"}));
    EXPECT_EQ(unproven.after("waterproof", "Leave out"), "A tote in canvas.\n");
    EXPECT_EQ(unproven.actions("waterproof", "source.fixAll.grainside"), Texts{});

    // As `reword` takes it by itself, it goes with all others.
    Editor vague("untitled:a.txt", "An eco-friendly tote in cotton.\n");
    EXPECT_EQ(vague.actions("eco-friendly"), (Texts{"Leave out 'eco-friendly'"}));
    EXPECT_EQ(vague.after("eco", "Take every", "source.fixAll.grainside"), "A tote in cotton.\n");

    Editor against("untitled:a.txt", "A vegan-friendly leather tote.\n");
    EXPECT_EQ(against.after("vegan", "Leave out"), "A leather tote.\n");

    // The phrase does not stand without it.
    Editor alone("untitled:a.txt", "Leather tote. Waterproof.\n");
    EXPECT_EQ(alone.actions("Waterproof"), Texts{});
}

TEST(ActionsTest, PrefersNoSideOfADisagreement) {
    Editor editor("untitled:a.txt", "Tote in vegan leather. Lining of cotton. Soft calf leather.\n");
    EXPECT_EQ(editor.actions("vegan"), (Texts{"*Write 'imitation leather' instead of 'vegan leather'"}));
    EXPECT_EQ(editor.actions("calf"), (Texts{"Write 'Imitation leather' instead of 'Soft calf leather'"}));
    EXPECT_EQ(editor.after("vegan", "Take every", "source.fixAll.grainside"),
              "Tote in imitation leather. Lining of cotton. Soft calf leather.\n");
}

// Words side by side are one statement: what the plastic says of the grain class is no choice between two.
TEST(ActionsTest, TakesWordsThatStandSideBySideTogether) {
    Editor editor("untitled:a.txt", "Upper: Full grain PU leather\n");
    EXPECT_EQ(editor.after("Full", "Take every", "source.fixAll.grainside"),
              "Upper: imitation leather (polyurethane)\n");
}

// What is seen of a page does not know where it stands: the words are in its head, in its links and in its text.
TEST(ActionsTest, WritesIntoTheTextOfAPage) {
    const std::string head =
        "<html><head><title>Genuine vegan leather tote</title>\n"
        "<meta name=\"description\" content=\"Genuine vegan leather tote\">\n</head><body>"
        "<nav><a href=\"/vegan-leather\">Vegan leather</a></nav>\n<main>";
    Editor page("untitled:a.html", head +
                                       "<h1>Genuine vegan leather tote</h1>\n<p>It's our finest. Strap in\n   "
                                       "PU&nbsp;leather, <b>eco</b> leather lining &amp; a solid gold-plated "
                                       "buckle.</p></main></body></html>");
    EXPECT_EQ(page.remarks().size(), 4U);
    EXPECT_EQ(page.actions("Genuine vegan leather tote</title>"), Texts{});
    EXPECT_EQ(page.actions("vegan leather tote</h1>"),
              (Texts{"*Write 'Imitation leather' instead of 'Genuine vegan leather'"}));
    EXPECT_EQ(page.actions("<b>eco</b> leather"), Texts{});
    EXPECT_EQ(page.after("<h1>", "Take every", "source.fixAll.grainside"),
              head +
                  "<h1>Imitation leather tote</h1>\n<p>It's our finest. Strap in\n   "
                  "imitation leather (polyurethane), <b>eco</b> leather lining &amp; a gold-plated "
                  "buckle.</p></main></body></html>");
}

TEST(ActionsTest, WritesIntoAttributesOfAPageThatAreRead) {
    const std::string before = "<div itemscope itemtype=\"https://schema.org/Product\"><h1 itemprop=\"name\">";
    Editor page("untitled:a.html",
                before +
                    "Vegan leather belt</h1><meta itemprop=\"material\" content=\"vegan leather &amp; "
                    "brass\"></div><nav>Vegan leather belt</nav>");
    EXPECT_EQ(page.remarks(), (Texts{"vegan-called-leather: Vegan leather", "vegan-called-leather: vegan leather"}));
    EXPECT_EQ(page.after("<h1", "Take every", "source.fixAll.grainside"),
              before +
                  "Imitation leather belt</h1><meta itemprop=\"material\" content=\"imitation leather &amp; "
                  "brass\"></div><nav>Vegan leather belt</nav>");
}

TEST(ActionsTest, WritesWhereThePageIsReadAndNotWhereItSaysTheSame) {
    const std::string behind = "</p></div>";
    Editor page(
        "untitled:a.html",
        "<div itemscope itemtype=\"https://schema.org/Product\"><h1 itemprop=\"name\">Boots</h1><meta "
        "itemprop=\"description\" content=\"Ankle boots in vegan leather &amp; cotton.\"><p>Ankle boots in vegan "
        "leather &amp; cotton." +
            behind);
    EXPECT_EQ(
        page.after("Boots", "Take every", "source.fixAll.grainside"),
        "<div itemscope itemtype=\"https://schema.org/Product\"><h1 itemprop=\"name\">Boots</h1><meta "
        "itemprop=\"description\" content=\"Ankle boots in imitation leather &amp; cotton.\"><p>Ankle boots in vegan "
        "leather &amp; cotton." +
            behind);
}

TEST(ActionsTest, WritesTheNameThatWasMeant) {
    Editor editor("untitled:a.yaml",
                  "sample: {what: a tote}\nparts:\n  body:\n    readings:\n      - {method: loope, outcome: sewn}\n");
    EXPECT_EQ(editor.actions("loope"), (Texts{"*Write 'loupe' instead of 'loope'"}));
    EXPECT_NE(editor.after("loope", "Write").find("{method: loupe, outcome"), std::string::npos);
    Editor in_quotes("untitled:a.yaml",
                     "smaple: 1\nsample: {what: a tote}\nparts: {body: {readings: [{method: \"loope\"}]}}\n");
    EXPECT_NE(in_quotes.after("loope", "Write").find("{method: \"loupe\"}"), std::string::npos);
    EXPECT_TRUE(in_quotes.after("smaple", "Write").starts_with("sample: 1\n"));
}

TEST(RangesTest, HoldWordsInPiecesOfAPage) {
    Editor one_line("untitled:a.html",
                    "<html><body><h1>Tote</h1><p>Genuine <b>vegan</b> leather tote.</p><p>Soft.</p></body></html>");
    const Texts remarks = one_line.remarks();
    ASSERT_EQ(remarks.size(), 1U);
    EXPECT_TRUE(remarks[0].ends_with(": Genuine <b>vegan</b> leather")) << remarks[0];
    Editor lines(
        "untitled:a.html",
        "<html>\n<body>\n<h1>Tote</h1><p>PU&nbsp;is soft.</p>\n<p>Lining:\n <b>PU</b> leather</p></body></html>");
    const Texts others = lines.remarks();
    ASSERT_EQ(others.size(), 1U);
    EXPECT_TRUE(others[0].ends_with(": <b>PU</b> leather") || others[0].ends_with(": PU</b> leather")) << others[0];
}

TEST(RangesTest, OfAnUnknownSourceIsItsName) {
    Editor editor("file:///b/wording/new.yaml",
                  "- rule: x\n  title: T\n  grade: vague\n  when: {says: leather}\n  because: B.\n  remedy: R.\n"
                  "  sources: [own-reading, own-readinq]\n  proof:\n    flags: [leather]\n    passes: [cotton]\n");
    const Texts remarks = editor.remarks();
    EXPECT_NE(std::find(remarks.begin(), remarks.end(), "unknown-source: own-readinq"), remarks.end())
        << testing::PrintToString(remarks);
}

TEST(NamesTest, AreOfferedInBracketsAndAtTheBeginning) {
    const auto has = [](const Texts& names, std::string_view name) {
        return std::count(names.begin(), names.end(), name);
    };
    const auto names = [](const std::string& reading) {
        return Editor("untitled:a.yaml", "sample: {what: a tote}\nparts:\n  body:\n    readings:\n" + reading).names();
    };
    EXPECT_EQ(has(names("      - {method: ^\n"), "loupe"), 1);
    EXPECT_EQ(has(names("      - {method: lo^\n      - {method: bend, outcome: fine-folds}\n  strap: {}\n"), "loupe"),
              1);
    EXPECT_EQ(has(names("      - {^}\n"), "method"), 1);
    EXPECT_EQ(has(names("      - {^\n"), "method"), 1);
    const Texts behind_method = names("      - {method: loupe, ^\n");
    EXPECT_EQ(has(behind_method, "method"), 0);
    EXPECT_EQ(has(behind_method, "outcome"), 1);
    const Texts of_gauge = names("      - {method: thickness-gauge, ^}\n");
    EXPECT_EQ(has(of_gauge, "outcome"), 0);
    EXPECT_EQ(has(of_gauge, "thickness"), 1);
    EXPECT_EQ(has(Editor("untitled:a.yaml", "^").names(), "sample"), 1);
    EXPECT_EQ(has(Editor("untitled:a.yaml", "# new\nsam^").names(), "sample"), 1);
    EXPECT_EQ(has(Editor("untitled:a.yaml", "sample: {what: a tote}\n^").names(), "sample"), 0);
    EXPECT_EQ(has(Editor("untitled:a.yaml", "services: {}\n^").names(), "sample"), 0);
}

}  // namespace
}  // namespace grainside::tools::edit
