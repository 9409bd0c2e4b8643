#include "listing/page_encoding.h"

#include <iconv.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

#include "document/character_reference.h"
#include "listing/html_parser.h"
#include "listing/json_string.h"
#include "listing/utf8_check.h"
#include "listing/whole_text.h"

namespace grainside::listing {
namespace {

// HTML standard: a <meta> that states the encoding stands in the first 1024 bytes. Saved pages put notes before it.
constexpr std::size_t kMetaBytes = 4096;
constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

struct Label {
    std::string_view label;  // in a page, lower case
    const char* name;        // for iconv; nullptr: one of those that we read ourselves
};

// Labels and what they mean: Encoding standard, "names and labels", from memory; those that shop pages still state.
// Only what stands here reaches iconv, which would take a name for a file of the system.
constexpr Label kLabels[] = {
    {"utf-8", nullptr},
    {"utf8", nullptr},
    {"windows-1252", nullptr},
    {"cp1252", nullptr},
    {"iso-8859-1", nullptr},
    {"latin1", nullptr},
    {"us-ascii", nullptr},
    {"ascii", nullptr},
    {"windows-1250", "CP1250"},
    {"windows-1251", "CP1251"},
    {"windows-1253", "CP1253"},
    {"windows-1254", "CP1254"},
    {"iso-8859-9", "CP1254"},
    {"windows-1255", "CP1255"},
    {"windows-1256", "CP1256"},
    {"windows-1257", "CP1257"},
    {"windows-1258", "CP1258"},
    {"iso-8859-2", "ISO-8859-2"},
    {"iso-8859-5", "ISO-8859-5"},
    {"iso-8859-7", "ISO-8859-7"},
    {"iso-8859-15", "ISO-8859-15"},
    {"koi8-r", "KOI8-R"},
    {"koi8-u", "KOI8-U"},
    {"shift_jis", "CP932"},
    {"shift-jis", "CP932"},
    {"x-sjis", "CP932"},
    {"euc-jp", "EUC-JP"},
    {"euc-kr", "CP949"},
    {"ks_c_5601-1987", "CP949"},
    {"gb2312", "GB18030"},
    {"gbk", "GB18030"},
    {"gb18030", "GB18030"},
    {"big5", "BIG5-HKSCS"},
};

// "text/html; charset=x" of <meta http-equiv>.
std::string_view charset_in(std::string_view content) {
    constexpr std::string_view kKey = "charset=";
    for (std::size_t at = 0; at + kKey.size() <= content.size(); ++at) {
        if (!is_same_word(content.substr(at, kKey.size()), kKey)) continue;
        const std::string_view rest = content.substr(at + kKey.size());
        return rest.substr(0, rest.find_first_of("; \t"));
    }
    return {};
}

// Looks for the first <meta> that states a label which we know.
class MetaSearch final : public HtmlEvents {
public:
    explicit MetaSearch(std::string_view page) : parser_(page, false, *this) {}

    const Label* run() {
        parser_.run();
        return found_;
    }

    bool before_start(const ElementKind& element, bool /*is_empty*/) override {
        if (element.element == Element::body) parser_.stop();
        return element.element == Element::meta || element.is(html::kRaw);
    }
    bool start(const HtmlTag& tag) override {
        if (tag.element.element != Element::meta || found_ != nullptr) return false;
        const std::string_view stated =
            tag.has(Attribute::charset) ? tag.value(Attribute::charset) : charset_in(tag.value(Attribute::content));
        const auto* const found = std::find_if(std::begin(kLabels), std::end(kLabels),
                                               [&](const Label& label) { return is_same_word(label.label, stated); });
        if (found != std::end(kLabels)) {
            found_ = found;
            parser_.stop();
        }
        return false;
    }
    void end_tag(const ElementKind& /*element*/) override {}
    void end() override {}
    void text(std::string_view /*text*/) override {}
    void raw_text(const ElementKind& /*element*/, std::size_t /*at*/, std::string_view /*text*/) override {}

private:
    HtmlParser parser_;
    const Label* found_ = nullptr;
};

const Label* stated_label(std::string_view page) {
    return MetaSearch(page.substr(0, kMetaBytes)).run();
}

void add_windows_1252(std::string_view bytes, std::string& out) {
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x80) {
            out += c;
            continue;
        }
        std::array<char, 4> buffer{};
        char* const end = put_utf8(buffer.data(), static_cast<unsigned>(document::windows_1252_character(byte)));
        out.append(buffer.data(), end);
    }
}

class Converter {
public:
    explicit Converter(const char* name) : handle_(iconv_open("UTF-8", name)) {}
    Converter(const Converter&) = delete;
    Converter& operator=(const Converter&) = delete;
    ~Converter() {
        if (is_open()) iconv_close(handle_);
    }

    // iconv_open says so by a pointer of all ones.
    bool is_open() const { return handle_ != reinterpret_cast<iconv_t>(-1); }  // NOLINT(performance-no-int-to-ptr)

    void convert(std::string_view bytes, std::string& out) {
        // iconv does not write to its input, though it does not say so.
        char* from = const_cast<char*>(bytes.data());
        std::size_t left = bytes.size();
        std::array<char, 16384> buffer{};
        while (left > 0) {
            char* to = buffer.data();
            std::size_t room = buffer.size();
            const std::size_t before = left;
            const std::size_t result = iconv(handle_, &from, &left, &to, &room);
            out.append(buffer.data(), to);
            const bool is_full = room < 16 && before != left;
            if (result == static_cast<std::size_t>(-1) && !is_full && left > 0) {
                out += kReplacement;
                ++from;
                --left;
            }
        }
    }

private:
    iconv_t handle_;
};

bool is_ascii(std::string_view text) {
    return std::none_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

}  // namespace

RecordText page_in_utf8(const RecordText& page, bool has_mark, std::string& storage, IssueSink& sink) {
    const Label* const label = has_mark ? nullptr : stated_label(page.bytes);
    const bool is_utf8 = find_invalid_utf8(page.bytes, 0).length == 0;
    const bool states_other = label != nullptr && label->name != nullptr;
    const bool states_utf8 = has_mark || (label != nullptr && !states_other && label->label.starts_with("utf"));
    if (states_utf8 || (is_utf8 && !states_other) || is_ascii(page.bytes)) {
        warn_of_odd_bytes(page, sink);
        return page;
    }
    storage.clear();
    storage.reserve(page.bytes.size() + page.bytes.size() / 8);
    if (states_other) {
        Converter converter(label->name);
        if (converter.is_open()) {
            converter.convert(page.bytes, storage);
        } else {
            sink.report(Issue::Severity::warning, "not-utf8", {1, 1},
                        "this page states " + std::string(label->label) + ", which this system cannot read",
                        "convert it: iconv -t UTF-8");
            add_windows_1252(page.bytes, storage);
        }
    } else {
        if (label == nullptr) {
            sink.report_at(Issue::Severity::warning, "not-utf8", page, find_invalid_utf8(page.bytes, 0).offset,
                           "this page is not UTF-8 and does not say what it is; it is read as windows-1252",
                           "state it: <meta charset=\"...\">");
        }
        add_windows_1252(page.bytes, storage);
    }
    const std::size_t nul = storage.find('\0');
    RecordText converted;
    converted.bytes = converted.around = storage;
    converted.origin = page.origin;
    if (nul != std::string::npos) {
        sink.report_at(Issue::Severity::warning, "nul-byte", converted, nul, "this text holds a NUL byte",
                       "remove the byte");
    }
    return converted;
}

}  // namespace grainside::listing
