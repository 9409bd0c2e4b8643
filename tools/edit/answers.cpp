#include "edit/answers.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string_view>

#include "edit/known_name.h"
#include "report/json_writer.h"

namespace grainside::tools::edit {
namespace {

using report::JsonWriter;

// 'CompletionItemKind'.
constexpr std::uint64_t kPropertyKind = 10;
constexpr std::uint64_t kEnumMemberKind = 20;

void write_remark(JsonWriter& json, const Remark& remark, const OpenDocument& document, const ClientAbilities& client) {
    json.begin_object();
    json.key("range");
    document.places().write_range(json, remark.span);
    json.member("severity", static_cast<std::uint64_t>(remark.severity));
    json.optional_member("code", remark.code);
    json.member("source", std::string_view("grainside"));
    json.member("message", std::string_view(remark.message));
    if (client.related && !remark.related.empty()) {
        json.key("relatedInformation");
        json.begin_array();
        for (const RelatedPlace& place : remark.related) {
            json.begin_object();
            json.key("location");
            json.begin_object();
            json.member("uri", std::string_view(document.uri()));
            json.key("range");
            document.places().write_range(json, place.span);
            json.end_object();
            json.member("message", std::string_view(place.message));
            json.end_object();
        }
        json.end_array();
    }
    json.end_object();
}

// The name at `byte` in YAML: an outcome of the reading's method, else whatever the book knows by it.
std::optional<Told> told_at(const OpenDocument& document, std::size_t byte, TextSpan& span, Workspace& workspace) {
    const LoadedBook* book = workspace.book_as_edited();
    if (book == nullptr || !workspace.holds_names(document)) return std::nullopt;
    const std::string_view text = document.text();
    span = name_at(text, byte);
    const std::string_view name = text.substr(span.begin, span.end - span.begin);
    if (auto outcome = told_of_outcome(*book, method_before(text, byte), name)) return outcome;
    return told_of_name(*book, name);
}

}  // namespace

std::string diagnostics_of(const OpenDocument& document, Workspace& workspace, const ClientAbilities& client) {
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.member("uri", std::string_view(document.uri()));
    json.member("version", static_cast<double>(document.version()));
    json.key("diagnostics");
    json.begin_array();
    for (const Remark& remark : workspace.remarks(document)) write_remark(json, remark, document, client);
    json.end_array();
    json.end_object();
    return out;
}

std::string hover_at(const OpenDocument& document, std::size_t byte, Workspace& workspace,
                     const ClientAbilities& client) {
    std::string text;
    std::optional<TextSpan> shown;
    for (const Remark& remark : workspace.remarks(document)) {
        if (remark.told.heading.empty() || !remark.span.meets({byte, byte})) continue;
        if (!text.empty()) text += client.markdown ? "\n---\n\n" : "\n";
        text += remark.told.text(client.markdown);
        if (!shown) shown = remark.span;
    }
    TextSpan name;
    if (text.empty()) {
        if (const auto told = told_at(document, byte, name, workspace)) {
            text = told->text(client.markdown);
            shown = name;
        }
    }
    if (!shown) return "null";
    std::string out;
    JsonWriter json(out);
    json.begin_object();
    json.key("contents");
    json.begin_object();
    json.member("kind", std::string_view(client.markdown ? "markdown" : "plaintext"));
    json.member("value", std::string_view(text));
    json.end_object();
    json.key("range");
    document.places().write_range(json, *shown);
    json.end_object();
    return out;
}

std::string completion_at(const OpenDocument& document, std::size_t byte, Workspace& workspace) {
    const Completion completion = workspace.completion(document, byte);
    const LoadedBook* book = workspace.book_as_edited();
    std::string out;
    JsonWriter json(out);
    json.begin_array();
    for (const std::string& name : completion.names) {
        json.begin_object();
        json.member("label", std::string_view(name));
        json.member("kind", completion.keys ? kPropertyKind : kEnumMemberKind);
        if (book != nullptr && !completion.keys) {
            const std::string_view text = document.text();
            std::string detail = detail_of_name(*book, name);
            if (const auto outcome = told_of_outcome(*book, method_before(text, byte), name);
                outcome && !outcome->lines.empty()) {
                detail = outcome->lines.front().second;
            }
            json.optional_member("detail", detail);
        }
        json.key("textEdit");
        json.begin_object();
        json.key("range");
        document.places().write_range(json, completion.span);
        json.member("newText", std::string_view(completion.needs_colon ? name + ": " : name));
        json.end_object();
        json.end_object();
    }
    json.end_array();
    return out;
}

}  // namespace grainside::tools::edit
