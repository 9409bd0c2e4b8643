// A strict reader of RFC 8259 grammar that builds nothing: it says where a value ends, or what is wrong where.
//
// simdjson decides structure at several times this speed but tells neither places nor reasons, and its on-demand reader
// does not look into members that nobody asks for. This scanner explains what the other refuses and looks into those.
#ifndef GRAINSIDE_LISTING_JSON_SCANNER_H
#define GRAINSIDE_LISTING_JSON_SCANNER_H

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace grainside::listing {

struct JsonFault {
    std::size_t offset = 0;
    std::string_view message;  // of static storage, like the hint
    std::string_view hint;
};

// UTF-8 is not checked. No recursion, so depth is bounded by memory only (one bit a level). Not thread-safe.
class JsonScanner {
public:
    // The end of the value that begins at `from`, or nothing, and then `fault` says why.
    std::optional<std::size_t> end_of_value(std::string_view text, std::size_t from);
    // Whether `text` is one value with nothing but white space around it; if not, `fault` says why.
    bool is_document(std::string_view text);

    const JsonFault& fault() const noexcept { return fault_; }

private:
    // What comes after a step: nothing, because it failed; a value; or nothing, because one is complete.
    enum class Step { failed, value_next, value_done };

    bool value();
    Step begin_value();
    Step after_value();
    bool member_name();
    bool string();
    bool escape();
    bool number();
    bool word(std::string_view expected);
    bool digits();
    std::optional<unsigned> hex4(std::size_t from) const;
    void skip_space();
    bool at_end() const { return at_ >= text_.size(); }
    // '\0' at the end; `at_end` tells it from a NUL byte.
    char peek() const { return at_end() ? '\0' : text_[at_]; }
    bool fail(std::size_t offset, std::string_view message, std::string_view hint);
    bool fail_between(bool in_object);
    bool fail_value();

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<bool> in_object_;  // one a container that is open
    JsonFault fault_;
};

// RFC 8259 section 2: space, tab, line feed, carriage return.
constexpr bool is_json_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_SCANNER_H
