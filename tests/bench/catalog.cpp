#include "catalog.h"

#include <array>

namespace grainside::bench {
namespace {

// Sentences are frames with gaps: %m a material, %q a word before it, %p a part, %h a metal, %f a finish, %c a colour,
// %n a number. Most sentences claim something, some only chat; a listing has 8 to 15 terms of the trade.
constexpr std::array<std::string_view, 27> kFrames = {
    "The %p is cut from %q %m and finished by hand.",
    "Made of %q %m with a %c %p.",
    "Its %p is lined in %m, smooth to the hand.",
    "%h %f hardware throughout.",
    "The buckle is %h with a %f coat.",
    "Lining: %n% %m, the rest %m.",
    "Not %m, but %q %m.",
    "A %c tote that goes from the office to the weekend and back again.",
    "There is room for a laptop, a bottle and a book that you may even find time to read.",
    "Two pockets inside hold keys and cards; one outside holds a ticket.",
    "The strap can be set to nine lengths and comes off when it is not wanted.",
    "Softer than %m, and easier to look after.",
    "Comes with a cotton dust bag and a card that tells how to look after it.",
    "Each one differs a little in tone, and small marks are no fault.",
    "Waterproof in the rain that we have here.",
    "The %p of %m is %n mm thick.",
    "We sew at a slow pace, eight stitches to the inch, and sign the inside.",
    "Keep it away from heat, and wipe it with a dry cloth.",
    "We drew it for a friend who wanted one thing that carries everything.",
    "It stands by itself and folds flat when it is empty.",
    "The opening is wide enough to see what lies at the bottom.",
    "You choose the length when you order, and we punch the holes to suit.",
    "It looks well with a coat and does not mind a bicycle.",
    "Measure over what you wear, not over the skin, and add the width of a hand.",
    "If the first size does not fit, send it back within thirty days and we change it.",
    "The shape is an old one; the measures follow what people carry today.",
    "Ask us where you are not sure, and we answer within a day.",
};
constexpr std::array<std::string_view, 24> kMaterials = {
    "leather",       "full grain leather",
    "cowhide",       "calf leather",
    "PU leather",    "polyurethane",
    "split leather", "bonded leather",
    "suede",         "nubuck",
    "canvas",        "cotton",
    "polyester",     "nylon",
    "faux leather",  "goatskin",
    "lambskin",      "wool felt",
    "cork",          "microfibre",
    "linen",         "nappa leather",
    "vegan leather", "recycled polyester",
};
constexpr std::array<std::string_view, 10> kQualities = {
    "genuine", "vegetable tanned", "premium", "soft", "real", "smooth", "waxed", "fine", "embossed", "heavy"};
constexpr std::array<std::string_view, 8> kParts = {"body", "strap", "handle", "lining",
                                                    "trim", "base",  "flap",   "pocket"};
constexpr std::array<std::string_view, 6> kMetals = {"Brass",       "Zinc alloy", "Stainless steel",
                                                     "Solid brass", "Steel",      "Aluminium"};
constexpr std::array<std::string_view, 6> kFinishes = {"gold-plated", "nickel-free",   "gold-tone",
                                                       "brushed",     "nickel-plated", "antiqued"};
constexpr std::array<std::string_view, 8> kColours = {"tan",           "black", "cognac", "navy",
                                                      "leather brown", "stone", "gold",   "oxblood"};
constexpr std::array<std::string_view, 5> kProducts = {"tote bag", "belt", "wallet", "ankle boots", "watch strap"};

void append_property(std::string& text, std::string_view name, std::string_view value) {
    text += R"({"@type":"PropertyValue","name":")";
    text += name;
    text += R"(","value":")";
    text += value;
    text += R"("})";
}

}  // namespace

std::size_t Catalog::below(std::size_t bound) {
    return random_() % bound;
}

void Catalog::append_sentence(std::string& text) {
    const auto any = [this](const auto& words) { return words[below(words.size())]; };
    const std::string_view frame = any(kFrames);
    for (std::size_t i = 0; i < frame.size(); ++i) {
        if (frame[i] != '%' || i + 1 == frame.size()) {
            text += frame[i];
            continue;
        }
        switch (frame[i + 1]) {
            case 'm':
                text += any(kMaterials);
                break;
            case 'q':
                text += any(kQualities);
                break;
            case 'p':
                text += any(kParts);
                break;
            case 'h':
                text += any(kMetals);
                break;
            case 'f':
                text += any(kFinishes);
                break;
            case 'c':
                text += any(kColours);
                break;
            case 'n':
                text += std::to_string(1 + below(90));
                break;
            default:
                text += frame[i];
                continue;
        }
        ++i;
    }
}

void Catalog::append_listing(std::string& text) {
    const auto any = [this](const auto& words) { return words[below(words.size())]; };
    const std::string_view product = any(kProducts);
    text += R"({"@context":"https://schema.org","@type":"Product","sku":"inv-)" + std::to_string(number_++) +
            R"(","name":"Invented )";
    text += any(kColours);
    text += ' ';
    text += product;
    text += " in ";
    text += any(kMaterials);
    text += R"(","description":")";
    for (std::size_t sentences = 10 + below(9); sentences > 0; --sentences) {
        append_sentence(text);
        text += sentences == 1 ? "" : below(6) == 0 ? R"(\n)" : " ";
    }
    text += R"(","material":")";
    text += any(kMaterials);
    text += R"(","category":")";
    text += product;
    text += R"(","inLanguage":"en","additionalProperty":[)";
    append_property(text, "Lining", any(kMaterials));
    text += ',';
    append_property(text, "Hardware", any(kMetals));
    text += R"(],"offers":{"@type":"Offer","price":")" + std::to_string(20 + below(400)) +
            R"(.00","priceCurrency":"EUR"}})";
    text += '\n';
}

std::vector<std::string_view> Catalog::terms() {
    std::vector<std::string_view> all;
    const auto add = [&](const auto& words) { all.insert(all.end(), words.begin(), words.end()); };
    add(kMaterials);
    add(kQualities);
    add(kMetals);
    add(kFinishes);
    all.push_back("waterproof");
    return all;
}

std::string catalog_of(std::size_t bytes) {
    std::string text;
    Catalog catalog;
    while (text.size() < bytes) catalog.append_listing(text);
    return text;
}

}  // namespace grainside::bench
