// SPDX-License-Identifier: MIT
#include "slab/splice.h"

#include <algorithm>
#include <cstddef>

namespace strikeoff {
namespace {

bool keeps_apart(const std::vector<Length>& own, const Stagger& stagger) {
  for (const Length joint : own) {
    const auto next = std::lower_bound(stagger.beside.begin(), stagger.beside.end(), joint);
    if (next != stagger.beside.end() && *next - joint < stagger.apart) return false;
    if (next != stagger.beside.begin() && joint - *std::prev(next) < stagger.apart) return false;
  }
  return true;
}

}  // namespace

std::vector<Length> split(Length whole, Length first, const PieceRule& rule) {
  std::vector<Length> pieces;
  Length rest = whole, next = first;
  while (rest > next) {
    pieces.push_back(next);
    rest -= next + rule.gap;
    next = rule.full;
  }
  pieces.push_back(rest);
  if (pieces.size() > 1 && pieces.back() < rule.least) {
    Length& before = pieces[pieces.size() - 2];
    // Never more than an even share, for stock too short to give the wanted least.
    const Length even = (before + rest) / 2;
    const Length wanted = rule.share ? even : std::min(rule.least, even);
    before -= wanted - rest;
    pieces.back() = wanted;
  }
  return pieces;
}

std::vector<Length> joints(const std::vector<Length>& pieces, Length start, Length gap) {
  std::vector<Length> at;
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
    start += pieces[i] + gap;
    at.push_back(start - gap / 2);
  }
  return at;
}

std::vector<Length> split_apart(Length whole, const PieceRule& rule, const Stagger& stagger) {
  std::vector<Length> plain = split(whole, rule.full, rule);
  std::reverse(plain.begin(), plain.end());
  std::vector<Length> best;
  // 50 shortenings are more than any board or sheet holds; the bound keeps odd stock quick.
  for (int shift = 0; shift < 50; ++shift) {
    const Length first = rule.full - stagger.apart * 2 * shift;
    if (first < rule.least) break;
    std::vector<Length> pieces = split(whole, first, rule);
    for (int from_end = 1; from_end >= 0; --from_end) {
      std::reverse(pieces.begin(), pieces.end());
      if (!best.empty() && pieces.size() >= best.size()) continue;
      if (keeps_apart(joints(pieces, stagger.start, rule.gap), stagger)) best = pieces;
    }
    if (best.size() == plain.size()) break;
  }
  return best.empty() ? plain : best;
}

}  // namespace strikeoff
