#include "cmd_desk.h"

#include <poll.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <chrono>
#include <memory>
#include <optional>
#include <system_error>
#include <thread>

#include "desk/desk_books.h"
#include "desk/desk_folder.h"
#include "desk/desk_guard.h"
#include "desk/desk_keys.h"
#include "desk/desk_routes.h"
#include "desk/desk_server.h"
#include "diagnostics.h"
#include "document/inert_text.h"
#include "finish.h"
#include "interrupt.h"
#include "load_book.h"
#include "output.h"

namespace grainside::tools {
namespace {

constexpr const char* kDeskFooter =
    "Examples:\n"
    "  grainside desk\n"
    "  grainside desk dossiers\n"
    "  grainside desk --port 8477 --market eu dossiers\n\n"
    "Open the address that it prints: it opens the desk once, in one browser. Enter\n"
    "prints another one, Ctrl-C ends the desk.\n\n"
    "Exit status:\n"
    "  0  ended by Ctrl-C or by the system\n"
    "  2  an error: a wrong call, a folder that cannot be read, a port that is taken";

constexpr int kMostPort = 65535;

std::string address_line(int port, desk::DeskKeys& keys) {
    return "http://127.0.0.1:" + std::to_string(port) + "/?key=" + keys.new_key() + '\n';
}

// A program in the background that reads from the terminal is stopped by the system (SIGTTIN).
bool may_read_input() {
    return ::isatty(STDIN_FILENO) == 0 || ::tcgetpgrp(STDIN_FILENO) == ::getpgrp();
}

// Waits for Enter and for the end. Whatever ends it, the server is told to stop.
class Attendant {
public:
    Attendant(Interrupt& interrupt, desk::DeskServer& server, Output& output, int port, desk::DeskKeys& keys)
        : interrupt_(interrupt), server_(server), output_(output), port_(port), keys_(keys), thread_([this] {
              run();
          }) {}
    Attendant(const Attendant&) = delete;
    Attendant& operator=(const Attendant&) = delete;
    ~Attendant() {
        served_ = true;
        interrupt_.ask_to_stop();
        thread_.join();
    }

private:
    void run() {
        bool reads = true;
        while (!interrupt_.stop()) {
            std::array<pollfd, 2> asked{pollfd{interrupt_.wake_descriptor(), POLLIN, 0},
                                        pollfd{STDIN_FILENO, POLLIN, 0}};
            const bool waits_for_input = reads && may_read_input();
            const int seen = ::poll(asked.data(), waits_for_input ? 2 : 1, reads && !waits_for_input ? 1000 : -1);
            if (seen < 0 && errno != EINTR) break;
            if (waits_for_input && seen > 0 && asked[1].revents != 0) reads = read_line();
        }
        // A server that has not begun yet does not hear the first call.
        while (!served_) {
            server_.stop();
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
        }
    }

    // False at the end of the input.
    bool read_line() {
        std::array<char, 256> typed{};
        const ssize_t count = ::read(STDIN_FILENO, typed.data(), typed.size());
        if (count <= 0) return false;
        return output_.write(address_line(port_, keys_));
    }

    Interrupt& interrupt_;
    desk::DeskServer& server_;
    Output& output_;
    int port_;
    desk::DeskKeys& keys_;
    std::atomic<bool> served_{false};
    std::thread thread_;  // last: it uses the others
};

std::unique_ptr<desk::DeskFolder> open_folder(const std::string& path, Diagnostics& diagnostics) {
    try {
        return std::make_unique<desk::DeskFolder>(path);
    } catch (const std::system_error& fault) {
        diagnostics.error("the folder '" + document::inert_text(path) + "' cannot be read: " + fault.code().message(),
                          "name the folder in which the dossiers are");
        return nullptr;
    }
}

}  // namespace

void add_desk(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<DeskCall>();
    CLI::App* command = app.add_subcommand("desk", "Serve a local page to check words and work on dossiers");
    command->add_option("folder", call->folder, "The folder of the dossiers (default: the one you are in)")
        ->type_name("FOLDER");
    command->add_option("--port", call->port, "Take this port of 127.0.0.1 (default: one that is free)")
        ->type_name("N")
        ->check(CLI::Validator(
            [](const std::string& text) -> std::string {
                int port = 0;
                const bool sound = CLI::detail::lexical_cast(text, port) && port >= 1 && port <= kMostPort;
                return sound ? std::string() : "'" + text + "' is no port, a number from 1 to 65535";
            },
            ""));
    add_judged_for(*command, call->judged_for, "that on which the listing was captured, else today");
    add_rules_folder(*command, call->rules_folder);
    command->footer(kDeskFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_desk(*call); }; });
}

int run_desk(const DeskCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::unique_ptr<desk::DeskFolder> folder = open_folder(call.folder, diagnostics);
    const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
    if (!folder || !book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.rules_folder, diagnostics);
    const CheckOptions asked = check_options_of(call.judged_for, *book, diagnostics);
    if (!evidence || diagnostics.any_errors()) return finish(output, diagnostics, false);

    const desk::DeskBooks books{*book, *evidence, asked.markets, asked.on};
    desk::DeskRoutes routes(books, *folder);
    desk::DeskKeys keys;
    std::optional<desk::DeskGuard> guard;
    desk::DeskServer server({[&guard](const desk::HttpRequest& head) {
                                 std::optional<desk::HttpAnswer> refused = guard->check(head);
                                 if (refused) desk::add_safe_headers(*refused);
                                 return refused;
                             },
                             [&routes](const desk::HttpRequest& request) { return routes.answer(request); }});
    const std::optional<int> port = server.bind(call.port);
    if (!port) {
        diagnostics.error(call.port == 0 ? "no port of 127.0.0.1 can be had"
                                         : "port " + std::to_string(call.port) +
                                               " cannot be had: " + std::generic_category().message(errno),
                          call.port == 0 ? "" : "another desk may have it: end that one, or leave out --port");
        return finish(output, diagnostics, false);
    }
    guard.emplace(keys, *port);
    Interrupt interrupt;
    if (output.write(address_line(*port, keys) + "serving the dossiers in '" + document::inert_text(folder->name()) +
                     "' until Ctrl-C; Enter prints another address\n")) {
        const Attendant attendant(interrupt, server, output, *port, keys);
        server.serve();
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
