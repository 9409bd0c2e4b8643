#include "document/character_reference.h"

#include <algorithm>
#include <iterator>

namespace grainside::document {
namespace {

constexpr char32_t kReplacementCharacter = 0xFFFD;
constexpr std::size_t kMostDigits = 8;

struct Named {
    std::string_view name;
    char32_t code;
};

// In order of bytes, for the search by halves. Names and code points: HTML standard, "Named character references".
constexpr Named kNamed[] = {
    {"AElig", 0xC6},    {"Aacute", 0xC1},    {"Abreve", 0x102},  {"Acirc", 0xC2},    {"Agrave", 0xC0},
    {"Amacr", 0x100},   {"Aogon", 0x104},    {"Aring", 0xC5},    {"Atilde", 0xC3},   {"Auml", 0xC4},
    {"Cacute", 0x106},  {"Ccaron", 0x10C},   {"Ccedil", 0xC7},   {"Dagger", 0x2021}, {"Dcaron", 0x10E},
    {"Delta", 0x394},   {"Dstrok", 0x110},   {"ETH", 0xD0},      {"Eacute", 0xC9},   {"Ecaron", 0x11A},
    {"Ecirc", 0xCA},    {"Egrave", 0xC8},    {"Emacr", 0x112},   {"Eogon", 0x118},   {"Euml", 0xCB},
    {"Gbreve", 0x11E},  {"Hat", 0x5E},       {"Iacute", 0xCD},   {"Icirc", 0xCE},    {"Idot", 0x130},
    {"Igrave", 0xCC},   {"Iuml", 0xCF},      {"Lstrok", 0x141},  {"Nacute", 0x143},  {"Ncaron", 0x147},
    {"NewLine", 0xA},   {"NoBreak", 0x2060}, {"Ntilde", 0xD1},   {"OElig", 0x152},   {"Oacute", 0xD3},
    {"Ocirc", 0xD4},    {"Odblac", 0x150},   {"Ograve", 0xD2},   {"Omega", 0x3A9},   {"Oslash", 0xD8},
    {"Otilde", 0xD5},   {"Ouml", 0xD6},      {"Prime", 0x2033},  {"Rcaron", 0x158},  {"Sacute", 0x15A},
    {"Scaron", 0x160},  {"Scedil", 0x15E},   {"THORN", 0xDE},    {"Tab", 0x9},       {"Tcaron", 0x164},
    {"Uacute", 0xDA},   {"Ucirc", 0xDB},     {"Udblac", 0x170},  {"Ugrave", 0xD9},   {"Uring", 0x16E},
    {"Uuml", 0xDC},     {"Yacute", 0xDD},    {"Yuml", 0x178},    {"Zacute", 0x179},  {"Zcaron", 0x17D},
    {"Zdot", 0x17B},    {"aacute", 0xE1},    {"abreve", 0x103},  {"acirc", 0xE2},    {"acute", 0xB4},
    {"aelig", 0xE6},    {"agrave", 0xE0},    {"alpha", 0x3B1},   {"amacr", 0x101},   {"amp", 0x26},
    {"aogon", 0x105},   {"apos", 0x27},      {"aring", 0xE5},    {"ast", 0x2A},      {"asymp", 0x2248},
    {"atilde", 0xE3},   {"auml", 0xE4},      {"bdquo", 0x201E},  {"beta", 0x3B2},    {"brvbar", 0xA6},
    {"bsol", 0x5C},     {"bull", 0x2022},    {"cacute", 0x107},  {"ccaron", 0x10D},  {"ccedil", 0xE7},
    {"cedil", 0xB8},    {"cent", 0xA2},      {"check", 0x2713},  {"circ", 0x2C6},    {"colon", 0x3A},
    {"comma", 0x2C},    {"commat", 0x40},    {"copy", 0xA9},     {"cross", 0x2717},  {"curren", 0xA4},
    {"dagger", 0x2020}, {"darr", 0x2193},    {"dash", 0x2010},   {"dcaron", 0x10F},  {"deg", 0xB0},
    {"delta", 0x3B4},   {"divide", 0xF7},    {"dollar", 0x24},   {"dstrok", 0x111},  {"eacute", 0xE9},
    {"ecaron", 0x11B},  {"ecirc", 0xEA},     {"egrave", 0xE8},   {"emacr", 0x113},   {"emsp", 0x2003},
    {"ensp", 0x2002},   {"eogon", 0x119},    {"equals", 0x3D},   {"eth", 0xF0},      {"euml", 0xEB},
    {"euro", 0x20AC},   {"excl", 0x21},      {"ffilig", 0xFB03}, {"fflig", 0xFB00},  {"ffllig", 0xFB04},
    {"filig", 0xFB01},  {"fllig", 0xFB02},   {"fnof", 0x192},    {"frac12", 0xBD},   {"frac13", 0x2153},
    {"frac14", 0xBC},   {"frac18", 0x215B},  {"frac23", 0x2154}, {"frac34", 0xBE},   {"frac38", 0x215C},
    {"frac58", 0x215D}, {"frac78", 0x215E},  {"frasl", 0x2044},  {"gamma", 0x3B3},   {"gbreve", 0x11F},
    {"ge", 0x2265},     {"grave", 0x60},     {"gt", 0x3E},       {"hairsp", 0x200A}, {"half", 0xBD},
    {"hellip", 0x2026}, {"horbar", 0x2015},  {"hyphen", 0x2010}, {"iacute", 0xED},   {"icirc", 0xEE},
    {"iexcl", 0xA1},    {"igrave", 0xEC},    {"imath", 0x131},   {"infin", 0x221E},  {"inodot", 0x131},
    {"iquest", 0xBF},   {"iuml", 0xEF},      {"laquo", 0xAB},    {"larr", 0x2190},   {"lbrace", 0x7B},
    {"lbrack", 0x5B},   {"lcub", 0x7B},      {"ldquo", 0x201C},  {"le", 0x2264},     {"lowast", 0x2217},
    {"lowbar", 0x5F},   {"lpar", 0x28},      {"lrm", 0x200E},    {"lsaquo", 0x2039}, {"lsqb", 0x5B},
    {"lsquo", 0x2018},  {"lstrok", 0x142},   {"lt", 0x3C},       {"macr", 0xAF},     {"mdash", 0x2014},
    {"micro", 0xB5},    {"middot", 0xB7},    {"minus", 0x2212},  {"mldr", 0x2026},   {"mu", 0x3BC},
    {"nacute", 0x144},  {"nbsp", 0xA0},      {"ncaron", 0x148},  {"ndash", 0x2013},  {"ne", 0x2260},
    {"nldr", 0x2025},   {"not", 0xAC},       {"ntilde", 0xF1},   {"num", 0x23},      {"numero", 0x2116},
    {"numsp", 0x2007},  {"oacute", 0xF3},    {"ocirc", 0xF4},    {"odblac", 0x151},  {"oelig", 0x153},
    {"ograve", 0xF2},   {"oline", 0x203E},   {"ordf", 0xAA},     {"ordm", 0xBA},     {"oslash", 0xF8},
    {"otilde", 0xF5},   {"ouml", 0xF6},      {"para", 0xB6},     {"percnt", 0x25},   {"period", 0x2E},
    {"permil", 0x2030}, {"phone", 0x260E},   {"plus", 0x2B},     {"plusmn", 0xB1},   {"pound", 0xA3},
    {"prime", 0x2032},  {"puncsp", 0x2008},  {"quest", 0x3F},    {"quot", 0x22},     {"radic", 0x221A},
    {"raquo", 0xBB},    {"rarr", 0x2192},    {"rbrace", 0x7D},   {"rbrack", 0x5D},   {"rcaron", 0x159},
    {"rcub", 0x7D},     {"rdquo", 0x201D},   {"reg", 0xAE},      {"rlm", 0x200F},    {"rpar", 0x29},
    {"rsaquo", 0x203A}, {"rsqb", 0x5D},      {"rsquo", 0x2019},  {"sacute", 0x15B},  {"sbquo", 0x201A},
    {"scaron", 0x161},  {"scedil", 0x15F},   {"sdot", 0x22C5},   {"sect", 0xA7},     {"semi", 0x3B},
    {"shy", 0xAD},      {"sol", 0x2F},       {"squ", 0x25A1},    {"squf", 0x25AA},   {"star", 0x2606},
    {"starf", 0x2605},  {"sup1", 0xB9},      {"sup2", 0xB2},     {"sup3", 0xB3},     {"szlig", 0xDF},
    {"tcaron", 0x165},  {"thinsp", 0x2009},  {"thorn", 0xFE},    {"tilde", 0x2DC},   {"times", 0xD7},
    {"trade", 0x2122},  {"uacute", 0xFA},    {"uarr", 0x2191},   {"ucirc", 0xFB},    {"udblac", 0x171},
    {"ugrave", 0xF9},   {"uml", 0xA8},       {"uring", 0x16F},   {"uuml", 0xFC},     {"verbar", 0x7C},
    {"vert", 0x7C},     {"yacute", 0xFD},    {"yen", 0xA5},      {"yuml", 0xFF},     {"zacute", 0x17A},
    {"zcaron", 0x17E},  {"zdot", 0x17C},     {"zwj", 0x200D},    {"zwnj", 0x200C},
};

constexpr bool in_order(const Named& a, const Named& b) {
    return a.name < b.name;
}
static_assert(std::is_sorted(std::begin(kNamed), std::end(kNamed), in_order));

constexpr std::size_t kLongestName = 10;
static_assert(std::all_of(std::begin(kNamed), std::end(kNamed),
                          [](const Named& named) { return named.name.size() <= kLongestName; }));

constexpr char16_t kWindows1252[32] = {
    0x20AC, 0xFFFD, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0xFFFD, 0x017D, 0xFFFD, 0xFFFD, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0xFFFD, 0x017E, 0x0178,
};

int digit_value(char c, bool hexadecimal) {
    if (c >= '0' && c <= '9') return c - '0';
    if (!hexadecimal) return -1;
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

char32_t character_of(char32_t number) {
    if (number < 0xA0 && number != 0) return windows_1252_character(static_cast<unsigned char>(number));
    if (number == 0 || number > 0x10FFFF || (number >= 0xD800 && number <= 0xDFFF)) return kReplacementCharacter;
    return number;
}

CharacterReference read_numeric(std::string_view text, std::size_t at) {
    std::size_t i = at + 2;
    const bool hexadecimal = i < text.size() && (text[i] == 'x' || text[i] == 'X');
    if (hexadecimal) ++i;
    const std::size_t first = i;
    char32_t number = 0;
    for (; i < text.size() && i - first < kMostDigits; ++i) {
        const int digit = digit_value(text[i], hexadecimal);
        if (digit < 0) break;
        number = number * (hexadecimal ? 16 : 10) + static_cast<char32_t>(digit);
    }
    if (i == first || i == text.size() || text[i] != ';') return {};
    return {character_of(number), static_cast<std::uint32_t>(i + 1 - at)};
}

}  // namespace

char32_t windows_1252_character(unsigned char byte) {
    return byte >= 0x80 && byte < 0xA0 ? kWindows1252[byte - 0x80] : byte;
}

CharacterReference read_character_reference(std::string_view text, std::size_t at) {
    if (at + 1 < text.size() && text[at + 1] == '#') return read_numeric(text, at);
    const std::string_view rest = text.substr(at + 1, kLongestName + 1);
    const std::size_t length = rest.find(';');
    if (length == std::string_view::npos || length == 0) return {};
    const Named wanted{rest.substr(0, length), 0};
    const auto* const found = std::lower_bound(std::begin(kNamed), std::end(kNamed), wanted, in_order);
    if (found == std::end(kNamed) || found->name != wanted.name) return {};
    return {found->code, static_cast<std::uint32_t>(length + 2)};
}

}  // namespace grainside::document
