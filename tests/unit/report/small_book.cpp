#include "small_book.h"

#include <unistd.h>

#include <filesystem>
#include <stdexcept>
#include <utility>

namespace grainside::report {
namespace {

namespace fs = std::filesystem;

RuleBook load_small_book() {
    const fs::path folder = fs::temp_directory_path() / ("grainside_report_test." + std::to_string(::getpid()));
    fs::copy(GRAINSIDE_SMALL_BOOK, folder, fs::copy_options::recursive);
    for (const char* file : {"concepts.yaml", "parts.yaml"}) fs::copy(fs::path(GRAINSIDE_RULES_FOLDER) / file, folder);
    Result<RuleBook> book = RuleBook::load(folder);
    fs::remove_all(folder);
    if (book) return std::move(book).value();
    std::string faults = "the small book cannot be loaded:\n";
    for (const Issue& issue : book.issues()) faults += to_text(issue);
    throw std::runtime_error(faults);
}

}  // namespace

const RuleBook& small_book() {
    static const RuleBook book = load_small_book();
    return book;
}

CheckOptions us_options() {
    CheckOptions options;
    options.markets = {"us"};
    return options;
}

std::uint32_t rule_index(std::string_view id) {
    const RuleInfo* rule = small_book().find_rule(id);
    if (rule == nullptr) throw std::runtime_error("no rule " + std::string(id));
    return static_cast<std::uint32_t>(rule - small_book().rules().data());
}

Listing listing_of(std::vector<Field> fields, std::string_view id) {
    Listing listing;
    listing.id = id;
    listing.fields = std::move(fields);
    return listing;
}

}  // namespace grainside::report
