// One client's session, message by message (Language Server Protocol 3.17). Knows nothing of files or pipes: bytes of
// messages go in, frames come out.
//
// Whatever comes in, every request is answered exactly once, and nothing else ends the session than 'exit'. Not
// thread-safe.
#ifndef GRAINSIDE_TOOLS_EDIT_SESSION_H
#define GRAINSIDE_TOOLS_EDIT_SESSION_H

#include <cstdint>
#include <deque>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "edit/client_abilities.h"
#include "edit/json_rpc.h"
#include "edit/message_framing.h"
#include "edit/workspace.h"

namespace grainside::tools::edit {

class Session {
public:
    // What goes wrong without an answer; texts are inert and end without a line break.
    using Log = void (*)(std::string_view text);

    Session(WorkspaceOptions options, Log log) : options_(std::move(options)), log_(log) {}

    // Puts a message behind those that wait. A cancellation counts at once for what waits.
    void receive(Frame frame);
    bool any_waiting() const noexcept { return !waiting_.empty(); }
    // Handles the first that waits. REQUIRES: one waits, and the session has not ended.
    void handle_next(std::string& out);
    // Tells the client what is to be said of documents that changed. To be called where nothing waits, so that of many
    // changes only the last is checked.
    void publish(std::string& out);
    bool any_to_publish() const noexcept { return workspace_ && (!closed_.empty() || workspace_->any_untold()); }

    // Nothing before 'exit'; then 0 behind 'shutdown', else 1.
    std::optional<int> exit_status() const noexcept { return exit_status_; }
    bool is_shut_down() const noexcept { return state_ == State::shut_down; }
    // Of the client, as it said; 0: it did not.
    std::int64_t client_process() const noexcept { return client_process_; }

private:
    enum class State { new_born, running, shut_down };

    void handle_request(const Message& message, std::string& out);
    void handle_notification(const Message& message);
    void initialize(const Message& message, std::string& out);
    void answer_about_document(const Message& message, std::string& out);
    void change(const Message& message);

    WorkspaceOptions options_;
    Log log_;
    State state_ = State::new_born;
    ClientAbilities client_;
    std::unique_ptr<Workspace> workspace_;
    MessageReader reader_;
    MessageReader cancel_reader_;
    std::deque<Frame> waiting_;
    std::set<std::string, std::less<>> cancelled_;  // ids, as JSON, of what waits or never came
    std::vector<std::string> closed_;               // URIs of which nothing is said any more
    std::optional<int> exit_status_;
    std::int64_t client_process_ = 0;
};

}  // namespace grainside::tools::edit

#endif  // GRAINSIDE_TOOLS_EDIT_SESSION_H
