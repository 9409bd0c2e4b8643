// grainside._engine: what the Python package asks of the library. The package (grainside/) has the names, defaults and
// documentation that its users see; here are bytes in, bytes and plain values out. Text goes to Python as UTF-8 with
// what is not UTF-8 replaced. Faults raise grainside.Faults with every issue. While the library works, other threads of
// Python run.
#include <pybind11/pybind11.h>

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "book_faults.h"
#include "fields_left_out.h"
#include "grainside/checker.h"
#include "grainside/line_partitions.h"
#include "grainside/listing_reader.h"
#include "grainside/report.h"
#include "grainside/rule_book.h"
#include "grainside/version.h"

namespace grainside::python {
namespace {

namespace py = pybind11;

py::str text_of(std::string_view text) {
    PyObject* const object = PyUnicode_DecodeUTF8(text.data(), static_cast<py::ssize_t>(text.size()), "replace");
    if (object == nullptr) throw py::error_already_set();
    return py::reinterpret_steal<py::str>(object);
}

std::string_view severity_of(const Issue& issue) {
    switch (issue.severity) {
        case Issue::Severity::error:
            return "error";
        case Issue::Severity::warning:
            return "warning";
        case Issue::Severity::note:
            break;
    }
    return "note";
}

py::tuple issues_of(const std::vector<Issue>& issues) {
    const py::object make = py::module_::import("grainside._values").attr("Issue");
    py::tuple all(issues.size());
    for (std::size_t at = 0; at < issues.size(); ++at) {
        const Issue& issue = issues[at];
        all[at] = make(text_of(severity_of(issue)), text_of(issue.code), text_of(issue.file), issue.line, issue.column,
                       text_of(issue.message), text_of(issue.hint), text_of(issue.excerpt), text_of(to_text(issue)));
    }
    return all;
}

[[noreturn]] void raise_faults(const std::vector<Issue>& issues) {
    const py::object type = py::module_::import("grainside._values").attr("Faults");
    PyErr_SetObject(type.ptr(), type(issues_of(issues)).ptr());
    throw py::error_already_set();
}

// A rule book and what writes its records; immutable, so that any number of checkers may share it.
class Book {
public:
    explicit Book(RuleBook rules) : rules_(std::move(rules)), writer_(rules_) {}

    // "" is the built-in book.
    static std::shared_ptr<Book> load(const std::string& folder) {
        std::vector<Issue> issues;
        {
            const py::gil_scoped_release others_run;
            Result<RuleBook> rules = folder.empty() ? RuleBook::built_in() : RuleBook::load(folder);
            if (rules) return std::make_shared<Book>(std::move(rules).value());
            issues = tools::with_folder(std::move(rules).issues(), folder);
        }
        raise_faults(issues);
    }

    const RuleBook& rules() const noexcept { return rules_; }
    const RecordWriter& writer() const noexcept { return writer_; }

private:
    RuleBook rules_;
    RecordWriter writer_;
};

CheckOptions options_of(const py::tuple& markets, std::string on) {
    CheckOptions options;
    for (const py::handle market : markets) options.markets.push_back(market.cast<std::string>());
    options.on = std::move(on);
    return options;
}

// Records as they grow: in pieces, because one text that grows to many megabytes is copied again and again.
class Records {
public:
    std::string& text() {
        if (pieces_.empty() || pieces_.back().size() >= kPieceBytes) pieces_.emplace_back().reserve(2 * kPieceBytes);
        return pieces_.back();
    }

    py::bytes take() {
        std::size_t size = 0;
        for (const std::string& piece : pieces_) size += piece.size();
        PyObject* const object = PyBytes_FromStringAndSize(nullptr, static_cast<py::ssize_t>(size));
        if (object == nullptr) throw py::error_already_set();
        char* to = PyBytes_AS_STRING(object);
        for (std::string& piece : pieces_) {
            to = std::copy(piece.begin(), piece.end(), to);
            piece = {};
        }
        return py::reinterpret_steal<py::bytes>(object);
    }

private:
    static constexpr std::size_t kPieceBytes = std::size_t{64} << 10;
    std::vector<std::string> pieces_;
};

class LineChecker {
public:
    LineChecker(std::shared_ptr<Book> book, const py::tuple& markets, std::string on)
        : book_(std::move(book)), checker_(book_->rules(), options_of(markets, std::move(on))) {}

    // (records, issues, listings, worst). `lines` says that the input is JSON Lines, else it is one JSON text.
    py::tuple run(const py::bytes& input, std::string name, bool lines, std::uint64_t first_record,
                  std::uint64_t first_line, bool claims) {
        const AtWork at_work(*this);
        const std::string_view bytes = input;
        Run run;
        {
            const py::gil_scoped_release others_run;
            ReadOptions options;
            options.format = lines ? InputFormat::json_lines : InputFormat::json;
            options.start.record = first_record;
            options.start.line = first_line;
            run_over(bytes, std::move(name), options, claims, run);
        }
        const py::object worst =
            run.worst == Grade::consistent ? py::object(py::none()) : py::object(text_of(name_of(run.worst)));
        return py::make_tuple(run.out.take(), issues_of(run.issues), run.listings, worst);
    }

private:
    struct Run {
        Records out;
        std::vector<Issue> issues;
        std::uint64_t listings = 0;
        Grade worst = Grade::consistent;
    };

    // A checker has one working memory, and Python hands objects to other threads without asking.
    class AtWork {
    public:
        explicit AtWork(LineChecker& checker) : checker_(checker) {
            if (checker_.at_work_.exchange(true)) {
                throw std::runtime_error(
                    "this checker is at work in another thread; make one a thread: checker.settings.checker()");
            }
        }
        ~AtWork() { checker_.at_work_ = false; }
        AtWork(const AtWork&) = delete;
        AtWork& operator=(const AtWork&) = delete;

    private:
        LineChecker& checker_;
    };

    void run_over(std::string_view bytes, std::string name, const ReadOptions& options, bool claims, Run& run) {
        ListingReader reader = ListingReader::from_memory(std::move(name), bytes, options);
        Listing listing;
        while (reader.next(listing, run.issues)) {
            ++run.listings;
            const CheckResult& result = checker_.check(listing);
            if (auto issue = tools::fields_left_out(listing, result.fields_too_long)) {
                run.issues.push_back(std::move(*issue));
            }
            if (claims) {
                book_->writer().write_claims(listing, result, run.out.text());
                continue;
            }
            for (const Finding& finding : result.findings) run.worst = std::min(run.worst, finding.grade);
            book_->writer().write_findings(listing, result, checker_, run.out.text());
        }
    }

    std::shared_ptr<Book> book_;
    Checker checker_;
    std::atomic<bool> at_work_ = false;
};

// (start, end, first record, first line) of each part.
py::list plan(const std::string& path, std::uint64_t bytes) {
    std::vector<LinePartition> parts;
    std::vector<Issue> issues;
    {
        const py::gil_scoped_release others_run;
        Result<std::vector<LinePartition>> planned = plan_line_partitions(path, bytes);
        if (planned) {
            parts = std::move(planned).value();
        } else {
            issues = std::move(planned).issues();
        }
    }
    if (!issues.empty()) raise_faults(issues);
    py::list all;
    for (const LinePartition& part : parts) {
        all.append(py::make_tuple(part.start.byte, part.end, part.start.record, part.start.line));
    }
    return all;
}

py::tuple texts_of(const std::vector<std::string>& texts) {
    py::tuple all(texts.size());
    for (std::size_t at = 0; at < texts.size(); ++at) all[at] = text_of(texts[at]);
    return all;
}

}  // namespace

PYBIND11_MODULE(_engine, module) {
    module.doc() = "The library behind the package grainside; use the package.";
    module.attr("version") = text_of(kVersion);
    py::list grades;
    for (const Grade grade : {Grade::contradicted, Grade::misleading, Grade::unsupported, Grade::inconclusive,
                              Grade::vague, Grade::consistent}) {
        grades.append(text_of(name_of(grade)));
    }
    module.attr("grades") = py::tuple(grades);
    module.def("plan", &plan, py::arg("path"), py::arg("part_bytes"));

    py::class_<Book, std::shared_ptr<Book>>(module, "Book")
        .def(py::init(&Book::load), py::arg("folder"))
        .def_property_readonly("digest", [](const Book& book) { return text_of(book.rules().digest()); })
        .def_property_readonly("rule_count", [](const Book& book) { return book.rules().rules().size(); })
        .def_property_readonly("markets", [](const Book& book) { return texts_of(book.rules().markets()); });

    py::class_<LineChecker>(module, "LineChecker")
        .def(py::init<std::shared_ptr<Book>, const py::tuple&, std::string>(), py::arg("book"), py::arg("markets"),
             py::arg("on"))
        .def("run", &LineChecker::run, py::arg("input"), py::arg("name"), py::arg("lines"), py::arg("first_record"),
             py::arg("first_line"), py::arg("claims"));
}

}  // namespace grainside::python
