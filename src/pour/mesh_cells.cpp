// SPDX-License-Identifier: MIT
#include "pour/mesh_cells.h"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <utility>

namespace strikeoff {
namespace {

constexpr double same_nm = 1;  // far below a tape, far above rounding
constexpr std::size_t none = static_cast<std::size_t>(-1);

/// Corners that differ in u by rounding only get the same u.
void settle_u(std::vector<MeshPlace>& corners) {
  std::vector<std::size_t> order(corners.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return corners[a].u < corners[b].u; });
  for (std::size_t k = 1; k < order.size(); ++k) {
    const double before = corners[order[k - 1]].u;
    if (corners[order[k]].u - before <= same_nm) corners[order[k]].u = before;
  }
}

/// 1 for a side that rises in u, -1 for one that falls, 0 for one along a cut.
int direction(const MeshCells& cells, const RingSide& side) {
  const double from = cells.corners[side.from].u, to = cells.corners[side.to].u;
  return static_cast<int>(from < to) - static_cast<int>(to < from);
}

/// Adds the chains of the ring whose sides begin at `first` and end before `last`.
void add_chains(std::size_t first, std::size_t last, MeshCells& cells) {
  const std::size_t n = last - first;
  std::size_t begin = 0;  // a side that does not go on as the one before it
  while (begin < n && direction(cells, cells.sides[first + begin]) ==
                          direction(cells, cells.sides[first + (begin + n - 1) % n])) {
    ++begin;
  }
  for (std::size_t i = 0; begin < n && i < n;) {
    const auto side = [&](std::size_t k) { return first + (begin + k) % n; };
    const int way = direction(cells, cells.sides[side(i)]);
    Chain chain{{cells.sides[side(i)].from}, {}};
    for (; i < n && direction(cells, cells.sides[side(i)]) == way; ++i) {
      chain.sides.push_back(side(i));
      chain.corners.push_back(cells.sides[side(i)].to);
    }
    if (way == 0) continue;
    if (way < 0) {
      std::reverse(chain.corners.begin(), chain.corners.end());
      std::reverse(chain.sides.begin(), chain.sides.end());
    }
    cells.chains.push_back(std::move(chain));
  }
}

/// Where chains begin and end.
std::vector<double> turns_of(const MeshCells& cells) {
  std::vector<double> turns;
  for (const Chain& chain : cells.chains) {
    turns.push_back(cells.corners[chain.corners.front()].u);
    turns.push_back(cells.corners[chain.corners.back()].u);
  }
  std::sort(turns.begin(), turns.end());
  turns.erase(std::unique(turns.begin(), turns.end()), turns.end());
  return turns;
}

/// The chains that reach from a to b, from low to high, with their height halfway.
std::vector<std::pair<double, std::size_t>> chains_over(const MeshCells& cells, double a,
                                                        double b) {
  std::vector<std::pair<double, std::size_t>> over;
  for (std::size_t k = 0; k < cells.chains.size(); ++k) {
    const Chain& chain = cells.chains[k];
    if (cells.corners[chain.corners.front()].u > a || cells.corners[chain.corners.back()].u < b) {
      continue;
    }
    over.emplace_back(height_at(cells, chain, (a + b) / 2), k);
  }
  std::sort(over.begin(), over.end());
  return over;
}

}  // namespace

std::size_t corner_before(const MeshCells& cells, const Chain& chain, double u) {
  const auto after =
      std::upper_bound(chain.corners.begin(), chain.corners.end(), u,
                       [&](double at, std::size_t corner) { return at < cells.corners[corner].u; });
  return static_cast<std::size_t>(std::distance(chain.corners.begin(), after)) - 1;
}

double height_at(const MeshCells& cells, const Chain& chain, double u) {
  const std::size_t i = corner_before(cells, chain, u);
  const MeshPlace& a = cells.corners[chain.corners[i]];
  if (a.u == u) return a.v;
  const MeshPlace& b = cells.corners[chain.corners[i + 1]];
  return a.v + (u - a.u) / (b.u - a.u) * (b.v - a.v);
}

MeshCells cells_of(std::vector<MeshPlace> corners,
                   const std::vector<std::vector<std::size_t>>& rings) {
  MeshCells cells;
  settle_u(corners);
  cells.corners = std::move(corners);
  for (const auto& ring : rings) {
    const std::size_t first = cells.sides.size();
    for (std::size_t k = 0; k < ring.size(); ++k) {
      cells.sides.push_back({ring[k], ring[(k + 1) % ring.size()]});
    }
    add_chains(first, cells.sides.size(), cells);
  }
  const std::vector<double> turns = turns_of(cells);
  std::vector<std::size_t> latest(cells.chains.size(), none);  // cell, by its low chain
  for (std::size_t k = 0; k + 1 < turns.size(); ++k) {
    const auto over = chains_over(cells, turns[k], turns[k + 1]);
    for (std::size_t i = 0; i + 1 < over.size(); i += 2) {
      const auto [v_low, low] = over[i];
      const auto [v_high, high] = over[i + 1];
      if (v_high - v_low <= same_nm) continue;
      const std::size_t before = latest[low];
      if (before != none && cells.cells[before].high == high &&
          cells.cells[before].end == turns[k]) {
        cells.cells[before].end = turns[k + 1];
      } else {
        latest[low] = cells.cells.size();
        cells.cells.push_back({low, high, turns[k], turns[k + 1]});
      }
    }
  }
  return cells;
}

}  // namespace strikeoff
