#include "verdict/examination/proof_texts.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

#include "claims/claim_parser.h"
#include "verdict/proof.h"

namespace grainside::verdict {

namespace {

bool same_texts(const std::vector<ProofText>& a, const std::vector<ProofText>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const ProofText& one, const ProofText& other) {
        return one.text == other.text && one.title == other.title && one.material == other.material &&
               one.category == other.category && one.words == other.words;
    });
}

}  // namespace

std::vector<std::uint32_t> models_of(std::span<const RuleInfo> rules) {
    std::map<std::string_view, std::uint32_t> by_id;
    for (std::uint32_t i = 0; i < rules.size(); ++i) by_id.emplace(rules[i].id, i);
    std::vector<std::uint32_t> models;
    models.reserve(rules.size());
    for (const RuleInfo& rule : rules) {
        const auto found = rule.like.empty() ? by_id.end() : by_id.find(rule.like);
        models.push_back(found == by_id.end() ? kNoModel : found->second);
    }
    return models;
}

bool shares_proof(const RuleInfo& rule, const RuleInfo& model) noexcept {
    return same_texts(rule.flags, model.flags) && same_texts(rule.passes, model.passes);
}

std::vector<ReadText> read_proof_texts(const rules::BookData& book, std::span<const std::uint32_t> models) {
    std::vector<ReadText> texts;
    claims::ClaimParser parser(book.vocabulary);
    for (std::size_t i = 0; i < book.rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        if (models[i] != kNoModel && shares_proof(rule, book.rules[models[i]])) continue;
        for (const auto* examples : {&rule.flags, &rule.passes}) {
            for (const ProofText& example : *examples) {
                ReadText read;
                Listing listing = listing_of(example);
                parser.parse(listing, read.claims);
                read.fields = std::move(listing.fields);
                read.facts = {parser.category(), book.vocabulary.categories[parser.category()].main_part};
                texts.push_back(std::move(read));
            }
        }
    }
    return texts;
}

}  // namespace grainside::verdict
