#include "listing/table_columns.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <set>
#include <utility>

#include "document/inert_text.h"
#include "listing/product_json.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kMostNamesTold = 40;
constexpr std::size_t kMostNameBytes = 48;
constexpr std::string_view kHowToMap =
    "say what the columns are, such as --columns 'Column=name,Other column=description,Third=skip'; if "
    "the values are cut wrongly, say what stands between them with --separator";

struct Wanted {
    ColumnUse use = ColumnUse::skip;
    std::string_view property;  // empty: named like the column
};

// "property", "additionalProperty.Lining" or another use. Nothing: no such member.
std::optional<Wanted> wanted_of(std::string_view member) {
    constexpr std::string_view kPrefix = "additionalProperty.";
    if (member.starts_with(kPrefix) && member.size() > kPrefix.size()) {
        return Wanted{ColumnUse::property, member.substr(kPrefix.size())};
    }
    const auto use = column_use_named(member);
    if (!use) return std::nullopt;
    return Wanted{*use, {}};
}

// A name for a message, where it must not fill the screen.
std::string shown(std::string_view name) {
    std::string_view cut = name.substr(0, kMostNameBytes);
    if (cut.size() < name.size()) {
        while (cut.size() > 1 && (static_cast<unsigned char>(name[cut.size()]) & 0xC0U) == 0x80U) cut.remove_suffix(1);
    }
    return "'" + document::inert_text(cut) + (cut.size() < name.size() ? "...'" : "'");
}

std::string told(std::span<const std::string> names) {
    std::string out;
    for (std::size_t i = 0; i < std::min(names.size(), kMostNamesTold); ++i) {
        if (i != 0) out += ", ";
        out += shown(names[i]);
    }
    if (names.size() > kMostNamesTold) out += " and " + std::to_string(names.size() - kMostNamesTold) + " more";
    return out;
}

bool is_blank_name(std::string_view name) {
    return name.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

void warn_of_names(std::span<const std::string> names, const RecordText& header, IssueSink& sink) {
    std::string without;
    std::set<std::string_view> seen;
    std::set<std::string_view> twice;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (!is_blank_name(names[i])) {
            if (!seen.insert(names[i]).second) twice.insert(names[i]);
        } else if (without.empty()) {
            without = std::to_string(i + 1);
        }
    }
    if (!without.empty()) {
        sink.report_at(Issue::Severity::warning, "column-without-name", header, 0,
                       "column " + without + " has no name; what stands in such columns is not read",
                       "write a name into the header row if shoppers see it");
    }
    if (twice.empty()) return;
    const std::vector<std::string> listed(twice.begin(), twice.end());
    sink.report_at(Issue::Severity::warning, "column-twice", header, 0,
                   "more than one column is called " + told(listed) + "; all of them are read", "name them apart");
}

}  // namespace

bool TableColumns::read(std::span<const std::string> names, std::span<const ColumnMapping> mappings,
                        const RecordText& header, IssueSink& sink) {
    width_ = names.size();
    texts_.clear();
    facts_.clear();
    if (width_ > kMaxFields) {
        sink.report_at(Issue::Severity::error, "too-many-columns", header, 0,
                       "this table has more than " + std::to_string(kMaxFields) + " columns and is not read",
                       "say --separator if this is no table of that kind");
        return false;
    }
    warn_of_names(names, header, sink);

    std::vector<std::string> plain;
    std::transform(names.begin(), names.end(), std::back_inserter(plain), plain_column_name);
    std::vector<const ColumnMapping*> mapped(width_, nullptr);
    const ColumnMapping* for_others = nullptr;
    bool all_known = true;
    for (const ColumnMapping& mapping : mappings) {
        if (!wanted_of(mapping.member)) {
            sink.report(Issue::Severity::error, "no-such-member", {0, 0}, "a column cannot be " + shown(mapping.member),
                        "one of name, description, material, category, property, additionalProperty.NAME, id, "
                        "language, region, seller, skip");
            all_known = false;
            continue;
        }
        if (mapping.column == "*") {
            for_others = &mapping;
            continue;
        }
        // As it is written, or else by its words.
        const bool is_exact = std::find(names.begin(), names.end(), mapping.column) != names.end();
        const std::string words = plain_column_name(mapping.column);
        bool found = false;
        for (std::size_t i = 0; i < width_; ++i) {
            if (is_exact ? names[i] != mapping.column : words.empty() || plain[i] != words) continue;
            mapped[i] = &mapping;
            found = true;
        }
        if (found) continue;
        all_known = false;
        sink.report_at(Issue::Severity::error, "no-such-column", header, 0,
                       "there is no column " + shown(mapping.column) + " here", "the columns are " + told(names));
    }
    if (!all_known) return false;

    // Where all columns became properties for want of a better name, the first row is rather a product than a header.
    bool any_text = false;
    for (std::size_t i = 0; i < width_; ++i) {
        const auto known = known_column(plain[i]);
        const ColumnMapping* const mapping = mapped[i] != nullptr ? mapped[i] : for_others;
        if (mapping != nullptr) {
            const Wanted wanted = *wanted_of(mapping->member);
            any_text = any_text || wanted.use <= ColumnUse::property;
            add(i, wanted.use, 0, wanted.property.empty() ? std::string_view(names[i]) : wanted.property);
        } else if (known) {
            any_text = any_text || known->use < ColumnUse::property;
            add(i, known->use, known->rank + 1, {});
        } else if (!is_blank_name(names[i])) {
            add(i, ColumnUse::property, 0, names[i]);
        }
    }
    std::stable_sort(facts_.begin(), facts_.end(),
                     [](const TableColumn& a, const TableColumn& b) { return a.rank < b.rank; });
    if (any_text) return true;
    sink.report_at(Issue::Severity::error, "no-text-column", header, 0,
                   "no column of this table is known to hold a name, a description, a material or a category; its "
                   "columns are " +
                       told(names),
                   std::string(kHowToMap) + "; the first row must hold the names of the columns");
    return false;
}

void TableColumns::add(std::size_t cell, ColumnUse use, unsigned rank, std::string_view property) {
    constexpr std::array<std::string_view, 4> kFields = {"name", "description", "material", "category"};
    if (use == ColumnUse::skip) return;
    TableColumn column{cell, use, {}, rank};
    if (use > ColumnUse::property) {
        facts_.push_back(std::move(column));
        return;
    }
    if (use == ColumnUse::property) {
        const std::size_t first = property.find_first_not_of(" \t\r\n");
        const std::size_t last = property.find_last_not_of(" \t\r\n");
        column.field = "additionalProperty.";
        if (first != std::string_view::npos) column.field += property.substr(first, last - first + 1);
    } else {
        column.field = kFields[static_cast<std::size_t>(use)];
    }
    texts_.push_back(std::move(column));
}

}  // namespace grainside::listing
