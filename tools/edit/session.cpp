#include "edit/session.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "document/inert_text.h"
#include "edit/answers.h"
#include "edit/file_uri.h"
#include "grainside/version.h"

namespace grainside::tools::edit {
namespace {

constexpr std::string_view kCancel = "$/cancelRequest";
// 'TextDocumentSyncKind.Incremental'.
constexpr std::uint64_t kIncremental = 2;

// The folder that listings, dossiers and concessions lie in: the first workspace folder, else 'rootUri'.
std::string root_of(const std::optional<Json>& params) {
    std::string root;
    if (const auto folders = list_of(member(params, "workspaceFolders"))) {
        for (const Json folder : *folders) {
            if (root.empty()) root = path_of_uri(text_of(member(folder, "uri")).value_or(""));
        }
    }
    if (root.empty()) root = path_of_uri(text_of(member(params, "rootUri")).value_or(""));
    while (root.size() > 1 && root.ends_with('/')) root.pop_back();
    return root;
}

std::string abilities_of_server(const ClientAbilities& client) {
    std::string out;
    report::JsonWriter json(out);
    json.begin_object();
    json.key("capabilities");
    json.begin_object();
    json.member("positionEncoding", std::string_view(client.encoding == PositionEncoding::utf8 ? "utf-8" : "utf-16"));
    json.key("textDocumentSync");
    json.begin_object();
    json.key("openClose");
    json.value_bool(true);
    json.member("change", kIncremental);
    json.key("save");
    json.value_bool(true);
    json.end_object();
    json.key("hoverProvider");
    json.value_bool(true);
    json.key("completionProvider");
    json.begin_object();
    json.key("triggerCharacters");
    json.begin_array();
    for (const std::string_view sign : {" ", "[", "{"}) json.value(sign);
    json.end_array();
    json.end_object();
    json.key("codeActionProvider");
    json.begin_object();
    json.key("codeActionKinds");
    json.begin_array();
    for (const std::string_view kind : {"quickfix", "source.fixAll.grainside"}) json.value(kind);
    json.end_array();
    json.end_object();
    json.end_object();
    json.key("serverInfo");
    json.begin_object();
    json.member("name", std::string_view("grainside"));
    json.member("version", kVersion);
    json.end_object();
    json.end_object();
    return out;
}

std::string_view uri_of(const Message& message) {
    return text_of(member_at(message.params, {"textDocument", "uri"})).value_or("");
}

}  // namespace

void Session::receive(Frame frame) {
    // Few messages are cancellations, and reading each twice would cost.
    constexpr std::size_t kMostCancelBytes = 1024;
    if (!waiting_.empty() && frame.fault.empty() && frame.content.size() <= kMostCancelBytes &&
        frame.content.find(kCancel) != std::string::npos) {
        std::string content = frame.content;
        const Message message = cancel_reader_.read(content);
        const auto id = member(message.params, "id");
        if (message.kind == Message::Kind::notification && message.method == kCancel && id) {
            cancelled_.insert(std::string(simdjson::minify(*id)));
            return;
        }
    }
    waiting_.push_back(std::move(frame));
}

void Session::handle_next(std::string& out) {
    Frame frame = std::move(waiting_.front());
    waiting_.pop_front();
    if (!frame.fault.empty()) {
        log_(document::inert_text(frame.fault));
        append_error(out, "null", ErrorCode::parse_error, frame.fault);
        return;
    }
    const Message message = reader_.read(frame.content);
    switch (message.kind) {
        case Message::Kind::broken:
            log_(document::inert_text(message.fault));
            append_error(out, message.id, message.error, message.fault);
            break;
        case Message::Kind::request:
            handle_request(message, out);
            break;
        case Message::Kind::notification:
            handle_notification(message);
            break;
        case Message::Kind::answer:
            break;
    }
    if (waiting_.empty()) cancelled_.clear();
}

void Session::handle_request(const Message& message, std::string& out) {
    if (const auto cancelled = cancelled_.find(message.id); cancelled != cancelled_.end()) {
        cancelled_.erase(cancelled);
        append_error(out, message.id, ErrorCode::request_cancelled, "cancelled");
    } else if (state_ == State::shut_down) {
        append_error(out, message.id, ErrorCode::invalid_request, "the session was shut down");
    } else if (message.method == "initialize") {
        initialize(message, out);
    } else if (state_ == State::new_born) {
        append_error(out, message.id, ErrorCode::server_not_initialized, "'initialize' comes first");
    } else if (message.method == "shutdown") {
        state_ = State::shut_down;
        append_result(out, message.id, "null");
    } else {
        answer_about_document(message, out);
    }
}

void Session::initialize(const Message& message, std::string& out) {
    if (state_ != State::new_born) {
        append_error(out, message.id, ErrorCode::invalid_request, "'initialize' comes once");
        return;
    }
    state_ = State::running;
    client_ = read_abilities(message.params);
    client_process_ = integer_of(member(message.params, "processId")).value_or(0);
    workspace_ = std::make_unique<Workspace>(options_, client_.encoding, root_of(message.params));
    for (const Issue& issue : workspace_->book_faults())
        log_(document::inert_text(issue.file + ':' + std::to_string(issue.line) + ": " + issue.message));
    append_result(out, message.id, abilities_of_server(client_));
}

void Session::answer_about_document(const Message& message, std::string& out) {
    const bool hover = message.method == "textDocument/hover";
    const bool completion = message.method == "textDocument/completion";
    const bool actions = message.method == "textDocument/codeAction";
    if (!hover && !completion && !actions) {
        append_error(out, message.id, ErrorCode::method_not_found, "no such method: " + message.method);
        return;
    }
    const OpenDocument* document = workspace_->find(uri_of(message));
    if (document == nullptr) {
        append_error(out, message.id, ErrorCode::invalid_params, "'textDocument' names no open document");
        return;
    }
    if (actions) {
        const auto range = document->places().read_range(member(message.params, "range"));
        if (!range) {
            append_error(out, message.id, ErrorCode::invalid_params, "'range' is no range");
            return;
        }
        append_result(out, message.id,
                      actions_at(*document, *range, member(message.params, "context"), *workspace_, client_));
        return;
    }
    const auto byte = document->places().read_position(member(message.params, "position"));
    if (!byte) {
        append_error(out, message.id, ErrorCode::invalid_params, "'position' is no position");
        return;
    }
    append_result(
        out, message.id,
        hover ? hover_at(*document, *byte, *workspace_, client_) : completion_at(*document, *byte, *workspace_));
}

void Session::handle_notification(const Message& message) {
    if (message.method == "exit") {
        exit_status_ = state_ == State::shut_down ? 0 : 1;
        return;
    }
    // Before 'initialize' and behind 'shutdown' the others are dropped. What begins with '$/' may be left alone.
    if (state_ != State::running) return;
    if (message.method == "textDocument/didOpen") {
        if (workspace_->open(member(message.params, "textDocument")) == nullptr)
            log_("didOpen: no document, or too many");
    } else if (message.method == "textDocument/didChange") {
        change(message);
    } else if (message.method == "textDocument/didClose") {
        if (workspace_->close(uri_of(message))) closed_.emplace_back(uri_of(message));
    } else if (message.method == "textDocument/didSave" || message.method == "workspace/didChangeWatchedFiles") {
        workspace_->files_changed();
    }
}

void Session::change(const Message& message) {
    OpenDocument* document = workspace_->find(uri_of(message));
    const auto changes = list_of(member(message.params, "contentChanges"));
    if (document == nullptr || !changes) {
        log_("didChange: no open document, or no changes");
        return;
    }
    const auto version = integer_of(member_at(message.params, {"textDocument", "version"}));
    if (!document->change(*changes, version.value_or(document->version() + 1))) {
        log_(document::inert_text("didChange: a change of " + document->uri() +
                                  " is none, and was left out with those behind it"));
    }
    workspace_->changed(document->uri());
}

void Session::publish(std::string& out) {
    if (!workspace_ || state_ != State::running) return;
    // What was closed and opened again is told below.
    for (const std::string& uri : std::exchange(closed_, {})) {
        if (workspace_->find(uri) != nullptr) continue;
        std::string params = R"({"uri":)";
        report::append_json_string(params, uri);
        append_notification(out, "textDocument/publishDiagnostics", params + R"(,"diagnostics":[]})");
    }
    for (const std::string& uri : workspace_->take_untold()) {
        const OpenDocument* document = workspace_->find(uri);
        if (document == nullptr) continue;
        append_notification(out, "textDocument/publishDiagnostics", diagnostics_of(*document, *workspace_, client_));
    }
}

}  // namespace grainside::tools::edit
