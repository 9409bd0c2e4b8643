// One file on its way to the difference and to the corrected file.
#ifndef GRAINSIDE_TOOLS_MENDED_FILE_H
#define GRAINSIDE_TOOLS_MENDED_FILE_H

#include <memory>
#include <string>
#include <vector>

#include "atomic_file.h"
#include "diagnostics.h"
#include "listing/byte_source.h"
#include "output.h"
#include "source_edits.h"
#include "unified_diff.h"

namespace grainside::tools {

struct MendedOutputs {
    std::string file;        // of the corrected file; empty: none
    bool difference = true;  // on standard output
};

// Not thread-safe.
class MendedFile {
public:
    // `name` is the file's in the difference and in errors. `output` and `diagnostics` outlive the object.
    MendedFile(const MendedOutputs& outputs, std::string name, listing::ByteSource source, Output& output,
               Diagnostics& diagnostics);
    ~MendedFile();
    MendedFile(const MendedFile&) = delete;
    MendedFile& operator=(const MendedFile&) = delete;

    // REQUIRES of `edits`: as for SourceEditor. False: nothing more can be written. A reader of the difference that has
    // gone does not stop the file.
    bool add(const std::vector<SourceEdit>& edits);
    // `whole`: reading came to its end; without it no file is written. Reports what went wrong.
    void finish(bool whole);

private:
    class FileSink;
    std::vector<LineSink*> sinks(bool difference);

    std::string name_;
    Output& output_;
    Diagnostics& diagnostics_;
    UnifiedDiff diff_;
    std::unique_ptr<AtomicFile> file_;
    std::unique_ptr<FileSink> file_sink_;
    SourceEditor editor_;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_MENDED_FILE_H
