#include "listing/linked_data.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>

#include "listing/product_type.h"

namespace grainside::listing {
namespace {

// Each level of what is looked into is scanned once more.
constexpr unsigned kDeepest = 8;

std::size_t space_end(std::string_view text, std::size_t at) {
    while (at < text.size() && is_json_space(text[at])) ++at;
    return at;
}

// Old pages hide the script from XML: "//<![CDATA[" or "<!--" before the JSON, and the end of it behind.
std::string_view without_wrapping(std::string_view text) {
    constexpr std::string_view kBefore[] = {"/*<![CDATA[*/", "//<![CDATA[", "<![CDATA[", "<!--"};
    constexpr std::string_view kBehind[] = {"/*]]>*/", "//]]>", "]]>", "//-->", "-->"};
    const auto trim = [&] {
        text.remove_prefix(space_end(text, 0));
        while (!text.empty() && is_json_space(text.back())) text.remove_suffix(1);
    };
    trim();
    for (const std::string_view mark : kBefore) {
        if (!text.starts_with(mark)) continue;
        text.remove_prefix(mark.size());
        trim();
        break;
    }
    for (const std::string_view mark : kBehind) {
        if (!text.ends_with(mark)) continue;
        text.remove_suffix(mark.size());
        trim();
        break;
    }
    return text;
}

// Of a value that is a string or a list of them.
bool has_product_type(std::string_view json) {
    bool in_string = false;
    std::size_t begin = 0;
    for (std::size_t at = 0; at < json.size(); ++at) {
        if (in_string && json[at] == '\\') {
            ++at;
        } else if (json[at] == '"') {
            if (in_string && is_product_type(json.substr(begin, at - begin))) return true;
            in_string = !in_string;
            begin = at + 1;
        }
    }
    return false;
}

}  // namespace

// Of an object, the first of each; empty where it is not there.
struct LinkedData::Members {
    std::string_view type;
    std::string_view graph;
    std::string_view main_entity;
    std::string_view item;
    std::string_view item_list;
    std::string_view variants;
    bool says_something = false;  // has texts that a variant would not share with its group
};

void LinkedData::read(const RecordText& script, IssueSink& sink) {
    script_ = script;
    script_.bytes = without_wrapping(script.bytes);
    if (script_.bytes.empty()) return;
    const auto wrapping = static_cast<std::size_t>(script_.bytes.data() - script.bytes.data());
    script_.origin = place_at(script.bytes, wrapping, script.origin);
    script_.start += wrapping;
    script_.readable_behind += script.bytes.size() - wrapping - script_.bytes.size();
    sink_ = &sink;
    counted_to_ = 0;
    counted_ = script_.origin;
    if (!scanner_.is_document(script_.bytes)) {
        const JsonFault& fault = scanner_.fault();
        sink.report_at(Issue::Severity::warning, "json-syntax", script_, fault.offset,
                       std::string(fault.message) + "; this script's data is not read", std::string(fault.hint));
        return;
    }
    value(script_.bytes, 0, false);
}

void LinkedData::value(std::string_view json, unsigned depth, bool in_list) {
    if (json.empty() || depth > kDeepest) return;
    if (json.front() == '[') list(json, depth, in_list);
    if (json.front() == '{') object(json, depth, in_list);
}

// The value that begins at `at` of valid JSON.
std::string_view LinkedData::value_at(std::string_view json, std::size_t at) {
    const auto end = scanner_.end_of_value(json, at);
    return end ? json.substr(at, *end - at) : std::string_view{};
}

void LinkedData::list(std::string_view json, unsigned depth, bool in_list) {
    std::size_t at = space_end(json, 1);
    while (at < json.size() && json[at] != ']') {
        const std::string_view element = value_at(json, at);
        if (element.empty()) return;
        value(element, depth + 1, in_list);
        at = space_end(json, at + element.size());
        if (at < json.size() && json[at] == ',') at = space_end(json, at + 1);
    }
}

LinkedData::Members LinkedData::members_of(std::string_view object) {
    Members members;
    const auto take = [](std::string_view& into, std::string_view json) {
        if (into.empty()) into = json;
    };
    std::size_t at = space_end(object, 1);
    while (at < object.size() && object[at] == '"') {
        const std::string_view quoted = value_at(object, at);
        at = space_end(object, at + quoted.size());
        const std::string_view json = value_at(object, space_end(object, at + 1));
        if (quoted.empty() || json.empty()) break;
        const std::string_view name = quoted.substr(1, quoted.size() - 2);
        if (name == "@type") take(members.type, json);
        if (name == "@graph") take(members.graph, json);
        if (name == "mainEntity" || name == "mainEntityOfPage") take(members.main_entity, json);
        if (name == "item" || name == "itemOffered") take(members.item, json);
        if (name == "itemListElement") take(members.item_list, json);
        if (name == "hasVariant") take(members.variants, json);
        if (name == "description" || name == "material" || name == "additionalProperty") members.says_something = true;
        at = space_end(object, static_cast<std::size_t>(json.data() - object.data()) + json.size());
        if (at < object.size() && object[at] == ',') at = space_end(object, at + 1);
    }
    return members;
}

void LinkedData::object(std::string_view json, unsigned depth, bool in_list) {
    const Members members = members_of(json);
    if (has_product_type(members.type)) {
        add(json, in_list);
        if (members.variants.empty() || members.variants.front() != '[') return;
        std::size_t at = space_end(members.variants, 1);
        while (at < members.variants.size() && members.variants[at] != ']') {
            const std::string_view variant = value_at(members.variants, at);
            if (variant.empty()) return;
            if (variant.front() == '{') {
                const Members own = members_of(variant);
                if (has_product_type(own.type) && own.says_something) add(variant, in_list);
            }
            at = space_end(members.variants, at + variant.size());
            if (at < members.variants.size() && members.variants[at] == ',') at = space_end(members.variants, at + 1);
        }
        return;
    }
    value(members.graph, depth + 1, in_list);
    value(members.main_entity, depth + 1, in_list);
    value(members.item, depth + 1, in_list);
    value(members.item_list, depth + 1, true);
}

void LinkedData::add(std::string_view json, bool in_list) {
    if (products_.size() + listed_.size() == kMostProducts) {
        if (!std::exchange(too_many_, true)) {
            sink_->report(Issue::Severity::error, "record-too-large", script_.origin,
                          "this page has more than " + std::to_string(kMostProducts) +
                              " products; those from here on are not read",
                          "split it");
        }
        return;
    }
    const auto at = static_cast<std::size_t>(json.data() - script_.bytes.data());
    count_to(at);
    RecordText product = script_;
    product.bytes = json;
    product.readable_behind += script_.bytes.size() - at - json.size();
    product.origin = counted_;
    product.start = script_.start + at;
    (in_list ? listed_ : products_).push_back(product);
}

// Members may stand in any order, so that the way goes back at times, but never by more than an object.
void LinkedData::count_to(std::size_t at) {
    if (at >= counted_to_) {
        counted_ = place_at(script_.bytes.substr(counted_to_), at - counted_to_, counted_);
    } else {
        const std::string_view between = script_.bytes.substr(at, counted_to_ - at);
        const auto breaks = static_cast<std::uint64_t>(std::count(between.begin(), between.end(), '\n'));
        counted_.line -= breaks;
        if (breaks == 0) {
            counted_.column -= between.size();
        } else {
            const std::size_t before = script_.bytes.substr(0, at).rfind('\n');
            counted_.column = before == std::string_view::npos ? script_.origin.column + at : at - before;
        }
    }
    counted_to_ = at;
}

}  // namespace grainside::listing
