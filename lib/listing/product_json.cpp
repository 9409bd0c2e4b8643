#include "listing/product_json.h"

#include <simdjson.h>

#include <algorithm>
#include <array>
#include <bit>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "listing/json_scanner.h"
#include "listing/json_string.h"
#include "listing/product_type.h"
#include "listing/utf8_check.h"
#include "listing/wrapped_list.h"

namespace grainside::listing {
namespace {

namespace ondemand = simdjson::ondemand;

// What an invalid byte is read as: a gap between words. A question mark would be one byte as well, but it would turn
// the sentence into a question, which claims nothing.
constexpr char kGap = ' ';

constexpr std::size_t kFirstParserBytes = 16384;

enum class Member : std::uint8_t {
    name,
    description,
    material,
    category,
    in_language,
    sku,
    at_id,
    additional_property,
    offers,
    brand,
    seller,
    at_graph,
    at_type,
    unknown
};

constexpr std::array<std::string_view, 13> kMemberNames = {
    "name",   "description", "material", "category", "inLanguage", "sku", "@id", "additionalProperty",
    "offers", "brand",       "seller",   "@graph",   "@type"};

Member member_of(std::string_view key) {
    const auto found = std::find(kMemberNames.begin(), kMemberNames.end(), key);
    return static_cast<Member>(found - kMemberNames.begin());
}

std::string_view kind_of(char first) {
    switch (first) {
        case '"':
            return "a text";
        case '{':
            return "an object";
        case '[':
            return "a list";
        case 't':
        case 'f':
            return "true or false";
        case 'n':
            return "null";
        default:
            return "a number";
    }
}

std::string_view trim_end(std::string_view text) {
    while (!text.empty() && is_json_space(text.back())) text.remove_suffix(1);
    return text;
}

bool is_only_space(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) <= 0x20; });
}

// A text and its place in the record, as FieldOrigin has it but counted from the record's beginning.
struct Text {
    std::string_view words;
    FieldOrigin origin;
};

// Which values a member takes as text, and in which member of an object the text stands, the best first.
struct Taste {
    std::string_view member;
    bool numbers = false;  // numbers, true and false too, as they are written
    bool booleans = false;
    std::span<const std::string_view> object_members;
};

constexpr std::array<std::string_view, 2> kTextMembers = {"name", "@value"};
constexpr std::array<std::string_view, 3> kCodeMembers = {"identifier", "name", "@value"};
constexpr std::array<std::string_view, 3> kValueMembers = {"value", "name", "@value"};

}  // namespace

// Functions return false where the text is not JSON; the scanner then finds out what and where.
class ProductJson::Walk {
public:
    explicit Walk(std::string source_name) : source_name_(std::move(source_name)) {}

    Outcome read(const RecordText& text, Role role, std::uint64_t record, Listing& listing, IssueSink& sink);
    const RecordText& graph() const noexcept { return graph_; }

private:
    bool product();
    bool member(Member member, ondemand::value& value);
    bool field_texts(std::string_view name, ondemand::value& value);
    bool first_text(const Taste& taste, ondemand::value& value, std::string_view& into);
    bool texts(const Taste& taste, ondemand::value& value, std::vector<Text>& into, bool in_list = false);
    bool object_text(const Taste& taste, ondemand::value& value, std::vector<Text>& into);
    bool properties(ondemand::value& value);
    bool property(ondemand::value& value);
    bool offers(ondemand::value& value);
    bool offer(ondemand::value& value);
    bool regions(ondemand::value& value);
    bool graph_member(ondemand::value& value);

    bool pass_over(ondemand::value& value);
    bool scalar(std::string_view token);
    bool take_string(ondemand::value& value);
    bool string_text(ondemand::value& value, Text& into);
    Text as_written(std::string_view token, Writing writing) const;
    bool key_text(const ondemand::field& field, std::string_view& into);
    void add_field(std::string_view name, const Text& text);
    bool has_room(std::string_view token, std::size_t used);
    void wrong_type(std::string_view member, std::string_view token, std::string_view expected);
    void warn(std::string_view code, std::string_view token, std::string message, std::string hint);

    simdjson::error_code index();
    void repair();
    void report_broken();
    std::size_t offset_of(const char* at) const { return static_cast<std::size_t>(at - parsed_.data()); }

    std::string source_name_;
    ondemand::parser parser_;
    ondemand::document document_;
    JsonScanner scanner_;
    TextArena arena_;
    std::vector<char> copy_;  // of a record that cannot be parsed where it lies
    std::vector<Text> texts_;
    std::vector<Text> values_;

    // Of the record being read:
    RecordText text_;
    std::string_view parsed_;  // text_.bytes, or copy_
    std::size_t readable_behind_ = 0;
    Role role_ = Role::record;
    Listing* listing_ = nullptr;
    IssueSink* sink_ = nullptr;
    RecordText graph_;
    std::string_view sku_;
    std::string_view at_id_;
    std::string_view offering_seller_;
    std::string_view seller_;
    std::string_view brand_;
    simdjson::error_code error_ = simdjson::SUCCESS;
    bool is_graph_ = false;
    bool is_other_type_ = false;
    bool too_many_ = false;
    bool has_nul_ = false;
};

ProductJson::ProductJson(std::string source_name) : walk_(std::make_unique<Walk>(std::move(source_name))) {}
ProductJson::ProductJson(ProductJson&&) noexcept = default;
ProductJson& ProductJson::operator=(ProductJson&&) noexcept = default;
ProductJson::~ProductJson() = default;

ProductJson::Outcome ProductJson::read(const RecordText& text, Role role, std::uint64_t record, Listing& listing,
                                       IssueSink& sink) {
    return walk_->read(text, role, record, listing, sink);
}

const RecordText& ProductJson::graph() const noexcept {
    return walk_->graph();
}

ProductJson::Outcome ProductJson::Walk::read(const RecordText& text, Role role, std::uint64_t record, Listing& listing,
                                             IssueSink& sink) {
    text_ = text;
    parsed_ = text.bytes;
    readable_behind_ = text.readable_behind;
    role_ = role;
    listing_ = &listing;
    sink_ = &sink;
    sku_ = at_id_ = offering_seller_ = seller_ = brand_ = {};
    error_ = simdjson::SUCCESS;
    is_graph_ = is_other_type_ = too_many_ = has_nul_ = false;
    arena_.clear();
    listing.id = listing.language = listing.region = listing.seller = {};
    listing.fields.clear();

    const auto mark = sink.mark();
    const std::size_t first = std::min(parsed_.find_first_not_of(" \t\r\n"), parsed_.size());
    if (first == parsed_.size() || parsed_[first] != '{') {
        if (!scanner_.is_document(parsed_)) {
            report_broken();
            return Outcome::skipped;
        }
        sink.report_at(
            Issue::Severity::error, "not-an-object", text_, first,
            "a product should stand here as an object in { }, but this is " + std::string(kind_of(parsed_[first])),
            "write one product as {\"name\": ..., \"description\": ...}");
        return Outcome::skipped;
    }
    error_ = index();
    if (error_ != simdjson::SUCCESS || !product()) {
        listing.fields.clear();
        report_broken();
        return Outcome::skipped;
    }
    if (is_graph_) return Outcome::graph;
    if (is_other_type_) {
        sink.take_back(mark);
        return Outcome::skipped;
    }
    if (std::all_of(listing.fields.begin(), listing.fields.end(),
                    [](const Field& field) { return is_only_space(field.text); })) {
        std::string hint = "give it a name or a description";
        if (const WrappedList list = find_wrapped_list(parsed_.substr(first), scanner_); !list.name.empty()) {
            hint += "; the list in " + shown_name(list.name) +
                    " is read where this object is all of a JSON file, not a line of JSON Lines";
        }
        sink.report_at(Issue::Severity::error, "no-text", text_, first, "this record has no text to check",
                       std::move(hint));
        return Outcome::skipped;
    }
    listing.id = !sku_.empty() ? sku_ : at_id_;
    if (listing.id.empty()) listing.id = arena_.join({source_name_, ":", std::to_string(record)});
    listing.seller = !offering_seller_.empty() ? offering_seller_ : !seller_.empty() ? seller_ : brand_;
    return Outcome::listing;
}

// Runs the first stage of simdjson, over a copy where the record cannot be parsed as it lies.
simdjson::error_code ProductJson::Walk::index() {
    if (parser_.capacity() < parsed_.size()) {
        // In powers of two, so that records that grow little by little do not allocate each time.
        const simdjson::error_code error = parser_.allocate(std::bit_ceil(std::max(parsed_.size(), kFirstParserBytes)));
        if (error != simdjson::SUCCESS) return error;
    }
    for (bool repaired = false;; repaired = true) {
        if (repaired || readable_behind_ < simdjson::SIMDJSON_PADDING) {
            const std::size_t size = parsed_.size();
            if (parsed_.data() != copy_.data()) {
                if (copy_.size() < size + simdjson::SIMDJSON_PADDING) {
                    copy_.resize(std::bit_ceil(size + simdjson::SIMDJSON_PADDING));
                }
                std::copy(parsed_.begin(), parsed_.end(), copy_.begin());
                parsed_ = {copy_.data(), size};
                readable_behind_ = copy_.size() - size;
            }
            if (repaired) repair();
        }
        const simdjson::error_code error = parser_
                                               .iterate(simdjson::padded_string_view(parsed_.data(), parsed_.size(),
                                                                                     parsed_.size() + readable_behind_))
                                               .get(document_);
        if (error != simdjson::UTF8_ERROR || repaired) return error;
    }
}

// Overwrites invalid UTF-8 in `copy_`, and warns of it. Offsets stay as they are.
void ProductJson::Walk::repair() {
    std::size_t count = 0;
    std::size_t first = 0;
    for (InvalidBytes bad = find_invalid_utf8(parsed_, 0); bad.length != 0;
         bad = find_invalid_utf8(parsed_, bad.offset + bad.length)) {
        if (count == 0) first = bad.offset;
        count += bad.length;
        std::fill_n(copy_.begin() + static_cast<std::ptrdiff_t>(bad.offset), bad.length, kGap);
    }
    sink_->report_at(Issue::Severity::warning, "not-utf8", text_, first,
                     count == 1 ? "one byte of this record is not UTF-8 and is read as a gap"
                                : std::to_string(count) + " bytes of this record are not UTF-8 and are read as gaps",
                     "save the file as UTF-8");
}

void ProductJson::Walk::report_broken() {
    if (error_ == simdjson::MEMALLOC || error_ == simdjson::CAPACITY) {
        sink_->report_at(Issue::Severity::error, "record-too-large", text_, 0,
                         "there is not enough memory to read this record", "split it");
        return;
    }
    if (!scanner_.is_document(parsed_)) {
        const JsonFault& fault = scanner_.fault();
        sink_->report_at(Issue::Severity::error, "json-syntax", text_, fault.offset, std::string(fault.message),
                         std::string(fault.hint));
        return;
    }
    sink_->report_at(Issue::Severity::error, "json-syntax", text_, 0,
                     "this record cannot be read: " + std::string(simdjson::error_message(error_)), "write it again");
}

bool ProductJson::Walk::product() {
    ondemand::object object;
    error_ = document_.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    unsigned seen = 0;
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        Member which = member_of(key);
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

bool ProductJson::Walk::first_text(const Taste& taste, ondemand::value& value, std::string_view& into) {
    texts_.clear();
    if (!texts(taste, value, texts_)) return false;
    const auto found = std::find_if(texts_.begin(), texts_.end(), [](const Text& text) { return !text.words.empty(); });
    if (found != texts_.end()) into = found->words;
    return true;
}

bool ProductJson::Walk::texts(const Taste& taste, ondemand::value& value, std::vector<Text>& into, bool in_list) {
    const std::string_view token = trim_end(value.raw_json_token());
    const char first = token.empty() ? '\0' : token.front();
    if (first == '"') {
        Text text;
        if (!string_text(value, text)) return false;
        if (has_room(token, into.size())) into.push_back(text);
        return true;
    }
    if (first == '[' && !in_list) {
        ondemand::array array;
        error_ = value.get_array().get(array);
        if (error_ != simdjson::SUCCESS) return false;
        for (auto result : array) {
            ondemand::value element;
            error_ = std::move(result).get(element);
            if (error_ != simdjson::SUCCESS || !texts(taste, element, into, true)) return false;
        }
        return true;
    }
    if (first == '{') return object_text(taste, value, into);
    const bool is_boolean = first == 't' || first == 'f';
    const bool is_number = first == '-' || (first >= '0' && first <= '9');
    if ((is_boolean && taste.booleans) || (is_number && taste.numbers)) {
        if (!scalar(token)) return false;
        if (has_room(token, into.size())) into.push_back(as_written(token, Writing::json_value));
        return true;
    }
    if (!pass_over(value)) return false;
    // Null says that there is nothing, which is what a missing member says too.
    if (first != 'n') wrong_type(taste.member, token, "text in double quotes");
    return true;
}

bool ProductJson::Walk::object_text(const Taste& taste, ondemand::value& value, std::vector<Text>& into) {
    const std::string_view token = value.raw_json_token();
    ondemand::object object;
    error_ = value.get_object().get(object);
    if (error_ != simdjson::SUCCESS) return false;
    std::size_t best = taste.object_members.size();
    Text text;
    for (auto result : object) {
        ondemand::field field;
        error_ = std::move(result).get(field);
        std::string_view key;
        if (error_ != simdjson::SUCCESS || !key_text(field, key)) return false;
        ondemand::value& value_inside = field.value();
        const std::string_view inner = trim_end(value_inside.raw_json_token());
        const auto rank = static_cast<std::size_t>(
            std::find(taste.object_members.begin(), taste.object_members.end(), key) - taste.object_members.begin());
        const char first = inner.empty() ? '\0' : inner.front();
        const bool is_text = first == '"' || (taste.numbers && (first == '-' || (first >= '0' && first <= '9')));
        if (rank >= best || !is_text) {
            if (!pass_over(value_inside)) return false;
        } else {
            best = rank;
            if (first == '"' ? !string_text(value_inside, text) : !scalar(inner)) return false;
            if (first != '"') text = as_written(inner, Writing::json_value);
        }
    }
    if (best == taste.object_members.size()) {
        wrong_type(taste.member, token, "text in double quotes, or an object with a name");
    } else if (has_room(token, into.size())) {
        into.push_back(text);
    }
    return true;
}

bool ProductJson::Walk::properties(ondemand::value& value) {
    if (!value.raw_json_token().starts_with('[')) return property(value);
    ondemand::array array;
    error_ = value.get_array().get(array);
    if (error_ != simdjson::SUCCESS) return false;
    for (auto result : array) {
        ondemand::value element;
        error_ = std::move(result).get(element);
        if (error_ != simdjson::SUCCESS || !property(element)) return false;
    }
    return true;
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
    ondemand::array array;
    error_ = value.get_array().get(array);
    if (error_ != simdjson::SUCCESS) return false;
    for (auto result : array) {
        ondemand::value element;
        error_ = std::move(result).get(element);
        if (error_ != simdjson::SUCCESS || !offer(element)) return false;
    }
    return true;
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

// Holds a value that is not read to the grammar, into which simdjson does not look. The iteration passes it afterwards.
bool ProductJson::Walk::pass_over(ondemand::value& value) {
    const std::string_view token = trim_end(value.raw_json_token());
    if (token.starts_with('{') || token.starts_with('[')) {
        return scanner_.end_of_value(parsed_, offset_of(token.data())).has_value();
    }
    if (!token.starts_with('"')) return scalar(token);
    if (!take_string(value)) return false;
    // simdjson has seen to quotes, control characters and UTF-8; only escapes can be wrong.
    return token.find('\\') == std::string_view::npos || scalar(token);
}

// Whether `token` is one value and nothing else.
bool ProductJson::Walk::scalar(std::string_view token) {
    return scanner_.end_of_value(token, 0) == token.size();
}

// The iteration would take a string that it has to skip for a name, if a colon followed.
bool ProductJson::Walk::take_string(ondemand::value& value) {
    error_ = value.get_raw_json_string().error();
    return error_ == simdjson::SUCCESS;
}

bool ProductJson::Walk::string_text(ondemand::value& value, Text& into) {
    const std::string_view token = trim_end(value.raw_json_token());
    if (token.size() < 2 || token.back() != '"' || !take_string(value)) return false;
    const std::string_view body = token.substr(1, token.size() - 2);
    into = as_written(body, Writing::json_string);
    if (body.find('\\') == std::string_view::npos) return true;
    const auto text = unescape(body, arena_);
    if (!text) return false;
    into.words = *text;
    if (into.words.find('\0') != std::string_view::npos && !std::exchange(has_nul_, true)) {
        warn("nul-byte", token, "this text holds a NUL character", "remove \\u0000");
    }
    return true;
}

// REQUIRES: `token` lies in `parsed_`.
Text ProductJson::Walk::as_written(std::string_view token, Writing writing) const {
    return {token, {offset_of(token.data()), static_cast<std::uint32_t>(token.size()), writing}};
}

bool ProductJson::Walk::key_text(const ondemand::field& field, std::string_view& into) {
    const char* const begin = field.key().raw();
    const std::string_view rest = parsed_.substr(offset_of(begin));
    // Names are short; a loop beats the calls that a library search takes for each byte.
    std::size_t end = 0;
    while (end < rest.size() && rest[end] != '"' && rest[end] != '\\') ++end;
    if (end == rest.size()) return false;
    if (rest[end] == '"') {
        into = rest.substr(0, end);
        return true;
    }
    while (end < rest.size() && rest[end] != '"') end += rest[end] == '\\' ? 2U : 1U;
    if (end >= rest.size()) return false;
    const auto text = unescape(rest.substr(0, end), arena_);
    if (!text) return false;
    into = *text;
    return true;
}

void ProductJson::Walk::add_field(std::string_view name, const Text& text) {
    if (text.words.empty() || !has_room(text.words, listing_->fields.size())) return;
    listing_->fields.push_back({name, text.words, text.origin});
    listing_->fields.back().origin.start += text_.start;
}

bool ProductJson::Walk::has_room(std::string_view token, std::size_t used) {
    if (used < kMaxFields) return true;
    if (!too_many_) {
        too_many_ = true;
        const bool in_record = token.data() >= parsed_.data() && token.data() < parsed_.data() + parsed_.size();
        sink_->report_at(
            Issue::Severity::error, "record-too-large", text_, in_record ? offset_of(token.data()) : 0,
            "this record has more than " + std::to_string(kMaxFields) + " texts; those from here on are not read",
            "split the record");
    }
    return false;
}

void ProductJson::Walk::wrong_type(std::string_view member, std::string_view token, std::string_view expected) {
    std::string message = "\"";
    message += member;
    message += "\" should be ";
    message += expected;
    message += ", but this is ";
    message += kind_of(token.front());
    message += " and is not read";
    warn("wrong-member-type", token, std::move(message), "write it as schema.org does, or leave it out");
}

void ProductJson::Walk::warn(std::string_view code, std::string_view token, std::string message, std::string hint) {
    sink_->report_at(Issue::Severity::warning, code, text_, offset_of(token.data()), std::move(message),
                     std::move(hint));
}

}  // namespace grainside::listing
