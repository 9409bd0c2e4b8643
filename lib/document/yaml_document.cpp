#include "document/yaml_document.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <exception>
#include <istream>
#include <utility>

#include "document/bounded_stream.h"
#include "document/inert_text.h"
#include "document/source_check.h"
#include "document/tree_builder.h"
#include "document/utf8.h"

namespace grainside::document {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

constexpr std::string_view kUseSpaces = "indent with spaces, not with tabs";

// What to do about the parser's commoner complaints; empty for the others.
std::string_view advice_on(std::string_view complaint) {
    namespace said = YAML::ErrorMsg;
    if (complaint == said::MAP_VALUE) return "put text that holds `: ` in quotes, or mend the indentation";
    if (complaint == said::END_OF_MAP) return "each line here must read `key: value` and begin below the first key";
    if (complaint == said::END_OF_SEQ) return "each item must begin with `- ` below the first dash";
    if (complaint == said::TAB_IN_INDENTATION) return kUseSpaces;
    if (complaint == said::UNKNOWN_TOKEN) return "put text that begins with a sign in quotes";
    if (complaint == said::EOF_IN_SCALAR) return "a quote is opened and never closed";
    if (complaint == said::BLOCK_ENTRY) return "begin the list on a line of its own";
    return {};
}

// Hands yaml-cpp's events on. Its marks count from 0.
class EventAdapter : public YAML::EventHandler {
public:
    EventAdapter(std::string_view source, BoundedStream& stream, TreeBuilder& builder)
        : source_(source), stream_(stream), builder_(builder) {}

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (++documents_ == 1) return;
        check_stream();
        // The parser takes whatever is left over for another document.
        if (source_.substr(at(mark).offset).starts_with("---")) {
            builder_.fault(at(mark), "many-documents", "the file holds more than one document", "remove the `---`");
        } else {
            builder_.fault(at(mark), "yaml-syntax", "this does not belong to the value before it");
        }
        throw StopReading();
    }
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) override {
        arrive(mark);
        builder_.null(at(mark));
    }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) override {
        arrive(mark);
        refuse_alias(mark);
        builder_.refused(at(mark));
    }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t /*anchor*/,
                  const std::string& value) override {
        arrive(mark);
        refuse_tag(mark, tag);
        refuse_open_quote(mark);
        refuse_latin_escapes(mark, value);
        builder_.scalar(at(mark), value);
    }

    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t /*anchor*/,
                         YAML::EmitterStyle::value /*style*/) override {
        arrive(mark);
        refuse_tag(mark, tag);
        builder_.open(at(mark), NodeKind::sequence);
    }
    void OnSequenceEnd() override { builder_.close(); }

    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t /*anchor*/,
                    YAML::EmitterStyle::value /*style*/) override {
        arrive(mark);
        refuse_tag(mark, tag);
        builder_.open(at(mark), NodeKind::mapping);
    }
    void OnMapEnd() override { builder_.close(); }

    void OnAnchor(const YAML::Mark& mark, const std::string& /*name*/) override { refuse_alias(mark); }

    void on_syntax_error(const YAML::ParserException& error) {
        if (stream_.ended_early()) {
            report_stretch();
            return;
        }
        if (error.msg == YAML::ErrorMsg::UNKNOWN_ANCHOR) {
            refuse_alias(error.mark);
            return;
        }
        const SourceMark mark = at(error.mark);
        const bool unclosed =
            error.msg == YAML::ErrorMsg::END_OF_SEQ_FLOW || error.msg == YAML::ErrorMsg::END_OF_MAP_FLOW;
        // At the end of the input the parser's mark may be anywhere.
        if (const auto opened = builder_.innermost();
            unclosed && opened && (is_at_end(mark) || mark.offset < opened->offset)) {
            builder_.fault(*opened, "yaml-syntax", "this bracket is not closed");
            return;
        }
        if (is_about_escape(error.msg)) {
            builder_.fault(backslash_before(mark), "yaml-syntax", "YAML knows no such escape sequence",
                           "double the backslash, or use single quotes");
            return;
        }
        builder_.fault(mark, "yaml-syntax", "this is not valid YAML: " + inert_text(error.msg),
                       std::string(is_indented_with_tab(mark) ? kUseSpaces : advice_on(error.msg)));
    }

    // Reports a text that was cut off without a complaint of the parser.
    void on_end() {
        if (stream_.ended_early()) report_stretch();
    }

private:
    SourceMark at(const YAML::Mark& mark) const {
        if (mark.is_null()) return {};
        return {{static_cast<std::uint32_t>(mark.line) + 1, static_cast<std::uint32_t>(mark.column) + 1},
                std::min(static_cast<std::size_t>(mark.pos), source_.size())};
    }

    // Where the text was cut off, what the parser makes of the end is not to be believed.
    void check_stream() {
        if (!stream_.ended_early()) return;
        report_stretch();
        throw StopReading();
    }

    void arrive(const YAML::Mark& mark) {
        check_stream();
        stream_.made_progress();
        last_ = at(mark);
    }

    void report_stretch() {
        builder_.fault(
            last_, "too-large",
            "a text, list or comment that follows is longer than " + std::to_string(kMaxYamlStretch >> 10) + " KiB",
            "split it");
    }

    bool is_at_end(const SourceMark& mark) const {
        return source_.find_first_not_of(" \t\r\n", mark.offset) == std::string_view::npos;
    }

    static bool is_about_escape(std::string_view complaint) {
        return complaint.starts_with(YAML::ErrorMsg::INVALID_ESCAPE) || complaint == YAML::ErrorMsg::INVALID_HEX ||
               complaint.starts_with(YAML::ErrorMsg::INVALID_UNICODE);
    }

    // The parser marks some place behind the backslash.
    SourceMark backslash_before(SourceMark mark) const {
        const std::size_t backslash = source_.substr(0, mark.offset).rfind('\\');
        if (backslash == std::string_view::npos || mark.offset - backslash >= mark.place.column) return mark;
        mark.place.column -= static_cast<std::uint32_t>(mark.offset - backslash);
        mark.offset = backslash;
        return mark;
    }

    bool is_indented_with_tab(const SourceMark& mark) const {
        if (mark.place.column == 0 || mark.offset + 1 < mark.place.column) return false;
        const std::string_view line = source_.substr(mark.offset + 1 - mark.place.column);
        return line.substr(0, line.find_first_not_of(" \t")).find('\t') != std::string_view::npos;
    }

    // The parser takes the end of the input for a closing quote.
    void refuse_open_quote(const YAML::Mark& mark) {
        const SourceMark begin = at(mark);
        const std::string_view text = source_.substr(begin.offset);
        if (!text.starts_with('"') && !text.starts_with('\'')) return;
        const bool escapes = text[0] == '"';
        for (std::size_t i = 1; i < text.size(); ++i) {
            if (text[i] == '\\' && escapes) {
                ++i;
            } else if (text[i] == text[0]) {
                const bool doubled = !escapes && i + 1 < text.size() && text[i + 1] == text[0];
                if (!doubled) return;
                ++i;
            }
        }
        builder_.fault(begin, "yaml-syntax", "this quote is not closed");
    }

    // The parser writes the escapes \N and \_ as single bytes of Latin-1; nothing else can spoil a text whose source
    // was UTF-8.
    void refuse_latin_escapes(const YAML::Mark& mark, const std::string& value) {
        if (is_utf8(value)) return;
        builder_.fault(at(mark), "yaml-syntax", "the escapes \\N and \\_ are not read here",
                       "write \\u0085 for a next line, \\u00a0 for a no-break space");
    }

    void refuse_alias(const YAML::Mark& mark) {
        builder_.fault(at(mark), "alias", "anchors and aliases are not allowed", "write the value out");
    }

    // The parser calls plain nodes "?" and quoted ones "!", which can be written as well.
    void refuse_tag(const YAML::Mark& mark, const std::string& tag) {
        const std::size_t offset = at(mark).offset;
        const bool written = offset < source_.size() && source_[offset] == '!';
        if (!written && (tag.empty() || tag == "?" || tag == "!")) return;
        builder_.fault(at(mark), "tag", "tags are not allowed", "remove the word that begins with `!`");
    }

    std::string_view source_;
    BoundedStream& stream_;
    TreeBuilder& builder_;
    SourceMark last_{{1, 1}, 0};  // the last event
    int documents_ = 0;
};

}  // namespace

std::optional<Document> parse_yaml(std::string file, std::string text, Faults& faults) {
    if (text.size() > kMaxYamlBytes) {
        Issue issue;
        issue.code = "too-large";
        issue.file = std::move(file);
        issue.message = "the file is larger than " + std::to_string(kMaxYamlBytes >> 20) + " MiB";
        issue.hint = "split it into several files";
        faults.add(std::move(issue));
        return std::nullopt;
    }
    if (text.starts_with(kByteOrderMark)) text.erase(0, kByteOrderMark.size());
    if (!check_source(file, text, faults)) return std::nullopt;

    TreeBuilder builder(file, text, faults);
    BoundedStream bounded(text, kMaxYamlStretch);
    EventAdapter adapter(text, bounded, builder);
    try {
        std::istream stream(&bounded);
        YAML::Parser parser(stream);
        while (parser.HandleNextDocument(adapter)) continue;
        adapter.on_end();
    } catch (const StopReading&) {  // the reason was reported
    } catch (const YAML::ParserException& error) {
        adapter.on_syntax_error(error);
    } catch (const std::exception& error) {
        builder.fault({}, "yaml-syntax", std::string("the file cannot be parsed: ") + error.what());
    }
    if (builder.failed()) return std::nullopt;
    return builder.finish();
}

}  // namespace grainside::document
