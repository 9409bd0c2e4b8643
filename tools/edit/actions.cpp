// actions_at: what can be done about the remarks at a place.
#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "edit/answers.h"
#include "edit/concession_entry.h"
#include "edit/listing_remarks.h"
#include "report/json_writer.h"

namespace grainside::tools::edit {
namespace {

using report::JsonWriter;

constexpr std::string_view kQuickFix = "quickfix";
constexpr std::string_view kFixAll = "source.fixAll.grainside";

// 'CodeActionContext.only': a kind stands for itself and for those below it.
bool asks_for(const std::optional<Json>& asked, std::string_view kind, bool without_asking) {
    const auto only = list_of(member(asked, "only"));
    if (!only) return without_asking;
    for (const Json one : *only) {
        const std::string_view wanted = text_of(one).value_or("?");
        if (kind.starts_with(wanted) &&
            (wanted.empty() || wanted.size() == kind.size() || kind[wanted.size()] == '.')) {
            return true;
        }
    }
    return false;
}

class ActionWriter {
public:
    ActionWriter(const OpenDocument& document, const TextSpan& where, const std::optional<Json>& asked,
                 Workspace& workspace, const ClientAbilities& client, std::string& out)
        : document_(document),
          where_(where),
          asked_(asked),
          workspace_(workspace),
          client_(client),
          out_(out),
          json_(out) {}

    void write() {
        json_.begin_array();
        if (asks_for(asked_, kQuickFix, true)) {
            for (const WordingEdit& edit : workspace_.wordings(document_, where_)) write_wording(edit);
            write_meant_names();
            write_concessions();
        }
        // Not unasked: it reads the whole document at each step of the caret.
        if (asks_for(asked_, kFixAll, false)) write_all_wordings();
        json_.end_array();
    }

private:
    void begin(const std::string& title, std::string_view kind) {
        json_.begin_object();
        json_.member("title", std::string_view(title));
        json_.member("kind", kind);
    }

    void write_wording(const WordingEdit& edit) {
        const std::string words = shown_words(edit.words);
        if (!edit.left_out.empty() || edit.wording.empty()) {
            begin("Leave out '" + (edit.left_out.empty() ? words : shown_words(edit.left_out)) + "'", kQuickFix);
        } else {
            begin("Write '" + shown_words(edit.wording) + "' instead of '" + words + "'", kQuickFix);
        }
        write_answered(edit.span, edit.code);
        json_.key("isPreferred");
        json_.value_bool(edit.standing == Standing::best);
        json_.key("edit");
        write_edits({edit});
        json_.end_object();
    }

    void write_meant_names() {
        for (const Remark& remark : workspace_.remarks(document_)) {
            if (!remark.meant || !remark.span.meets(where_)) continue;
            const TextSpan& span = remark.meant->span;
            const std::string_view name = std::string_view(document_.text()).substr(span.begin, span.end - span.begin);
            begin("Write '" + remark.meant->name + "' instead of '" + shown_words(name) + "'", kQuickFix);
            write_answered(remark.span, remark.code);
            json_.key("isPreferred");
            json_.value_bool(true);
            json_.key("edit");
            WordingEdit edit;
            edit.span = span;
            edit.new_text = remark.meant->name;
            write_edits({edit});
            json_.end_object();
        }
    }

    void write_all_wordings() {
        std::vector<WordingEdit> edits = workspace_.wordings(document_, {0, document_.text().size()});
        std::erase_if(edits, [](const WordingEdit& edit) { return edit.standing == Standing::by_choice; });
        if (edits.empty()) return;
        begin("Take every better wording", kFixAll);
        json_.key("edit");
        write_edits(edits);
        json_.end_object();
    }

    // The client's own diagnostics that the action answers, as they came.
    void write_answered(const TextSpan& span, std::string_view code) {
        const auto diagnostics = list_of(member(asked_, "diagnostics"));
        if (!diagnostics) return;
        bool any = false;
        for (const Json diagnostic : *diagnostics) {
            const auto range = document_.places().read_range(member(diagnostic, "range"));
            if (!range || !range->meets(span) || text_of(member(diagnostic, "code")).value_or("") != code) continue;
            if (!any) {
                json_.key("diagnostics");
                out_ += '[';
            } else {
                out_ += ',';
            }
            any = true;
            out_ += simdjson::minify(diagnostic);
        }
        if (any) json_.end_array();
    }

    // 'WorkspaceEdit' of this document.
    void write_edits(const std::vector<WordingEdit>& edits) {
        const auto version = static_cast<double>(document_.version());
        begin_document_edits(document_.uri(), &version);
        for (const WordingEdit& edit : edits) {
            json_.begin_object();
            json_.key("range");
            document_.places().write_range(json_, edit.span);
            json_.member("newText", std::string_view(edit.new_text));
            json_.end_object();
        }
        end_document_edits();
    }

    // `version` nullptr: of a file that is not open.
    void begin_document_edits(std::string_view uri, const double* version, bool create = false) {
        json_.begin_object();
        if (!client_.document_changes) {
            json_.key("changes");
            json_.begin_object();
            json_.key(uri);
            json_.begin_array();
            return;
        }
        json_.key("documentChanges");
        json_.begin_array();
        if (create) {
            json_.begin_object();
            json_.member("kind", std::string_view("create"));
            json_.member("uri", uri);
            json_.end_object();
        }
        json_.begin_object();
        json_.key("textDocument");
        json_.begin_object();
        json_.member("uri", uri);
        json_.key("version");
        if (version != nullptr) {
            json_.value(*version);
        } else {
            json_.value_null();
        }
        json_.end_object();
        json_.key("edits");
        json_.begin_array();
    }

    void end_document_edits() {
        json_.end_array();
        json_.end_object();
        if (client_.document_changes) json_.end_array();
        json_.end_object();
    }

    void write_concessions() {
        AgreedFile& agreed = workspace_.agreed();
        if (!agreed.is_named() || (!agreed.exists() && !(client_.document_changes && client_.creates_files))) return;
        for (const Remark& remark : workspace_.remarks(document_)) {
            if (remark.concedable && remark.span.meets(where_)) write_concession(remark, agreed);
        }
    }

    void write_concession(const Remark& remark, const AgreedFile& agreed) {
        begin("Let '" + shown_words(remark.concedable->words) + "' stand for a while: add a concession", kQuickFix);
        write_answered(remark.span, remark.code);
        json_.key("edit");
        const OpenDocument* open = workspace_.find(agreed.uri());
        const double version = open == nullptr ? 0 : static_cast<double>(open->version());
        begin_document_edits(agreed.uri(), open == nullptr ? nullptr : &version, !agreed.exists());
        const std::string text(agreed.text());
        const TextPlaces places(text, client_.encoding);
        json_.begin_object();
        json_.key("range");
        places.write_range(json_, {text.size(), text.size()});
        json_.member("newText", std::string_view(concession_entry(*remark.concedable, text)));
        json_.end_object();
        end_document_edits();
        json_.end_object();
    }

    const OpenDocument& document_;
    TextSpan where_;
    const std::optional<Json>& asked_;
    Workspace& workspace_;
    const ClientAbilities& client_;
    std::string& out_;
    JsonWriter json_;
};

}  // namespace

std::string actions_at(const OpenDocument& document, const TextSpan& where, const std::optional<Json>& asked,
                       Workspace& workspace, const ClientAbilities& client) {
    std::string out;
    if (!client.actions) return "[]";
    ActionWriter(document, where, asked, workspace, client, out).write();
    return out;
}

}  // namespace grainside::tools::edit
