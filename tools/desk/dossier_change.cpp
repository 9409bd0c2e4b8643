#include "desk/dossier_change.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string_view>
#include <utility>
#include <vector>

#include "desk/desk_error.h"
#include "desk/dossier_sheet.h"
#include "desk/value_shape.h"
#include "desk/yaml_editor.h"
#include "evidence/evidence_data.h"
#include "utf16_places.h"
#include "yaml_places.h"

namespace grainside::desk {

using document::Node;

namespace {

constexpr std::string_view kSampleKeys[] = {"what",  "category",  "seller",       "bought",
                                            "price", "condition", "months_in_use"};
constexpr std::string_view kListingKeys[] = {"captured", "region", "language"};
constexpr std::string_view kListingTexts[] = {"name", "description", "material", "category"};
constexpr std::string_view kCostKeys[] = {"currency", "sales_tax", "sold_in"};
constexpr std::string_view kReadingKeys[] = {"method", "outcome", "date", "photo", "note"};
constexpr std::string_view kAttribute = "additionalProperty.";
constexpr std::string_view kExchange = "exchange.";
constexpr std::string_view kNoLines = "none";

using Values = std::vector<std::pair<std::string, YamlShape>>;

[[noreturn]] void refuse(std::string code, std::string message, std::string hint = {}) {
    throw DeskError{400, std::move(code), std::move(message), std::move(hint)};
}

template <std::size_t N>
bool is_one_of(std::string_view word, const std::string_view (&words)[N]) {
    return std::find(std::begin(words), std::end(words), word) != std::end(words);
}

// As mapping_of; a refusal names the key.
YamlShape named_values(const std::string& key, std::string_view text) {
    try {
        return mapping_of(text);
    } catch (DeskError& error) {
        error.key = key;
        throw;
    }
}

bool is_cost_group(std::string_view name) {
    for (std::size_t g = 0; g < evidence::kCostGroupCount; ++g) {
        if (name == name_of(static_cast<CostGroup>(g))) return true;
    }
    return false;
}

YamlShape shape_of(const Values& values) {
    YamlShape shape = YamlShape::mapping();
    for (const auto& [key, value] : values) shape.add(key, value);
    return shape;
}

std::size_t count_of(Node parent) {
    return static_cast<std::size_t>(std::distance(parent.begin(), parent.end()));
}

class Changer {
public:
    Changer(std::string text, const EvidenceBook& evidence) : editor_(std::move(text)), evidence_(evidence) {}

    void change(const JsonValue& change) {
        const std::string_view what = text_member(change, "do");
        if (what == "add-reading") return add_reading(change);
        if (what == "change-reading") return change_reading(change);
        if (what == "remove-reading") return remove_reading(change);
        if (what == "set") return set(change);
        if (what == "take-wording") return take_wording(change);
        if (what == "add-cost") return add_cost(change);
        if (what == "change-cost") return change_cost(change);
        if (what == "remove-cost") return remove_cost(change);
        refuse("bad-request", "there is no change of this name");
    }
    const std::string& text() const noexcept { return editor_.text(); }

private:
    Node at(const YamlPath& path) const { return at_path(editor_.root(), path); }

    // The mapping at `path` says `values` from now on; what it says already is not touched.
    void set_values(const YamlPath& path, const Values& values) {
        std::vector<std::string> gone;
        for (const Node child : at(path)) {
            const bool stays =
                std::any_of(values.begin(), values.end(), [&](const auto& one) { return one.first == child.key(); });
            if (!stays) gone.emplace_back(child.key());
        }
        for (const auto& [key, value] : values) {
            const Node there = at(path).find(key);
            if (!there.exists() || YamlShape::of(there) != value) editor_.set(path, key, value);
        }
        for (const std::string& key : gone) {
            YamlPath child = path;
            child.push_back(key);
            editor_.remove(child);
        }
    }

    // --- readings

    YamlPath readings_of(const JsonValue& change) const {
        const std::string part(text_member(change, "part"));
        if (!part_named(part)) refuse("bad-request", "there is no such part");
        return {"parts", part, "readings"};
    }

    // In the order in which dossiers are written; empty texts are left out. `there`: the reading that it changes.
    Values reading_values(const JsonValue& change, Node there) const {
        const JsonValue& reading = change["reading"];
        const std::string_view method_id = text_member(reading, "method");
        const evidence::Method* const method = find_method(evidence_.data(), method_id);
        Values values;
        const auto add = [&](std::string_view key) {
            const auto text = optional_text(reading, key);
            if (text && !text->empty()) values.emplace_back(std::string(key), YamlShape::scalar(*text));
        };
        add("method");
        add("outcome");
        for (const auto& [key, value] : reading["values"].members) {
            if (is_one_of(key, kReadingKeys)) refuse("bad-request", "'" + key + "' is no value of a reading");
            const std::string_view text = text_member(reading["values"], key);
            if (text.empty()) continue;
            const Node old = there.find(key);
            const bool mapping = method != nullptr ? reads_mapping(*method, key) : old.is_mapping();
            values.emplace_back(key, mapping ? named_values(key, text) : YamlShape::scalar(text));
        }
        add("date");
        add("photo");
        add("note");
        return values;
    }

    void add_reading(const JsonValue& change) {
        YamlPath path = readings_of(change);
        const YamlShape reading = shape_of(reading_values(change, {}));
        if (at(path).is_sequence()) return editor_.append(path, reading);
        path.pop_back();
        editor_.set(path, "readings", YamlShape::sequence().add({}, reading));
    }

    YamlPath reading_at(const JsonValue& change) const {
        YamlPath path = readings_of(change);
        path.push_back(std::to_string(index_member(change, "index")));
        if (!at(path).is_mapping()) refuse("no-such-place", "there is no such reading");
        return path;
    }

    void change_reading(const JsonValue& change) {
        const YamlPath path = reading_at(change);
        set_values(path, reading_values(change, at(path)));
    }

    // The part goes with its last reading, as it comes with the first.
    void remove_reading(const JsonValue& change) {
        YamlPath path = reading_at(change);
        path.pop_back();
        if (count_of(at(path)) > 1) return editor_.remove(reading_at(change));
        path.pop_back();
        if (count_of(at({"parts"})) == 1) path.pop_back();
        editor_.remove(path);
    }

    // --- sample, listing, costs

    void set(const JsonValue& change) {
        const std::string of(text_member(change, "of"));
        std::string key(text_member(change, "key"));
        const std::string_view value = text_member(change, "value");
        YamlPath path{of};
        bool known = false;
        if (of == "sample") known = is_one_of(key, kSampleKeys);
        if (of == "listing") known = is_one_of(key, kListingKeys) || is_one_of(key, kListingTexts);
        if (of == "costs")
            known = is_one_of(key, kCostKeys) || (is_cost_group(key) && (value == kNoLines || value.empty()));
        const auto within = [&](std::string_view prefix, const char* mapping) {
            if (!key.starts_with(prefix) || key.size() == prefix.size()) return;
            known = true;
            key.erase(0, prefix.size());
            path.emplace_back(mapping);
        };
        if (of == "listing") within(kAttribute, "attributes");
        if (of == "costs") within(kExchange, "exchange");
        if (of == "listing" && (path.size() > 1 || is_one_of(key, kListingTexts))) refuse_listing_file();
        if (!known) refuse("bad-request", "'" + key + "' cannot be set here");
        if (!value.empty()) return editor_.set(path, key, YamlShape::scalar(value));
        path.push_back(key);
        if (!at(path).exists()) return;
        // An empty mapping would be nothing in YAML.
        while (path.size() > 1 && count_of(at(YamlPath(path.begin(), path.end() - 1))) == 1) path.pop_back();
        if (path == YamlPath{"sample"}) refuse("bad-request", "something has to be said of the sample");
        editor_.remove(path);
    }

    void refuse_listing_file() const {
        if (!at({"listing", "file"}).exists()) return;
        refuse("listing-file", "the listing stands in a file of its own, which is never changed",
               "`grainside reword --in-place` changes it, or write the wording to the seller");
    }

    void take_wording(const JsonValue& change) {
        const std::string field(text_member(change, "field"));
        YamlPath path{"listing"};
        refuse_listing_file();
        if (field.starts_with(kAttribute)) {
            path.emplace_back("attributes");
            path.push_back(field.substr(kAttribute.size()));
        } else {
            path.push_back(field);
        }
        const std::string text(at(path).text());
        const tools::Utf16Places units(text);
        const auto [first, last] = span_member(change, "at");
        const std::size_t start = units.byte_at(first);
        const std::size_t end = units.byte_at(last);
        if (text.empty() || text.substr(start, end - start) != text_member(change, "words")) {
            refuse("words-differ", "other words stand there by now");
        }
        const std::string_view wording = text_member(change, "wording");
        tools::YamlPlaces places(editor_.text(), {{field, text}});
        const auto span = places.find(0, start, end);
        const auto written = span ? places.written(0, wording) : std::nullopt;
        if (!written) refuse("does-not-fit", "the words cannot be found in the way this file is written");
        editor_.replace(span->first, span->second, *written, path,
                        text.substr(0, start) + std::string(wording) + text.substr(end));
    }

    std::string group_of(const JsonValue& change) const {
        std::string group(text_member(change, "group"));
        if (!is_cost_group(group)) refuse("bad-request", "there is no such group of costs");
        return group;
    }

    Values cost_values(const JsonValue& change, Node there) const {
        Values values;
        for (const auto& [key, value] : change["line"].members) {
            const std::string_view text = text_member(change["line"], key);
            if (text.empty()) continue;
            const Node old = there.find(key);
            const bool several = key == "of" && text.find(',') != std::string_view::npos && !old.is_scalar();
            values.emplace_back(key, several ? list_of(text) : value_like(old, text));
        }
        if (values.empty()) refuse("bad-request", "a line of costs has to say something");
        return values;
    }

    void add_cost(const JsonValue& change) {
        const std::string group = group_of(change);
        const YamlShape line = shape_of(cost_values(change, {}));
        const Node there = at({"costs", group});
        if (there.is_sequence()) return editor_.append({"costs", group}, line);
        YamlShape lines = YamlShape::sequence();
        if (there.is_mapping()) {
            lines.add({}, YamlShape::of(there));
        } else if (there.is_scalar() && there.text() != kNoLines) {
            lines.add({}, std::move(YamlShape::mapping().add("amount", YamlShape::of(there))));
        }
        editor_.set({"costs"}, group, lines.add({}, line));
    }

    void change_cost(const JsonValue& change) {
        YamlPath path{"costs", group_of(change)};
        const std::size_t index = index_member(change, "index");
        if (at(path).is_sequence()) {
            path.push_back(std::to_string(index));
        } else if (index != 0) {
            path.emplace_back();
        }
        const Node there = at(path);
        if (!there.exists()) refuse("no-such-place", "there is no such line of costs");
        const Values values = cost_values(change, there);
        if (there.is_mapping()) return set_values(path, values);
        const bool amount = values.size() == 1 && values.front().first == "amount";
        const std::string last = path.back();
        path.pop_back();
        if (!at(path).is_mapping()) refuse("does-not-fit", "this line can be changed in the text of the file only");
        editor_.set(path, last, amount ? values.front().second : shape_of(values));
    }

    void remove_cost(const JsonValue& change) {
        YamlPath path{"costs", group_of(change)};
        const std::size_t index = index_member(change, "index");
        const std::size_t count = at(path).is_sequence() ? count_of(at(path)) : at(path).exists() ? 1 : 0;
        if (index >= count) refuse("no-such-place", "there is no such line of costs");
        if (count > 1) {
            path.push_back(std::to_string(index));
        } else if (count_of(at({"costs"})) == 1) {
            path.pop_back();
        }
        editor_.remove(path);
    }

    YamlEditor editor_;
    const EvidenceBook& evidence_;
};

}  // namespace

std::string changed_text(std::string text, const JsonValue& changes, const EvidenceBook& evidence) {
    if (changes.kind != JsonValue::Kind::list) refuse("bad-request", "'changes' has to be a list");
    if (changes.items.size() > kMostChanges) refuse("bad-request", "these are more than 200 changes at once");
    for (const JsonValue& change : changes.items) {
        if (text_member(change, "do") == "text") {
            text = text_member(change, "text");
            continue;
        }
        Changer changer(std::move(text), evidence);
        changer.change(change);
        text = changer.text();
    }
    return text;
}

}  // namespace grainside::desk
