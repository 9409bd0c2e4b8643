#include "listing/wrapped_list.h"

#include <algorithm>
#include <optional>

#include "listing/product_type.h"

namespace grainside::listing {
namespace {

constexpr std::size_t kMostShown = 60;

std::size_t behind_space(std::string_view text, std::size_t at) {
    while (at < text.size() && is_json_space(text[at])) ++at;
    return at;
}

struct Member {
    std::string_view name;
    std::size_t name_at = 0;
    std::size_t value = 0;
    std::optional<std::size_t> end;
};

// Goes through the members of an object as far as it can be read.
class MemberWalk {
public:
    MemberWalk(std::string_view object, JsonScanner& scanner) : object_(object), scanner_(&scanner), at_(1) {}

    // False at the end of the object, behind a member without an end, and where something else should stand.
    bool next(Member& member) {
        at_ = behind_space(object_, at_);
        if (!is_first_ && at_ < object_.size() && object_[at_] == ',') at_ = behind_space(object_, at_ + 1);
        is_first_ = false;
        if (at_ >= object_.size() || object_[at_] != '"') return false;
        member.name_at = at_;
        const auto name_end = scanner_->end_of_value(object_, at_);
        if (!name_end) return false;
        member.name = object_.substr(at_ + 1, *name_end - at_ - 2);
        at_ = behind_space(object_, *name_end);
        if (at_ >= object_.size() || object_[at_] != ':') return false;
        member.value = at_ = behind_space(object_, at_ + 1);
        member.end = scanner_->end_of_value(object_, at_);
        at_ = member.end.value_or(object_.size());
        return true;
    }

private:
    std::string_view object_;
    JsonScanner* scanner_;
    std::size_t at_;
    bool is_first_ = true;
};

bool has_product_type(std::string_view value) {
    for (std::size_t at = value.find('"'); at != std::string_view::npos;) {
        const std::size_t end = value.find('"', at + 1);
        if (end == std::string_view::npos) return false;
        if (is_product_type(value.substr(at + 1, end - at - 1))) return true;
        at = value.find('"', end + 1);
    }
    return false;
}

bool is_of_a_product(std::string_view object, const Member& member) {
    if (makes_a_product(member.name) || member.name.find('\\') != std::string_view::npos) return true;
    return member.name == "@type" && member.end &&
           has_product_type(object.substr(member.value, *member.end - member.value));
}

bool begins_with_product(std::string_view list, JsonScanner& scanner) {
    const std::string_view first = list.substr(behind_space(list, 1));
    MemberWalk walk(first, scanner);
    for (Member member; walk.next(member);) {
        if (is_of_a_product(first, member)) return true;
    }
    return false;
}

bool is_list(std::string_view value) {
    return value.starts_with('[');
}

bool is_list_of_objects(std::string_view value) {
    return is_list(value) && value.substr(behind_space(value, 1)).starts_with('{');
}

}  // namespace

WrappedList find_wrapped_list(std::string_view object, JsonScanner& scanner) {
    WrappedList found;
    bool is_product = false;
    MemberWalk walk(object, scanner);
    for (Member member; walk.next(member);) {
        const std::string_view value = object.substr(member.value);
        WrappedList list{member.name, {}, member.name_at, member.value, member.end.value_or(0)};
        if (member.name == "@graph" && is_list(value)) {
            list.is_graph = true;
            return list;
        }
        is_product = is_product || is_of_a_product(object, member);
        if (is_product || !is_list_of_objects(value)) continue;
        list.has_products = begins_with_product(value, scanner);
        if (found.name.empty() || (list.has_products && !found.has_products)) {
            found = list;
        } else if (list.has_products == found.has_products && found.next_name.empty()) {
            found.next_name = member.name;
        }
    }
    return is_product ? WrappedList{} : found;
}

std::string shown_name(std::string_view name) {
    std::string shown = "\"";
    shown += name.substr(0, kMostShown);
    shown += name.size() > kMostShown ? "...\"" : "\"";
    return shown;
}

}  // namespace grainside::listing
