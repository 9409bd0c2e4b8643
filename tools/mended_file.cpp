#include "mended_file.h"

#include <unistd.h>

#include <cstddef>
#include <string_view>
#include <utility>

namespace grainside::tools {

// Goes into the corrected file.
class MendedFile::FileSink final : public LineSink {
public:
    explicit FileSink(AtomicFile& file) : file_(&file) {}
    void same(std::string_view line) override { append(line); }
    void changed(std::string_view, std::string_view after) override { append(after); }
    bool finish() { return file_->write(text_) && file_->commit(); }

private:
    void append(std::string_view bytes) {
        constexpr std::size_t kPiece = std::size_t{1} << 18U;
        text_ += bytes;
        if (text_.size() < kPiece) return;
        file_->write(text_);
        text_.clear();
    }
    AtomicFile* file_;
    std::string text_;
};

MendedFile::MendedFile(const MendedOutputs& outputs, std::string name, listing::ByteSource source, Output& output,
                       Diagnostics& diagnostics)
    : name_(std::move(name)),
      output_(output),
      diagnostics_(diagnostics),
      diff_(name_, ::isatty(STDOUT_FILENO) == 1, output.text()),
      file_(outputs.file.empty() ? nullptr : std::make_unique<AtomicFile>(outputs.file)),
      file_sink_(file_ ? std::make_unique<FileSink>(*file_) : nullptr),
      editor_(std::move(source), sinks(outputs.difference)) {}

MendedFile::~MendedFile() = default;

std::vector<LineSink*> MendedFile::sinks(bool difference) {
    std::vector<LineSink*> all;
    if (difference) all.push_back(&diff_);
    if (file_sink_) all.push_back(file_sink_.get());
    return all;
}

bool MendedFile::add(const std::vector<SourceEdit>& edits) {
    const bool shown = output_.keep_going();
    return editor_.add(edits) && (file_ ? !file_->failed() : shown);
}

void MendedFile::finish(bool whole) {
    if (whole && editor_.failure().empty()) editor_.finish();
    diff_.finish();
    if (!editor_.failure().empty()) {
        diagnostics_.error("'" + name_ + "' cannot be reworded: " + editor_.failure());
        return;
    }
    if (!file_) return;
    if (!whole || !file_sink_->finish()) {
        if (file_->failed()) diagnostics_.error(file_->failure(), file_->hint());
    }
}

}  // namespace grainside::tools
