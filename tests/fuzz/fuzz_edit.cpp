// Streams of messages to the language server: whatever comes, each output is a frame with JSON in it, each request is
// answered once, and positions lie within the text.
//
// An input is a stream, cut into pieces of as many bytes as its first byte says. Most begin with a handshake, since
// little happens without one; one that begins with '-' does not.
#include <simdjson.h>

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "edit/message_framing.h"
#include "edit/session.h"
#include "require.h"

namespace {

using namespace grainside::tools::edit;
using grainside::fuzz::require;

// A document of this size reaches every kind; longer ones only cost.
constexpr std::size_t kMostBytes = 4096;

constexpr std::string_view kHandshake =
    R"({"jsonrpc":"2.0","id":"first","method":"initialize","params":{"capabilities":{"textDocument":{)"
    R"("codeAction":{"codeActionLiteralSupport":{}},"publishDiagnostics":{"relatedInformation":true}}}}})";

// How many answers are owed to a message, by a reading of its own.
std::size_t answers_owed(const Frame& frame) {
    if (!frame.fault.empty()) return 1;
    MessageReader reader;
    std::string content = frame.content;
    const Message message = reader.read(content);
    return message.kind == Message::Kind::request || message.kind == Message::Kind::broken ? 1 : 0;
}

// Frames of the output that answer something.
std::size_t count_answers(std::string_view out) {
    FrameReader frames;
    frames.add(out);
    simdjson::dom::parser parser;
    std::size_t answers = 0;
    while (const auto frame = frames.next()) {
        require(frame->fault.empty());
        simdjson::dom::object object;
        require(parser.parse(frame->content).get_object().get(object) == simdjson::SUCCESS);
        const bool is_answer = object.at_key("id").error() == simdjson::SUCCESS;
        const bool has_result = object.at_key("result").error() == simdjson::SUCCESS;
        const bool has_error = object.at_key("error").error() == simdjson::SUCCESS;
        require(is_answer == (has_result != has_error));
        if (is_answer) ++answers;
    }
    require(frames.between_messages());
    return answers;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size < 2 || size > kMostBytes) return 0;
    const std::string_view stream(reinterpret_cast<const char*>(data) + 1, size - 1);
    const std::size_t piece = data[0] + std::size_t{1};
    Session session({}, [](std::string_view) {});
    std::size_t owed = 0;
    if (stream.front() != '-') {
        session.receive({std::string(kHandshake), {}});
        owed = 1;
    }
    FrameReader frames;
    std::string out;
    for (std::size_t at = 0; at < stream.size() && !session.exit_status(); at += piece) {
        frames.add(stream.substr(at, piece));
        while (auto frame = frames.next()) {
            owed += answers_owed(*frame);
            session.receive(std::move(*frame));
        }
        while (session.any_waiting() && !session.exit_status()) session.handle_next(out);
        // What waits behind 'exit' is not answered.
        if (!session.any_waiting()) session.publish(out);
    }
    const std::size_t answers = count_answers(out);
    require(session.exit_status() ? answers <= owed : answers == owed);
    return 0;
}
