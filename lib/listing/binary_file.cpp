#include "listing/binary_file.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <utility>

namespace grainside::listing {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kHead = 64;

constexpr std::string_view kNoPicture = "write what it shows as text";
constexpr std::string_view kNoProgram = "leave it out";
constexpr std::string_view kUnpack = "unpack it and name the files in it; only gzip and zstd are unpacked";
constexpr std::string_view kSaveAs = "save it as plain text, CSV or a page (HTML)";
constexpr std::string_view kAnother = "look whether another file was meant";
constexpr std::string_view kSixteenBits = "save it as UTF-8, or convert it: iconv -f UTF-16LE -t UTF-8";

struct Mark {
    std::string_view begin;
    std::string_view what;
    std::string_view hint;
    bool needs_nul = false;  // text may begin so; a NUL byte in the head then tells
};

// The first bytes that the formats state: PNG (W3C, 5.2), JPEG (ITU-T T.81, SOI), GIF 89a, TIFF 6.0, PDF (ISO 32000-1,
// 7.5.2), ZIP (APPNOTE 4.3.7 and 4.3.16), ELF (System V ABI), Rich Text Format 1.9, SQLite 3; the others from memory.
constexpr Mark kMarks[] = {
    {"\x89PNG\r\n\x1A\n"sv, "a PNG picture", kNoPicture},
    {"\xFF\xD8\xFF"sv, "a JPEG picture", kNoPicture},
    {"GIF87a"sv, "a GIF picture", kNoPicture},
    {"GIF89a"sv, "a GIF picture", kNoPicture},
    {"RIFF"sv, "a picture, sound or film (RIFF)", kNoPicture, true},
    {"II*\0"sv, "a TIFF picture", kNoPicture},
    {"MM\0*"sv, "a TIFF picture", kNoPicture},
    {"BM"sv, "a bitmap picture", kNoPicture, true},
    {"%PDF-"sv, "a PDF", "save its text as a .txt file; its tables as CSV"},
    {"{\\rtf"sv, "a Rich Text document", kSaveAs},
    {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"sv, "a document of an office program", kSaveAs},
    {"PK\x03\x04"sv, "a ZIP archive, as documents of office programs are",
     "save a document as plain text, CSV or a page (HTML); unpack an archive"},
    {"PK\x05\x06"sv, "an empty ZIP archive", kAnother},
    {"7z\xBC\xAF\x27\x1C"sv, "a 7z archive", kUnpack},
    {"Rar!\x1A\x07"sv, "a RAR archive", kUnpack},
    {"\xFD"
     "7zXZ\0"sv,
     "a file packed with xz", kUnpack},
    {"BZh"sv, "a file packed with bzip2", kUnpack, true},
    {"\x7F"
     "ELF"sv,
     "a program (ELF)", kNoProgram},
    {"MZ"sv, "a program", kNoProgram, true},
    {"\xCF\xFA\xED\xFE"sv, "a program (Mach-O)", kNoProgram},
    {"\xCA\xFE\xBA\xBE"sv, "a program", kNoProgram},
    {"SQLite format 3\0"sv, "an SQLite database", "write its rows as CSV"},
    {"\x1F\x8B"sv, "a packed file within a packed file", "unpack it once"},
    {"\x28\xB5\x2F\xFD"sv, "a packed file within a packed file", "unpack it once"},
};

bool is_control(char c) {
    const auto byte = static_cast<unsigned char>(c);
    // Tab to carriage return, and the escape of terminal colours in a log.
    return (byte < 0x20 && !(byte >= 0x09 && byte <= 0x0D) && byte != 0x1B) || byte == 0x7F;
}

bool may_become_a_mark(std::string_view begin) {
    return std::any_of(std::begin(kMarks), std::end(kMarks), [&](const Mark& mark) {
        return begin.size() < mark.begin.size() && mark.begin.starts_with(begin);
    });
}

// Every other byte is NUL in western text of two bytes a character.
bool has_sixteen_bits(std::string_view bytes) {
    std::array<std::size_t, 2> nuls{};
    for (std::size_t at = 0; at < bytes.size(); ++at) nuls[at % 2] += bytes[at] == '\0' ? 1U : 0U;
    const auto [fewer, more] = std::minmax(nuls[0], nuls[1]);
    return fewer * 8 < more && more * 3 > bytes.size();
}

}  // namespace

BinaryKind binary_kind_of(ByteSource& source) {
    while (may_become_a_mark(source.pending()) && source.more()) {
    }
    if (source.pending().substr(0, kBinaryLookedAt).find('\0') != std::string_view::npos) {
        while (source.pending().size() < kBinaryLookedAt && source.more()) {
        }
    }
    const std::string_view bytes = source.pending().substr(0, kBinaryLookedAt);
    const bool has_nul = bytes.find('\0') != std::string_view::npos;
    const bool has_nul_in_head = bytes.substr(0, kHead).find('\0') != std::string_view::npos;
    for (const Mark& mark : kMarks) {
        if (bytes.starts_with(mark.begin) && (has_nul_in_head || !mark.needs_nul)) return {mark.what, mark.hint};
    }
    // A text may hold a NUL or two by mistake, and marks of UTF-16 are told elsewhere.
    if (!has_nul || bytes.starts_with("\xFF\xFE"sv) || bytes.starts_with("\xFE\xFF"sv) ||
        bytes.starts_with("\0\0\xFE\xFF"sv)) {
        return {};
    }
    const auto controls = static_cast<std::size_t>(std::count_if(bytes.begin(), bytes.end(), is_control));
    // Packed and random data have 11 in 100 (29 of 256 values), programs and pictures more.
    if (controls < 8 || controls * 20 < bytes.size()) return {};
    if (has_sixteen_bits(bytes)) return {"UTF-16 without a byte order mark", kSixteenBits};
    return {"data of a program", kAnother};
}

bool BinarySource::next(Listing&) {
    if (std::exchange(told_, true)) return false;
    sink_->report(Issue::Severity::error, "not-text", {0, 0},
                  "this is no text and is not read; it seems to be " + std::string(kind_.what),
                  std::string(kind_.hint));
    return false;
}

}  // namespace grainside::listing
