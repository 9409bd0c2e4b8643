// The server's parts without a process: frames, messages, documents, names to choose from. Sessions of a client that is
// not ours: drive_server.mjs. What is right comes from the Language Server Protocol 3.17 and JSON-RPC 2.0, sections
// named beside.
#include "edit/session.h"

#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "edit/completion.h"
#include "edit/concession_entry.h"
#include "edit/document_kind.h"
#include "edit/file_uri.h"
#include "edit/message_framing.h"

namespace grainside::tools::edit {
namespace {

std::string framed(std::string_view content) {
    std::string out;
    append_frame(out, content);
    return out;
}

// The contents of all frames, faults as "fault".
std::vector<std::string> frames_of(std::string_view stream, std::size_t piece) {
    FrameReader reader;
    std::vector<std::string> found;
    for (std::size_t at = 0; at < stream.size(); at += piece) {
        reader.add(stream.substr(at, piece));
        while (auto frame = reader.next()) found.push_back(frame->fault.empty() ? frame->content : "fault");
    }
    return found;
}

using Contents = std::vector<std::string>;

struct FrameRow {
    std::string_view name;
    std::string stream;
    Contents want;
};

// 'Base Protocol', 'Header Part'.
TEST(FrameReaderTest, FindsMessagesInPiecesOfEverySize) {
    const FrameRow rows[] = {
        {"two", framed("{}") + framed("[1]"), {"{}", "[1]"}},
        {"empty", framed("") + framed("x"), {"", "x"}},
        {"names_in_capitals", "CONTENT-LENGTH:2\r\nX-Other: y\r\n\r\n{}", {"{}"}},
        {"type", "Content-Type: application/vscode-jsonrpc; charset=utf8\r\nContent-Length: 2\r\n\r\n{}", {"{}"}},
        {"other_encoding",
         "Content-Type: a; charset=utf-16\r\nContent-Length: 2\r\n\r\n{}" + framed("a"),
         {"fault", "{}", "a"}},
        {"negative", "Content-Length: -1\r\n\r\n" + framed("a"), {"fault", "a"}},
        {"beyond_64_bits", "Content-Length: 99999999999999999999999\r\n\r\n" + framed("a"), {"fault", "a"}},
        {"huge", "Content-Length: 1073741824\r\n\r\n{\"x\":1}" + framed("a"), {"fault", "a"}},
        {"no_length", "X: y\r\n\r\n" + framed("a"), {"fault", "a"}},
        {"garbage", "\r\n\r\n\xFF garbage" + framed("a"), {"fault", "a"}},
        {"too_short", "Content-Length: 2\r\n\r\n{\"a\":1}\r\n\r\n" + framed("b"), {"{\"", "fault", "b"}},
        {"name_in_text", "Content-Length: x\r\n\r\n{\"Content-Length: 5\":1}" + framed("b"), {"fault", "b"}},
    };
    for (const FrameRow& row : rows) {
        for (const std::size_t piece : {std::size_t{1}, std::size_t{2}, std::size_t{7}, std::size_t{4096}}) {
            EXPECT_EQ(frames_of(row.stream, piece), row.want) << row.name << " in pieces of " << piece;
        }
    }
}

TEST(FrameReaderTest, GivesUpAHeaderWithoutEnd) {
    std::string stream = "Content-Length: 1\r\n" + std::string(kMostHeaderBytes, 'x') + framed("a");
    EXPECT_EQ(frames_of(stream, 1000), (Contents{"fault", "a"}));
}

// JSON-RPC 2.0, sections 4 and 5.1.
TEST(MessageReaderTest, TellsRequestsNotificationsAndFaultsApart) {
    struct Row {
        std::string content;
        Message::Kind kind;
        std::string_view id;
        ErrorCode error = ErrorCode::parse_error;
    };
    const Row rows[] = {
        {R"({"jsonrpc":"2.0","id":7,"method":"a"})", Message::Kind::request, "7"},
        {R"({"jsonrpc":"2.0","id":"x\"y","method":"a"})", Message::Kind::request, R"("x\"y")"},
        {R"({"jsonrpc":"2.0","method":"a"})", Message::Kind::notification, "null"},
        {R"({"jsonrpc":"2.0","id":7,"result":null})", Message::Kind::answer, "7"},
        {R"({"jsonrpc":"2.0","id":7})", Message::Kind::broken, "7", ErrorCode::invalid_request},
        {R"({"jsonrpc":"2.0","id":null,"method":"a"})", Message::Kind::broken, "null", ErrorCode::invalid_request},
        {R"({"jsonrpc":"2.0","id":7,"method":"a","params":1})", Message::Kind::broken, "7", ErrorCode::invalid_request},
        {R"({"id":7,"method":"a"})", Message::Kind::broken, "7", ErrorCode::invalid_request},
        {"[]", Message::Kind::broken, "null", ErrorCode::invalid_request},
        {"{", Message::Kind::broken, "null", ErrorCode::parse_error},
        {"", Message::Kind::broken, "null", ErrorCode::parse_error},
        {"\"\xFF\"", Message::Kind::broken, "null", ErrorCode::parse_error},
        {std::string(5000, '[') + std::string(5000, ']'), Message::Kind::broken, "null", ErrorCode::parse_error},
    };
    MessageReader reader;
    for (Row row : rows) {
        const std::string shown = row.content.substr(0, 60);
        const Message message = reader.read(row.content);
        EXPECT_EQ(message.kind, row.kind) << shown;
        EXPECT_EQ(message.id, row.id) << shown;
        EXPECT_EQ(message.error, row.error) << shown;
    }
}

TEST(MessageReaderTest, PutsAReplacementForHalfAPair) {
    MessageReader reader;
    std::string content =
        R"({"jsonrpc":"2.0","method":"m","params":{"t":"\ud83d\udc5c \ud83d x\udc5c\\ud83d \uD800"}})";
    const Message message = reader.read(content);
    EXPECT_EQ(text_of(member(message.params, "t")), "\xF0\x9F\x91\x9C \xEF\xBF\xBD x\xEF\xBF\xBD\\ud83d \xEF\xBF\xBD");
}

// RFC 8089 and RFC 3986, section 2.1.
TEST(FileUriTest, NamesPathsBothWays) {
    EXPECT_EQ(path_of_uri("file:///a%20b/%C3%A9.txt"), "/a b/\xC3\xA9.txt");
    EXPECT_EQ(path_of_uri("file://localhost/a"), "/a");
    for (const std::string_view wrong :
         {"http://x/a", "file://other/a", "file:a", "file:///a%0", "file:///a%00b", ""}) {
        EXPECT_EQ(path_of_uri(wrong), "") << wrong;
    }
    EXPECT_EQ(uri_of_path("/a b/\xC3\xA9#.txt"), "file:///a%20b/%C3%A9%23.txt");
    EXPECT_EQ(name_in_uri("untitled:Untitled-1"), "Untitled-1");
}

TEST(DocumentKindTest, GoesByPlaceNameLanguageAndKeys) {
    const auto kind = [](std::string_view uri, std::string_view language, std::string_view text) {
        return recognise(uri, language, text, "/book").kind;
    };
    EXPECT_EQ(kind("file:///x/a.txt", "plaintext", ""), DocumentKind::listing);
    EXPECT_EQ(recognise("file:///x/a.jsonl", "plaintext", "", "").format, InputFormat::json_lines);
    EXPECT_EQ(recognise("untitled:1", "html", "", "").format, InputFormat::html);
    EXPECT_EQ(kind("file:///x/a.cpp", "cpp", ""), DocumentKind::nothing);
    EXPECT_EQ(kind("file:///x/a.yaml", "yaml", "sample: {what: x}\nlisting: [\n"), DocumentKind::dossier);
    EXPECT_EQ(kind("file:///x/a.yaml", "yaml", "- rule: x\n  owner: y\n"), DocumentKind::concessions);
    EXPECT_EQ(kind("file:///x/a.yaml", "yaml", "services: {}\n"), DocumentKind::nothing);
    EXPECT_EQ(recognise("file:///book/markets/it.yaml", "yaml", "", "/book").book_file, "markets/it.yaml");
    EXPECT_EQ(recognise("file:///b/wording/new.yaml", "yaml", "- rule: x\n  when: {says: leather}\n", "").book_file,
              "wording/new.yaml");
    EXPECT_EQ(kind("file:///bookshop/a.yaml", "yaml", "x: y\n"), DocumentKind::nothing);
}

TEST(ConcessionEntryTest, QuotesWhatPlainYamlWouldReadOtherwise) {
    EXPECT_TRUE(concession_entry({"r", "", "vegan leather"}, "").starts_with("- rule: r\n  words: vegan leather\n"));
    EXPECT_TRUE(concession_entry({"r", "007", "a: \"b\"\n"}, "- x")
                    .starts_with("\n- rule: r\n  listing: \"007\"\n  words: \"a: \\\"b\\\"\\n\"\n"));
}

TEST(CompletionTest, AsksTheReaderForKeysAndValues) {
    // A reader that knows one key where a key stands, and one value.
    const NamesInPlace reader = [](const std::string& text, const std::string& word) {
        if (text == "- rule: x\n  " + word + ": x\n") return std::vector<std::string>{"grade"};
        if (text == "- rule: " + word + "\n") return std::vector<std::string>{"vague"};
        return std::vector<std::string>();
    };
    const Completion key = complete("- rule: x\n  gra\n", 14, reader);
    EXPECT_EQ(key.names, (std::vector<std::string>{"grade"}));
    EXPECT_TRUE(key.keys && key.needs_colon);
    EXPECT_EQ(key.span, (TextSpan{12, 15}));
    const Completion value = complete("- rule: va\n", 10, reader);
    EXPECT_EQ(value.names, (std::vector<std::string>{"vague"}));
    EXPECT_FALSE(value.keys);
}

// What a session says to messages that come together; without 'initialize' it needs no rule book.
TEST(SessionTest, AnswersEachRequestOnce) {
    Session session({}, [](std::string_view) {});
    for (const std::string_view content :
         {R"({"jsonrpc":"2.0","id":1,"method":"textDocument/hover"})", R"({"jsonrpc":"2.0","id":"2","method":"x"})",
          R"({"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":"2"}})", "{",
          R"({"jsonrpc":"2.0","method":"exit"})"}) {
        session.receive({std::string(content), {}});
    }
    std::string out;
    while (session.any_waiting() && !session.exit_status()) session.handle_next(out);
    const std::vector<std::string> answers = frames_of(out, out.size());
    ASSERT_EQ(answers.size(), 3U) << out;
    EXPECT_NE(answers[0].find(R"("id":1,"error":{"code":-32002)"), std::string::npos) << answers[0];
    EXPECT_NE(answers[1].find(R"("id":"2","error":{"code":-32800)"), std::string::npos) << answers[1];
    EXPECT_NE(answers[2].find(R"("id":null,"error":{"code":-32700)"), std::string::npos) << answers[2];
    EXPECT_EQ(session.exit_status(), 1);
}

}  // namespace
}  // namespace grainside::tools::edit
