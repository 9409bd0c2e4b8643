// From what a call names to the files that are read: folders, patterns, lists of files.
#ifndef GRAINSIDE_TOOLS_INPUT_FILES_H
#define GRAINSIDE_TOOLS_INPUT_FILES_H

#include <string>
#include <vector>

#include "diagnostics.h"

namespace grainside::tools {

// Files in the order of the call; those of a folder or a pattern sorted by their bytes.
//
// - A folder stands for all files below it whose ending says that they hold listings (.jsonl .ndjson .json .csv .tsv
//   .html .htm .xhtml .md .markdown .txt, each also with .gz or .zst behind it); a note says how many others there are.
//   Hidden files and folders and links to folders are passed over without a word.
// - A name with * ? or [ that is no file stands for what it matches (glob(7)), and `**` between slashes for any number
//   of folders. Hidden names have to be named.
// - One file is read once, at its first place, however often and by whatever path it is named.
// - "-" is standard input.
// What cannot be found is reported and the rest goes on; another name is given as it is, so that opening it says why.
std::vector<std::string> expand_inputs(const std::vector<std::string>& inputs, Diagnostics& diagnostics);

// The paths that stand in `list`, one a line; "-" is standard input. Empty lines are passed over. Reports what cannot
// be read.
std::vector<std::string> read_input_list(const std::string& list, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_INPUT_FILES_H
