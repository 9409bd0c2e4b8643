// Lists of percentages: whether those of one part add up.
#include <algorithm>
#include <array>
#include <cstdint>
#include <span>

#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

bool is_whole(double sum) {
    constexpr double kRounding = 1.0;  // three thirds are printed as 33 %
    return sum <= 100 + kRounding && sum >= 100 - kRounding;
}

bool is_share(const Claim& claim) {
    return claim.kind == Kind::composition && claim.quantity.has_value();
}

// The percentages of a segment that no claim took: those of materials that the vocabulary does not know ('20% cactus
// powder').
class UnknownShares {
public:
    explicit UnknownShares(const SegmentContext& segment) : segment_(segment) {}

    // Finds those from byte `start` to byte `end`, beside `list`. Call with rising bytes.
    void find(std::span<const Claim> list, std::uint32_t start, std::uint32_t end) {
        constexpr std::size_t kLongestList = 64;  // no product has as many fibres; keeps a hostile text linear
        count_ = 0;
        sum_ = 0;
        if (list.size() > kLongestList) return;
        for (; next_ + 1 < segment_.pieces.size(); ++next_) {
            const Piece& number = segment_.pieces[next_];
            const std::uint32_t at = segment_.tokens.list[number.first].start;
            if (at >= end) break;
            if (at < start || number.kind != PieceKind::number) continue;
            if (!segment_.pieces[next_ + 1].is_mark(TokenKind::percent)) continue;
            const bool taken = std::any_of(list.begin(), list.end(), [at](const Claim& claim) {
                return is_share(claim) && claim.start <= at && at < claim.end;
            });
            if (taken) continue;
            sum_ += number.number;
            if (count_ < places_.size()) places_[count_++] = next_;
        }
    }

    double sum() const noexcept { return sum_; }

    // A claim for each that is followed by words; the material is not known.
    void add_claims(const Claim& like, std::vector<Claim>& claims) const {
        constexpr std::uint32_t kLongestName = 3;
        for (std::size_t i = 0; i < count_; ++i) {
            std::uint32_t last = places_[i] + 2;
            while (last < segment_.pieces.size() && last < places_[i] + 2 + kLongestName &&
                   segment_.pieces[last].kind == PieceKind::word) {
                ++last;
            }
            if (last == places_[i] + 2) continue;
            const double share = segment_.pieces[places_[i]].number;
            Claim claim = claim_over(segment_, places_[i], last);
            claim.says = segment_.vocabulary.known.other_fibres;
            claim.kind = Kind::composition;
            claim.quantity = Quantity{share, share, Unit::percent};
            claim.part = like.part;
            claim.family = like.family;
            claim.phrase = like.phrase;
            claims.push_back(claim);
        }
    }

private:
    const SegmentContext& segment_;
    std::array<std::uint32_t, 8> places_{};  // pieces
    std::size_t count_ = 0;
    double sum_ = 0;
    std::uint32_t next_ = 0;
};

// '60% cotton, 40% rayon, except 4% nylon in the heel': where the sum ends, as an index into `claims`.
std::size_t behind_sums(const SegmentContext& segment, std::size_t first, const std::vector<Claim>& claims) {
    for (const Piece& piece : segment.pieces) {
        if (!piece.is(Role::exception)) continue;
        const std::uint32_t at = segment.tokens.list[piece.first].start;
        const auto behind = std::find_if(claims.begin() + static_cast<std::ptrdiff_t>(first), claims.end(),
                                         [at](const Claim& claim) { return claim.start > at; });
        return static_cast<std::size_t>(behind - claims.begin());
    }
    return claims.size();
}

}  // namespace

void check_shares(const SegmentContext& segment, std::size_t first, std::vector<Claim>& claims) {
    UnknownShares unknown(segment);
    const std::size_t all = claims.size();
    const std::size_t count = behind_sums(segment, first, claims);
    std::uint32_t from = 0;
    for (std::size_t i = first; i < count;) {
        if (!is_share(claims[i])) {
            ++i;
            continue;
        }
        double sum = 0;
        std::size_t shares = 0;
        std::size_t end = i;
        std::uint32_t list_end = 0;
        for (; end < count; ++end) {
            if (!is_share(claims[end])) continue;
            const bool one_noun = claims[end].part == claims[i].part && claims[end].family == claims[i].family;
            if ((!one_noun && !of_one_thing(claims[end], claims[i])) || claims[end].negated) break;
            // '100% polyester' is a list of its own: 'lining 100% polyester, sleeve lining 97% polyester, 3% elastane'.
            if (shares > 0 && (claims[end].quantity->low >= 100 || claims[i].quantity->low >= 100)) break;
            sum += claims[end].quantity->low;
            list_end = claims[end].end;
            ++shares;
        }
        claims[i].marks |= bit(Mark::first_share);
        const std::uint32_t next = end < all ? claims[end].start : UINT32_MAX;
        if (!is_whole(sum)) {
            unknown.find(std::span(claims).subspan(i, end - i), from, next);
            const bool whole = is_whole(sum + unknown.sum());
            if (!whole && shares > 1) {
                claims[i].marks |= bit(Mark::shares_off);
                claims[i].list_end = list_end;
            }
            if (whole || shares > 1) {
                const Claim known = claims[i];
                unknown.add_claims(known, claims);
            }
        }
        from = next;
        i = std::max(end, i + 1);
    }
}

}  // namespace grainside::claims
