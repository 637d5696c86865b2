// SPDX-License-Identifier: MIT
#include "cutting/board_problem.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <numeric>
#include <utility>

namespace strikeoff {
namespace {

/// A thousandth of a nanometre is the rounding of a sum, not a length.
constexpr double rounding_nm = 1e-3;

std::int64_t up(Length length) {
  return static_cast<std::int64_t>(std::ceil(length.in_nm() - rounding_nm));
}
std::int64_t down(Length length) {
  return static_cast<std::int64_t>(std::floor(length.in_nm() + rounding_nm));
}

}  // namespace

BoardProblem board_problem(const std::vector<BoardItem>& items,
                           const std::vector<BoardSource>& sources, const Saw& saw) {
  std::map<std::pair<std::int64_t, std::int64_t>, std::vector<std::size_t>> alike;
  std::int64_t along = 0, across = 0;
  for (const BoardItem& item : items) {
    const std::int64_t length = up(item.length + saw.kerf), width = up(item.width + saw.kerf);
    along = std::gcd(along, length);
    across = std::gcd(across, width);
    alike[{width, length}].push_back(item.part);
  }
  BoardProblem problem;
  for (const auto& [size, parts] : alike) {
    problem.bars.items.push_back(
        {size.second / along, static_cast<int>(parts.size()), size.first / across});
    problem.parts.push_back(parts);
  }
  for (const BoardSource& source : sources) {
    BarStock& stock = problem.bars.stocks.emplace_back();
    const std::int64_t length = down(source.length - saw.end_trim * 2 + saw.kerf) / along;
    const std::int64_t width = down(source.width + saw.kerf) / across;
    if (source.count) stock.available = std::max(*source.count, 0);
    const bool holds_any =
        std::any_of(problem.bars.items.begin(), problem.bars.items.end(),
                    [&](const BarItem& i) { return i.length <= length && i.width <= width; });
    if (!holds_any) stock.available = 0;
    stock.length = std::max<std::int64_t>(length, 1);
    stock.width = std::max<std::int64_t>(width, 1);
  }
  return problem;
}

BoardPacking packing_of(const std::vector<BarPattern>& patterns, const BoardProblem& problem,
                        const std::vector<BoardItem>& items,
                        const std::vector<BoardSource>& sources, const Saw& saw) {
  std::map<std::size_t, const BoardItem*> item_of;
  for (const BoardItem& item : items) item_of[item.part] = &item;
  std::vector<std::size_t> used(problem.parts.size(), 0);
  BoardPacking packing;
  for (const BarPattern& pattern : patterns) {
    const BoardSource& source = sources[pattern.stock];
    std::vector<BarStrip> strips = pattern.strips;
    if (strips.empty()) strips.push_back({1, pattern.counts});  // a bar is one strip
    for (int n = 0; n < pattern.times; ++n) {
      PackedBoard board{pattern.stock, {}, source.width + saw.kerf};
      for (const BarStrip& from : strips) {
        PackedStrip strip{{}, {}, source.length - saw.end_trim * 2 + saw.kerf};
        for (std::size_t i = from.counts.size(); i-- > 0;) {
          for (int c = 0; c < from.counts[i] && used[i] < problem.parts[i].size(); ++c) {
            const BoardItem& item = *item_of.at(problem.parts[i][used[i]++]);
            strip.parts.push_back(item.part);
            strip.rest -= item.length + saw.kerf;
            strip.width = std::max(strip.width, item.width);
          }
        }
        if (strip.parts.empty()) continue;
        board.rest -= strip.width + saw.kerf;
        board.strips.push_back(std::move(strip));
      }
      if (!board.strips.empty()) packing.boards.push_back(std::move(board));
    }
  }
  return packing;
}

}  // namespace strikeoff
