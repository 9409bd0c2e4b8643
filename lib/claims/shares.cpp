// Lists of percentages: whether those of one part add up.
#include <algorithm>
#include <span>

#include "claims/segment.h"

namespace grainside::claims {

using text::TokenKind;

namespace {

bool is_whole(double sum) {
    constexpr double kRounding = 1.0;  // three thirds are printed as 33 %
    return sum <= 100 + kRounding && sum >= 100 - kRounding;
}

bool is_share(const Claim& claim) {
    return claim.kind == Kind::composition && claim.quantity.has_value();
}

// Reads the percentages of a segment that no claim took: those of materials that the vocabulary does not know ('20%
// cactus powder').
class UnknownShares {
public:
    explicit UnknownShares(const SegmentContext& segment) : segment_(segment) {}

    // Their sum from byte `start` to byte `end`, beside `list`. Call with rising bytes.
    double sum(std::span<const Claim> list, std::uint32_t start, std::uint32_t end) {
        constexpr std::size_t kLongestList = 64;  // no product has as many fibres; keeps a hostile text linear
        if (list.size() > kLongestList) return 0;
        double sum = 0;
        for (; next_ + 1 < segment_.pieces.size(); ++next_) {
            const Piece& number = segment_.pieces[next_];
            const std::uint32_t at = segment_.tokens.list[number.first].start;
            if (at >= end) break;
            if (at < start || number.kind != PieceKind::number) continue;
            if (!segment_.pieces[next_ + 1].is_mark(TokenKind::percent)) continue;
            const bool taken = std::any_of(list.begin(), list.end(), [at](const Claim& claim) {
                return is_share(claim) && claim.start <= at && at < claim.end;
            });
            if (!taken) sum += number.number;
        }
        return sum;
    }

private:
    const SegmentContext& segment_;
    std::size_t next_ = 0;
};

}  // namespace

void check_shares(const SegmentContext& segment, std::size_t first, std::vector<Claim>& claims) {
    UnknownShares unknown(segment);
    for (std::size_t i = first; i < claims.size();) {
        if (!is_share(claims[i])) {
            ++i;
            continue;
        }
        double sum = 0;
        std::size_t shares = 0;
        std::size_t end = i;
        std::uint32_t list_end = 0;
        for (; end < claims.size(); ++end) {
            if (!is_share(claims[end])) continue;
            if (claims[end].part != claims[i].part || claims[end].negated) break;
            // '100% polyester' is a list of its own: 'lining 100% polyester, sleeve lining 97% polyester, 3% elastane'.
            if (shares > 0 && (claims[end].quantity->low >= 100 || claims[i].quantity->low >= 100)) break;
            sum += claims[end].quantity->low;
            list_end = claims[end].end;
            ++shares;
        }
        claims[i].marks |= bit(Mark::first_share);
        const std::uint32_t next = end < claims.size() ? claims[end].start : UINT32_MAX;
        if (shares > 1 && !is_whole(sum) &&
            !is_whole(sum + unknown.sum(std::span(claims).subspan(i, end - i), claims[i].start, next))) {
            claims[i].marks |= bit(Mark::shares_off);
            claims[i].list_end = list_end;
        }
        i = std::max(end, i + 1);
    }
}

}  // namespace grainside::claims
