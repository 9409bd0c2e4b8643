#include "listing/listing_batches.h"

#include <poll.h>
#include <sys/stat.h>

#include <mutex>
#include <utility>

#include "listing/batch_content.h"

namespace grainside {
inline namespace v0 {

namespace {

constexpr std::size_t kMostFiles = 64;  // in a batch, however small they are

struct Input {
    std::string path;
    std::uint64_t size = 0;
    bool has_size = false;
    // The thread that has the batch opens it. So it does what is not there, to tell of it.
    bool is_small = false;
};

Input look_at(std::string path, std::size_t batch_bytes) {
    Input input{std::move(path)};
    if (input.path == "-") return input;
    struct stat status {};
    if (::stat(input.path.c_str(), &status) != 0 || S_ISDIR(status.st_mode)) {
        input.has_size = input.is_small = true;
    } else if (S_ISREG(status.st_mode)) {
        input.size = static_cast<std::uint64_t>(status.st_size);
        input.has_size = true;
        input.is_small = input.size <= batch_bytes;
    }
    return input;
}

}  // namespace

class ListingBatches::Taker {
public:
    Taker(std::vector<std::string> paths, const BatchOptions& options) : options_(options) {
        inputs_.reserve(paths.size());
        for (std::string& path : paths) inputs_.push_back(look_at(std::move(path), options.batch_bytes));
    }
    Taker(ListingReader reader, std::string name, const BatchOptions& options) : options_(options) {
        begin(std::move(reader), std::move(name));
    }

    bool take(ListingBatch::Content& content) {
        const std::lock_guard lock(mutex_);
        while (!ended_ && !is_woken()) {
            if (lines_) {
                ended_ = !take_lines(content);
            } else if (reader_) {
                ended_ = !take_copies(content);
            } else if (next_ == inputs_.size()) {
                ended_ = true;
            } else if (inputs_[next_].is_small && options_.from_record == 1) {
                take_files(content);
            } else if (!open_next()) {
                // What could be seen a moment ago and is gone now, or never was there.
                inputs_[next_].is_small = true;
                options_.from_record = 1;
                continue;
            } else {
                continue;
            }
            return !ended_;
        }
        ended_ = true;
        return false;
    }

    std::uint64_t total_bytes() const noexcept {
        std::uint64_t total = 0;
        for (const Input& input : inputs_) {
            if (!input.has_size) return 0;
            total += input.size;
        }
        return total;
    }

private:
    bool open_next() {
        auto opened = ListingReader::open(inputs_[next_].path, options_.reading);
        if (!opened) return false;
        begin(std::move(opened).value(), inputs_[next_].path);
        ++next_;
        return true;
    }

    void begin(ListingReader reader, std::string name) {
        reader_ = std::make_shared<ListingReader>(std::move(reader));
        input_ = std::move(name);
        from_record_ = std::exchange(options_.from_record, 1);
        listing::ByteSource& bytes = reader_->bytes();
        if (options_.wake_descriptor >= 0) bytes.wake_by(options_.wake_descriptor);
        // Places in a packed file are forgotten by the reader.
        if (reader_->format() == InputFormat::json_lines && !bytes.is_unpacked()) {
            lines_.emplace(bytes, options_.batch_bytes, from_record_ - 1);
        }
    }

    void end_input() {
        bytes_before_ += reader_->source_bytes();
        lines_.reset();
        reader_.reset();
    }

    // False where waiting was ended from outside, as take_copies.
    bool take_lines(ListingBatch::Content& content) {
        content.begin(ListingBatch::Content::Kind::lines, input_);
        content.source_name = reader_->bytes().name();
        if (!lines_->take(content.lines)) return false;
        content.from_record = from_record_;
        content.ends_input = content.lines.ends_input;
        content.bytes_read = bytes_before_ + reader_->source_bytes();
        if (content.ends_input) end_input();
        return true;
    }

    bool take_copies(ListingBatch::Content& content) {
        content.begin(ListingBatch::Content::Kind::copies, input_);
        std::vector<Issue> issues;
        while (content.copies.bytes() < options_.batch_bytes) {
            if (content.copies.size() != 0 && would_wait()) break;
            const bool found = reader_->next(listing_, issues);
            if (is_woken()) {
                // What came of bytes that broke off is not told.
                if (content.copies.size() == 0) return false;
                break;
            }
            if (found && listing_.record < from_record_) {
                issues.clear();
                continue;
            }
            if (!issues.empty()) content.issues.push_back({content.copies.size(), std::exchange(issues, {})});
            if (!found) {
                content.ends_input = true;
                break;
            }
            content.copies.add(listing_, reader_->source_stays());
        }
        content.bytes_read = bytes_before_ + reader_->source_bytes();
        if (reader_->source_stays()) content.reader = reader_;
        if (content.ends_input) end_input();
        return true;
    }

    void take_files(ListingBatch::Content& content) {
        content.begin(ListingBatch::Content::Kind::files, inputs_[next_].path);
        content.options = options_.reading;
        content.from_record = std::exchange(options_.from_record, 1);
        std::uint64_t size = 0;
        do {
            size += inputs_[next_].size;
            content.files.push_back(std::move(inputs_[next_++].path));
        } while (content.files.size() < kMostFiles && next_ < inputs_.size() && inputs_[next_].is_small &&
                 size + inputs_[next_].size <= options_.batch_bytes);
        bytes_before_ += size;
        content.bytes_read = bytes_before_;
    }

    // A line at hand is most likely a whole record.
    bool would_wait() {
        const listing::ByteSource& bytes = reader_->bytes();
        return bytes.pending().find('\n') == std::string_view::npos && bytes.may_wait();
    }

    bool is_woken() const noexcept {
        if (options_.wake_descriptor < 0) return false;
        pollfd wake{options_.wake_descriptor, POLLIN, 0};
        return ::poll(&wake, 1, 0) > 0;
    }

    std::mutex mutex_;
    BatchOptions options_;
    std::vector<Input> inputs_;
    std::size_t next_ = 0;
    bool ended_ = false;
    std::uint64_t bytes_before_ = 0;

    // The input that is being read.
    std::shared_ptr<ListingReader> reader_;
    std::optional<listing::LineBatcher> lines_;
    std::string input_;
    std::uint64_t from_record_ = 1;
    Listing listing_;
};

ListingBatches::ListingBatches(std::vector<std::string> inputs, const BatchOptions& options)
    : taker_(std::make_unique<Taker>(std::move(inputs), options)) {}
ListingBatches::ListingBatches(std::unique_ptr<Taker> taker) : taker_(std::move(taker)) {}

ListingBatches ListingBatches::from_memory(std::string name, std::string_view bytes, const BatchOptions& options) {
    ListingReader reader = ListingReader::from_memory(name, bytes, options.reading);
    return ListingBatches(std::make_unique<Taker>(std::move(reader), std::move(name), options));
}

ListingBatches::ListingBatches(ListingBatches&&) noexcept = default;
ListingBatches& ListingBatches::operator=(ListingBatches&&) noexcept = default;
ListingBatches::~ListingBatches() = default;

bool ListingBatches::take(ListingBatch& batch) {
    return taker_->take(*batch.content_);
}

std::uint64_t ListingBatches::total_bytes() const noexcept {
    return taker_->total_bytes();
}

}  // namespace v0
}  // namespace grainside
