// The proofs of the built-in book, one CTest case a rule.
//
//     rule_cases --ctest     writes an add_test line for each rule, for CTest to read
//     rule_cases --all       proves every rule in one process
//     rule_cases RULE        proves one rule: 0 = it holds, 1 = FAIL (a wrong finding) or no example, 2 = ERROR
#include <algorithm>
#include <cstddef>
#include <iostream>
#include <string>
#include <string_view>

#include "grainside/rule_book.h"
#include "verdict/proof.h"

namespace {

using grainside::ProofFault;
using grainside::ProofReport;
using grainside::RuleBook;
using grainside::RuleInfo;

// Ids are made of lower-case letters, digits and hyphens, so that they need no quoting; others are refused.
bool is_plain(std::string_view id) {
    return !id.empty() && id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos;
}

int list(const RuleBook& book, std::string_view program) {
    for (const RuleInfo& rule : book.rules()) {
        if (!is_plain(rule.id)) {
            std::cerr << "ERROR: '" << rule.id << "' is no id\n";
            return 2;
        }
        std::cout << "add_test([=[rule." << rule.id << "]=] [=[" << program << "]=] " << rule.id << ")\n";
    }
    return 0;
}

int run(const RuleBook& book, const std::string& id) {
    const RuleInfo* rule = book.find_rule(id);
    if (rule == nullptr) {
        std::cerr << "ERROR: there is no rule '" << id << "'\n";
        return 2;
    }
    if (rule->flags.empty() || rule->passes.empty()) {
        std::cout << "FAIL " << rule->file << ":" << rule->line << ": no text to "
                  << (rule->flags.empty() ? "flag" : "pass") << "\n";
        return 1;
    }
    const ProofReport report = grainside::prove(book, id);
    for (const ProofFault& fault : report.faults) {
        std::cout << "FAIL " << fault.file << ":" << fault.line << ": " << fault.text << "\n     " << fault.message
                  << "\n";
    }
    std::cout << id << ": " << report.examples << " examples, " << report.faults.size() << " FAIL\n";
    return report.rules == 1 && report.faults.empty() ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    const auto book = RuleBook::built_in();
    if (!book) {
        for (const grainside::Issue& issue : book.issues()) std::cerr << grainside::to_text(issue);
        return 2;
    }
    const std::string_view argument = argc == 2 ? argv[1] : "";
    if (argument == "--ctest") return list(book.value(), argv[0]);
    if (argument == "--all") {
        int worst = 0;
        for (const RuleInfo& rule : book.value().rules()) worst = std::max(worst, run(book.value(), rule.id));
        return worst;
    }
    if (!argument.empty()) return run(book.value(), std::string(argument));
    std::cerr << "usage: rule_cases --ctest | --all | RULE\n";
    return 2;
}
