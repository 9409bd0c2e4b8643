// How ProductJson walks through a record: what a record is as JSON (product_json.cpp), which members it has
// (product_members.cpp), and which values those take (product_values.cpp).
#ifndef GRAINSIDE_LISTING_PRODUCT_WALK_H
#define GRAINSIDE_LISTING_PRODUCT_WALK_H

#include <simdjson.h>

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "listing/json_scanner.h"
#include "listing/product_json.h"
#include "listing/text_arena.h"

namespace grainside::listing {

// What stands at a first byte, in words: "a text", "an object".
std::string_view kind_of_json(char first) noexcept;

// Functions return false where the text is not JSON; the scanner then finds out what and where.
class ProductJson::Walk {
public:
    explicit Walk(std::string source_name) : source_name_(std::move(source_name)) {}

    Outcome read(const RecordText& text, Role role, std::uint64_t record, Listing& listing, IssueSink& sink);
    const RecordText& graph() const noexcept { return graph_; }

private:
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

    // Gives every element of a list to `each`, until one is false; false then, and where the list breaks off.
    template <typename Each>
    bool each_element(simdjson::ondemand::value& list, Each each) {
        simdjson::ondemand::array array;
        error_ = list.get_array().get(array);
        if (error_ != simdjson::SUCCESS) return false;
        for (auto result : array) {
            simdjson::ondemand::value element;
            error_ = std::move(result).get(element);
            if (error_ != simdjson::SUCCESS || !each(element)) return false;
        }
        return true;
    }

    // product_members.cpp
    bool product();
    bool member(Member member, simdjson::ondemand::value& value);
    bool field_texts(std::string_view name, simdjson::ondemand::value& value);
    bool properties(simdjson::ondemand::value& value);
    bool property(simdjson::ondemand::value& value);
    bool offers(simdjson::ondemand::value& value);
    bool offer(simdjson::ondemand::value& value);
    bool regions(simdjson::ondemand::value& value);
    bool graph_member(simdjson::ondemand::value& value);

    // product_values.cpp
    bool first_text(const Taste& taste, simdjson::ondemand::value& value, std::string_view& into);
    bool texts(const Taste& taste, simdjson::ondemand::value& value, std::vector<Text>& into, bool in_list = false);
    bool object_text(const Taste& taste, simdjson::ondemand::value& value, std::vector<Text>& into);
    bool pass_over(simdjson::ondemand::value& value);
    bool scalar(std::string_view token);
    bool take_string(simdjson::ondemand::value& value);
    bool string_text(simdjson::ondemand::value& value, Text& into);
    Text as_written(std::string_view token, Writing writing) const;
    bool key_text(const simdjson::ondemand::field& field, std::string_view& into);
    void add_field(std::string_view name, const Text& text);
    bool has_room(std::string_view token, std::size_t used);
    void wrong_type(std::string_view member, std::string_view token, std::string_view expected);
    void warn(std::string_view code, std::string_view token, std::string message, std::string hint);

    // product_json.cpp
    simdjson::error_code index();
    void repair();
    void report_broken();
    std::size_t offset_of(const char* at) const { return static_cast<std::size_t>(at - parsed_.data()); }

    std::string source_name_;
    simdjson::ondemand::parser parser_;
    simdjson::ondemand::document document_;
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

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PRODUCT_WALK_H
