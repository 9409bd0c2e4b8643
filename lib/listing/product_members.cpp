// ProductJson::Walk: which members of a record are read, and as what.
#include <algorithm>
#include <array>
#include <string_view>

#include "listing/product_type.h"
#include "listing/product_walk.h"

namespace grainside::listing {

namespace ondemand = simdjson::ondemand;

namespace {

constexpr std::array<std::string_view, 13> kMemberNames = {
    "name",   "description", "material", "category", "inLanguage", "sku", "@id", "additionalProperty",
    "offers", "brand",       "seller",   "@graph",   "@type"};

constexpr std::array<std::string_view, 2> kTextMembers = {"name", "@value"};
constexpr std::array<std::string_view, 3> kCodeMembers = {"identifier", "name", "@value"};
constexpr std::array<std::string_view, 3> kValueMembers = {"value", "name", "@value"};

}  // namespace

bool ProductJson::Walk::product() {
    static_assert(kMemberNames.size() == static_cast<std::size_t>(Member::unknown));
    ondemand::object object;
    error_ = document_.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    unsigned seen = 0;
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        const auto found = std::find(kMemberNames.begin(), kMemberNames.end(), key);
        auto which = static_cast<Member>(found - kMemberNames.begin());
        const unsigned bit = 1U << static_cast<unsigned>(which);
        if ((seen & bit) != 0) which = Member::unknown;
        seen |= bit;
        if (!member(which, field.value())) return false;
    }
    // A complete object may still be followed by something.
    return document_.current_location().error() == simdjson::OUT_OF_BOUNDS;
}

bool ProductJson::Walk::member(Member member, ondemand::value& value) {
    switch (member) {
        case Member::name:
        case Member::description:
        case Member::material:
        case Member::category:
            return field_texts(kMemberNames[static_cast<std::size_t>(member)], value);
        case Member::in_language:
            return first_text({.member = "inLanguage", .object_members = kCodeMembers}, value, listing_->language);
        case Member::sku:
            return first_text({.member = "sku", .numbers = true, .object_members = kTextMembers}, value, sku_);
        case Member::at_id:
            return first_text({.member = "@id", .object_members = kTextMembers}, value, at_id_);
        case Member::additional_property:
            return properties(value);
        case Member::offers:
            return offers(value);
        case Member::brand:
            // A brand's name makes no claim (it is a name).
            return first_text({.member = "brand", .object_members = kTextMembers}, value, brand_);
        case Member::seller:
            return first_text({.member = "seller", .object_members = kTextMembers}, value, seller_);
        case Member::at_graph:
            return graph_member(value);
        case Member::at_type: {
            if (role_ == Role::record) return pass_over(value);
            texts_.clear();
            if (!texts({.member = "@type", .object_members = kTextMembers}, value, texts_)) return false;
            is_other_type_ = !texts_.empty() && std::none_of(texts_.begin(), texts_.end(), [](const Text& type) {
                return is_product_type(type.words);
            });
            return true;
        }
        case Member::unknown:
            break;
    }
    return pass_over(value);
}

bool ProductJson::Walk::field_texts(std::string_view name, ondemand::value& value) {
    texts_.clear();
    if (!texts({.member = name, .object_members = kTextMembers}, value, texts_)) return false;
    for (const Text& text : texts_) add_field(name, text);
    return true;
}

bool ProductJson::Walk::properties(ondemand::value& value) {
    if (!value.raw_json_token().starts_with('[')) return property(value);
    return each_element(value, [this](ondemand::value& element) { return property(element); });
}

bool ProductJson::Walk::property(ondemand::value& value) {
    const std::string_view token = value.raw_json_token();
    if (!token.starts_with('{')) {
        if (!pass_over(value)) return false;
        if (!token.starts_with('n')) {
            wrong_type("additionalProperty", token, "an object with name and value, or a list of them");
        }
        return true;
    }
    ondemand::object object;
    error_ = value.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    std::string_view name;
    std::string_view unit;
    bool has_name = false;
    bool has_value = false;
    bool is_one_number = false;
    values_.clear();
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        ondemand::value& inner = field.value();
        if (key == "name" && !has_name) {
            has_name = true;
            if (!first_text({.member = "additionalProperty.name", .object_members = kTextMembers}, inner, name)) {
                return false;
            }
        } else if (key == "value" && !has_value) {
            has_value = true;
            const char first = inner.raw_json_token().front();
            is_one_number = first == '-' || (first >= '0' && first <= '9');
            if (!texts({.member = "additionalProperty.value",
                        .numbers = true,
                        .booleans = true,
                        .object_members = kValueMembers},
                       inner, values_)) {
                return false;
            }
        } else if (key == "unitText" && unit.empty()) {
            if (!first_text({.member = "additionalProperty.unitText", .object_members = kTextMembers}, inner, unit)) {
                return false;
            }
        } else if (!pass_over(inner)) {
            return false;
        }
    }
    if (values_.empty()) return true;
    if (name.empty()) {
        warn("wrong-member-type", token, "this additionalProperty has no name; its value is read without one",
             "add \"name\", which says what the value is of");
    }
    const std::string_view field_name = arena_.join({"additionalProperty.", name});
    // A thickness of 1.4 says nothing without its millimetres, and schema.org keeps those apart.
    if (is_one_number && !unit.empty()) {
        values_.front().words = arena_.join({values_.front().words, " ", unit});
        values_.front().origin.writing = Writing::number_with_unit;
    }
    for (const Text& text : values_) add_field(field_name, text);
    return true;
}

bool ProductJson::Walk::offers(ondemand::value& value) {
    if (!value.raw_json_token().starts_with('[')) return offer(value);
    return each_element(value, [this](ondemand::value& element) { return offer(element); });
}

// The regions of all offers count, each once.
bool ProductJson::Walk::offer(ondemand::value& value) {
    const std::string_view token = value.raw_json_token();
    if (!token.starts_with('{')) {
        if (!pass_over(value)) return false;
        if (!token.starts_with('n'))
            wrong_type("offers", token, "an object with eligibleRegion or seller, or a list of them");
        return true;
    }
    ondemand::object object;
    error_ = value.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        if (key == "eligibleRegion") {
            if (!regions(field.value())) return false;
        } else if (key == "seller" && offering_seller_.empty()) {
            constexpr Taste kSeller{.member = "offers.seller", .object_members = kTextMembers};
            if (!first_text(kSeller, field.value(), offering_seller_)) return false;
        } else if (!pass_over(field.value())) {
            return false;
        }
    }
    return true;
}

bool ProductJson::Walk::regions(ondemand::value& value) {
    // More would be no list of markets, and the text may not grow with the square of the record.
    constexpr std::size_t kMostBytes = 1024;
    texts_.clear();
    if (!texts({.member = "offers.eligibleRegion", .object_members = kCodeMembers}, value, texts_)) return false;
    std::string_view& region = listing_->region;
    for (const Text& text : texts_) {
        if (text.words.empty() || region.find(text.words) != std::string_view::npos) continue;
        if (region.size() + text.words.size() > kMostBytes) break;
        region = region.empty() ? text.words : arena_.join({region, " ", text.words});
    }
    return true;
}

bool ProductJson::Walk::graph_member(ondemand::value& value) {
    const std::string_view token = value.raw_json_token();
    if (!token.starts_with('[') || role_ == Role::graph_node) return pass_over(value);
    const std::size_t begin = offset_of(token.data());
    const auto end = scanner_.end_of_value(parsed_, begin);
    if (!end) return false;
    is_graph_ = true;
    graph_.bytes = parsed_.substr(begin, *end - begin);
    graph_.around = parsed_.data() == text_.bytes.data() ? text_.around : parsed_;
    graph_.readable_behind = parsed_.size() - *end + readable_behind_;
    graph_.origin = place_at(parsed_, begin, text_.origin);
    graph_.start = text_.start + begin;
    return true;
}

}  // namespace grainside::listing
