// make_catalog BYTES: writes the invented catalog of catalog.h, at least so long, to standard output, in constant
// memory. make_catalog --terms: the words that its gaps are filled with, one a line.
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "catalog.h"

namespace {

bool write_out(std::string& text) {
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    text.clear();
    return written;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        std::fputs("usage: make_catalog BYTES | --terms\n", stderr);
        return 2;
    }
    std::string text;
    if (std::string_view(argv[1]) == "--terms") {
        for (const std::string_view term : grainside::bench::Catalog::terms()) {
            text += term;
            text += '\n';
        }
        return write_out(text) ? 0 : 1;
    }
    const std::size_t bytes = std::strtoull(argv[1], nullptr, 10);
    constexpr std::size_t kBlock = std::size_t{1} << 18;
    grainside::bench::Catalog catalog;
    for (std::size_t made = 0; made < bytes;) {
        while (text.size() < kBlock && made + text.size() < bytes) catalog.append_listing(text);
        made += text.size();
        if (!write_out(text)) return 1;
    }
    return std::fflush(stdout) == 0 ? 0 : 1;
}
