#include "completion_facts.h"

#include <algorithm>
#include <set>
#include <sstream>
#include <string_view>
#include <utility>

namespace grainside::tools {
namespace {

constexpr std::string_view kPlainCharacters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.";

// The words that an option takes: one_of gives them as its validator's name.
std::vector<std::string> words_of_option(CLI::Option& option) {
    std::vector<std::string> words;
    try {
        std::istringstream names(option.get_validator(0)->get_name());
        for (std::string word; names >> word;) {
            // A bar or a semicolon would be the shell's own.
            if (word.find_first_not_of(kPlainCharacters) != std::string::npos) return {};
            words.push_back(word);
        }
    } catch (const CLI::OptionNotFound&) {
        // It takes any text.
    }
    return words;
}

std::vector<std::string> words_of_book(const RuleBook& book, std::string_view type) {
    std::vector<std::string> words;
    if (type == "RULE") {
        for (const RuleInfo& rule : book.rules()) words.push_back(rule.id);
    } else if (type == "SOURCE") {
        for (const SourceInfo& source : book.sources()) words.push_back(source.id);
    } else if (type == "GROUP") {
        std::set<std::string> groups;
        for (const RuleInfo& rule : book.rules()) groups.insert(rule.group);
        words.assign(groups.begin(), groups.end());
    } else if (type.starts_with("M[,")) {
        words = book.markets();
    }
    return words;
}

// Up to the first mark behind which more is told.
std::string short_text(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    for (const std::string_view end : {". ", "; ", ": ", " ("}) text.resize(std::min(text.size(), text.find(end)));
    return text;
}

CompletedArgument argument_of(CLI::Option& option, const RuleBook& book) {
    CompletedArgument argument;
    for (const std::string& name : option.get_snames()) argument.names.push_back("-" + name);
    for (const std::string& name : option.get_lnames()) argument.names.push_back("--" + name);
    argument.what = short_text(option.get_description());
    const std::string type = option.get_type_name();
    if (option.get_items_expected_max() == 0) return argument;
    argument.words = words_of_option(option);
    if (argument.words.empty()) argument.words = words_of_book(book, type);
    if (!argument.words.empty()) {
        argument.value = type.find("[,") == std::string::npos ? CompletedValue::words : CompletedValue::words_list;
    } else if (type == "DIR") {
        argument.value = CompletedValue::folders;
    } else if (type == "FILE" || type == "DOSSIER") {
        argument.value = CompletedValue::files;
    } else {
        argument.value = CompletedValue::anything;
    }
    return argument;
}

void add_completed(CLI::App& app, const std::vector<std::string>& path, const RuleBook& book,
                   std::vector<CompletedCommand>& all) {
    CompletedCommand command;
    command.path = path;
    command.what = short_text(app.get_description());
    for (CLI::Option* option : app.get_options()) {
        // What has no group is not shown in the help either.
        if (option->get_group().empty()) continue;
        if (option->get_positional()) {
            command.others = argument_of(*option, book);
        } else {
            command.options.push_back(argument_of(*option, book));
        }
    }
    for (const CLI::App* below : app.get_subcommands(nullptr)) command.commands.push_back(below->get_name());
    all.push_back(std::move(command));
    for (CLI::App* below : app.get_subcommands(nullptr)) {
        std::vector<std::string> longer = path;
        longer.push_back(below->get_name());
        add_completed(*below, longer, book, all);
    }
}

}  // namespace

std::vector<CompletedCommand> completed_commands(CLI::App& app, const RuleBook& book) {
    std::vector<CompletedCommand> all;
    add_completed(app, {}, book, all);
    return all;
}

}  // namespace grainside::tools
