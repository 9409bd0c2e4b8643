// A small streaming writer of JSON: members and elements in the order of the calls, commas set by itself.
//
//     std::string out;
//     JsonWriter json(out);
//     json.begin_object();
//     json.member("rules", std::uint64_t{3});
//     json.end_object();      // {"rules":3}
//
// Writes what it is told: the caller keeps begin and end in pairs and keys unique. `out` must outlive the writer.
#ifndef GRAINSIDE_REPORT_JSON_WRITER_H
#define GRAINSIDE_REPORT_JSON_WRITER_H

#include <cstdint>
#include <string>
#include <string_view>

#include "report/json_text.h"

namespace grainside::report {

class JsonWriter {
public:
    explicit JsonWriter(std::string& out) : out_(out) {}

    void begin_object() { open('{'); }
    void end_object() { close('}'); }
    void begin_array() { open('['); }
    void end_array() { close(']'); }

    // What comes next is its value.
    void key(std::string_view name) {
        separate();
        append_json_string(out_, name);
        out_ += ':';
        needs_comma_ = false;
    }
    void value(std::string_view text) {
        separate();
        append_json_string(out_, text);
    }
    void value(std::uint64_t number) {
        separate();
        append_json_number(out_, number);
    }
    void value(double number) {
        separate();
        append_json_number(out_, number);
    }
    void value_bool(bool truth) {
        separate();
        out_ += truth ? "true" : "false";
    }
    // A value that is JSON already.
    void raw_value(std::string_view json) {
        separate();
        out_ += json;
    }
    void value_null() {
        separate();
        out_ += "null";
    }

    template <typename Value>
    void member(std::string_view name, const Value& what) {
        key(name);
        value(what);
    }
    // Left out where the text is empty.
    void optional_member(std::string_view name, std::string_view text) {
        if (!text.empty()) member(name, text);
    }

private:
    void open(char bracket) {
        separate();
        out_ += bracket;
        needs_comma_ = false;
    }
    void close(char bracket) {
        out_ += bracket;
        needs_comma_ = true;
    }
    void separate() {
        if (needs_comma_) out_ += ',';
        needs_comma_ = true;
    }

    std::string& out_;
    bool needs_comma_ = false;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_JSON_WRITER_H
