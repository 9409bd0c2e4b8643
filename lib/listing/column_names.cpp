#include "listing/column_names.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace grainside::listing {
namespace {

constexpr std::array<std::string_view, 10> kUses = {"name", "description", "material", "category", "property",
                                                    "id",   "language",    "region",   "seller",   "skip"};

struct NamedColumn {
    std::string_view name;
    ColumnUse use;
    unsigned rank = 0;
};

// Everyday headings of catalogs, in English and a few other languages: common practice, no source. What holds no copy
// is skipped, because a price or a link can only be misread; any name that does not stand here is read as a property,
// since a shopper may read that too.
constexpr NamedColumn kColumns[] = {
    {"name", ColumnUse::name},
    {"title", ColumnUse::name},
    {"product name", ColumnUse::name},
    {"product title", ColumnUse::name},
    {"product", ColumnUse::name},
    {"item name", ColumnUse::name},
    {"item title", ColumnUse::name},
    {"heading", ColumnUse::name},
    {"headline", ColumnUse::name},
    {"titel", ColumnUse::name},
    {"produktname", ColumnUse::name},
    {"produkttitel", ColumnUse::name},
    {"artikelname", ColumnUse::name},
    {"artikelbezeichnung", ColumnUse::name},
    {"bezeichnung", ColumnUse::name},
    {"nom", ColumnUse::name},
    {"titre", ColumnUse::name},
    {"nome", ColumnUse::name},
    {"titolo", ColumnUse::name},
    {"nombre", ColumnUse::name},
    {"titulo", ColumnUse::name},
    {"t\xC3\xADtulo", ColumnUse::name},
    {"description", ColumnUse::description},
    {"product description", ColumnUse::description},
    {"short description", ColumnUse::description},
    {"long description", ColumnUse::description},
    {"body", ColumnUse::description},
    {"body html", ColumnUse::description},
    {"body text", ColumnUse::description},
    {"details", ColumnUse::description},
    {"product details", ColumnUse::description},
    {"text", ColumnUse::description},
    {"copy", ColumnUse::description},
    {"beschreibung", ColumnUse::description},
    {"produktbeschreibung", ColumnUse::description},
    {"artikelbeschreibung", ColumnUse::description},
    {"kurzbeschreibung", ColumnUse::description},
    {"langbeschreibung", ColumnUse::description},
    {"produkttext", ColumnUse::description},
    {"descrizione", ColumnUse::description},
    {"descripcion", ColumnUse::description},
    {"descripci\xC3\xB3n", ColumnUse::description},
    {"material", ColumnUse::material},
    {"materials", ColumnUse::material},
    {"composition", ColumnUse::material},
    {"material composition", ColumnUse::material},
    {"fabric", ColumnUse::material},
    {"fabrics", ColumnUse::material},
    {"fabric content", ColumnUse::material},
    {"obermaterial", ColumnUse::material},
    {"zusammensetzung", ColumnUse::material},
    {"materiau", ColumnUse::material},
    {"mat\xC3\xA9riau", ColumnUse::material},
    {"mati\xC3\xA8re", ColumnUse::material},
    {"materiale", ColumnUse::material},
    {"composizione", ColumnUse::material},
    {"category", ColumnUse::category},
    {"categories", ColumnUse::category},
    {"product category", ColumnUse::category},
    {"type", ColumnUse::category},
    {"product type", ColumnUse::category},
    {"kategorie", ColumnUse::category},
    {"warengruppe", ColumnUse::category},
    {"produktart", ColumnUse::category},
    {"categorie", ColumnUse::category},
    {"cat\xC3\xA9gorie", ColumnUse::category},
    {"categoria", ColumnUse::category},
    {"categor\xC3\xAD"
     "a",
     ColumnUse::category},
    {"sku", ColumnUse::id},
    {"id", ColumnUse::id, 1},
    {"product id", ColumnUse::id, 1},
    {"item id", ColumnUse::id, 1},
    {"item number", ColumnUse::id, 2},
    {"item no", ColumnUse::id, 2},
    {"article number", ColumnUse::id, 2},
    {"article no", ColumnUse::id, 2},
    {"product number", ColumnUse::id, 2},
    {"artikelnummer", ColumnUse::id, 2},
    {"artikel nr", ColumnUse::id, 2},
    {"art nr", ColumnUse::id, 2},
    {"artnr", ColumnUse::id, 2},
    {"bestellnummer", ColumnUse::id, 2},
    {"handle", ColumnUse::id, 3},
    {"language", ColumnUse::language},
    {"lang", ColumnUse::language},
    {"in language", ColumnUse::language},
    {"locale", ColumnUse::language, 1},
    {"sprache", ColumnUse::language},
    {"langue", ColumnUse::language},
    {"lingua", ColumnUse::language},
    {"idioma", ColumnUse::language},
    {"region", ColumnUse::region, 1},
    {"market", ColumnUse::region},
    {"country", ColumnUse::region, 1},
    {"markt", ColumnUse::region},
    {"zielland", ColumnUse::region},
    {"seller", ColumnUse::seller},
    {"seller name", ColumnUse::seller},
    {"shop", ColumnUse::seller},
    {"shop name", ColumnUse::seller},
    {"store", ColumnUse::seller},
    {"merchant", ColumnUse::seller},
    {"vendor", ColumnUse::seller},
    {"verk\xC3\xA4ufer", ColumnUse::seller},
    {"h\xC3\xA4ndler", ColumnUse::seller},
    {"brand", ColumnUse::seller, 1},
    {"brand name", ColumnUse::seller, 1},
    {"manufacturer", ColumnUse::seller, 2},
    {"marke", ColumnUse::seller, 1},
    {"hersteller", ColumnUse::seller, 2},
    {"marque", ColumnUse::seller, 1},
    {"marca", ColumnUse::seller, 1},
};

constexpr std::string_view kSkipped[] = {
    "reviews",
    "customer reviews",
    "ratings",
    "related products",
    "similar products",
    "bewertungen",
    "price",
    "sale price",
    "regular price",
    "list price",
    "unit price",
    "price eur",
    "price usd",
    "price gbp",
    "msrp",
    "rrp",
    "cost",
    "preis",
    "preis eur",
    "vk preis",
    "ek preis",
    "uvp",
    "prix",
    "prezzo",
    "precio",
    "currency",
    "w\xC3\xA4hrung",
    "tax",
    "vat",
    "mwst",
    "discount",
    "image",
    "images",
    "image url",
    "image link",
    "image src",
    "picture",
    "pictures",
    "photo",
    "photos",
    "bild",
    "bilder",
    "bild url",
    "bilder url",
    "additional image link",
    "url",
    "link",
    "product url",
    "product link",
    "web address",
    "permalink",
    "ean",
    "gtin",
    "gtin13",
    "upc",
    "isbn",
    "barcode",
    "mpn",
    "asin",
    "stock",
    "in stock",
    "stock quantity",
    "quantity",
    "qty",
    "inventory",
    "availability",
    "bestand",
    "lagerbestand",
    "menge",
    "weight",
    "shipping weight",
    "gewicht",
    "weight unit",
    "position",
    "sort order",
    "created",
    "created at",
    "updated",
    "updated at",
    "modified",
    "published",
    "status",
    "visibility",
    "parent",
    "parent id",
    "rating",
    "review count",
    "lieferzeit",
};

bool is_part_of_word(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

std::optional<ColumnUse> column_use_named(std::string_view word) {
    if (word == "additionalProperty") return ColumnUse::property;
    const auto found = std::find(kUses.begin(), kUses.end(), word);
    if (found == kUses.end()) return std::nullopt;
    return static_cast<ColumnUse>(found - kUses.begin());
}

std::string plain_column_name(std::string_view name) {
    std::string plain;
    bool gap = false;
    for (std::size_t at = 0; at < name.size(); ++at) {
        const char c = name[at];
        const bool is_no_break_space = name.substr(at, 2) == "\xC2\xA0";
        if (is_no_break_space) ++at;
        if (is_no_break_space || !is_part_of_word(c)) {
            gap = !plain.empty();
            continue;
        }
        if (std::exchange(gap, false)) plain += ' ';
        plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        // The capitals that Latin-1 has as two bytes, but for the multiplication sign: C3 80 to C3 9E.
        if (c == '\xC3' && at + 1 < name.size()) {
            const auto next = static_cast<unsigned char>(name[++at]);
            const bool is_capital = next >= 0x80 && next <= 0x9E && next != 0x97;
            plain += static_cast<char>(is_capital ? next + 0x20 : next);
        }
    }
    return plain;
}

std::optional<KnownColumn> known_column(std::string_view plain_name) {
    const auto* const found = std::find_if(std::begin(kColumns), std::end(kColumns),
                                           [&](const NamedColumn& column) { return column.name == plain_name; });
    if (found != std::end(kColumns)) return KnownColumn{found->use, found->rank};
    if (std::find(std::begin(kSkipped), std::end(kSkipped), plain_name) == std::end(kSkipped)) return std::nullopt;
    return KnownColumn{ColumnUse::skip, 0};
}

}  // namespace grainside::listing
