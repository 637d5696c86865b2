// SPDX-License-Identifier: MIT
#include "pour/cells.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace strikeoff {
namespace {

double length_nm(const Point& a, const Point& b) {
  return std::hypot((b.x - a.x).in_nm(), (b.y - a.y).in_nm());
}

double length_nm(const Polygon& line) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) sum += length_nm(line[i], line[i + 1]);
  return sum;
}

Length mean_front(const FrontTable& fronts, double from, double to) {
  return (fronts.at(from) + 4 * fronts.at((from + to) / 2) + fronts.at(to)) / 6;
}

Length advance(const FrontTable& fronts, Area slab, double from, double to) {
  const Length front = mean_front(fronts, from, to);
  return front > Length{} ? Length::m(slab.si() * (to - from) / front.in_m()) : Length::m(1e6);
}

/// A stretch of a front, nm along it, and the cell whose edge it is.
struct Stretch {
  double lo = 0, hi = 0;
  std::size_t cell = 0;
};

/// What of the line ab is on the edge pq, as distances from a.
std::optional<std::pair<double, double>> on_line(const Point& p, const Point& q, const Point& a,
                                                 const Point& b) {
  constexpr double beside = 10;  // nm
  const double length = length_nm(a, b);
  const double x = (b.x - a.x).in_nm() / length, y = (b.y - a.y).in_nm() / length;
  const auto across = [&](const Point& at) {
    return (at.y - a.y).in_nm() * x - (at.x - a.x).in_nm() * y;
  };
  const auto along = [&](const Point& at) {
    return (at.x - a.x).in_nm() * x + (at.y - a.y).in_nm() * y;
  };
  if (std::abs(across(p)) > beside || std::abs(across(q)) > beside) return std::nullopt;
  const double lo = std::max(0.0, std::min(along(p), along(q)));
  const double hi = std::min(length, std::max(along(p), along(q)));
  if (hi <= lo) return std::nullopt;
  return std::pair{lo, hi};
}

/// Where the edges of these cells run along a front.
std::vector<Stretch> stretches_on(const Polygon& line, const SlabCells& cells, std::size_t first,
                                  std::size_t count) {
  std::vector<Stretch> stretches;
  if (count == 1) return {{0, length_nm(line), first}};
  for (std::size_t c = first; c < first + count; ++c) {
    for (const Polygon& part : cells.parts[c]) {
      for (std::size_t i = 0; i < part.size(); ++i) {
        double before = 0;
        for (std::size_t k = 0; k + 1 < line.size(); ++k) {
          const auto on = on_line(part[i], part[(i + 1) % part.size()], line[k], line[k + 1]);
          if (on) stretches.push_back({before + on->first, before + on->second, c});
          before += length_nm(line[k], line[k + 1]);
        }
      }
    }
  }
  std::sort(stretches.begin(), stretches.end(),
            [](const Stretch& a, const Stretch& b) { return a.lo < b.lo; });
  std::vector<Stretch> joined;
  for (const Stretch& next : stretches) {
    if (!joined.empty() && joined.back().cell == next.cell && next.lo - joined.back().hi < 10) {
      joined.back().hi = std::max(joined.back().hi, next.hi);
    } else {
      joined.push_back(next);
    }
  }
  return joined;
}

/// The part of a line between two distances along it.
Polygon part_of(const Polygon& line, double lo, double hi) {
  Polygon part;
  double before = 0;
  const auto add = [&](const Point& p) {
    if (part.empty() || length_nm(part.back(), p) > 10) part.push_back(p);
  };
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    const double length = length_nm(line[k], line[k + 1]);
    const auto at = [&](double along) {
      return towards(line[k], line[k + 1], Length::nm(along - before));
    };
    if (before + length > lo && before < hi) {
      add(lo > before ? at(lo) : line[k]);
      add(hi < before + length ? at(hi) : line[k + 1]);
    }
    before += length;
  }
  return part;
}

/// Where two rows meet along a front.
void meet_along(const Polygon& line, std::vector<Stretch> behind, std::vector<Stretch> ahead,
                std::vector<CellMeeting>& meetings) {
  constexpr double corner = 1e3;  // nm: cells that share less meet at a corner
  for (std::size_t i = 0, k = 0; i < behind.size() && k < ahead.size();) {
    const double lo = std::max(behind[i].lo, ahead[k].lo);
    const double hi = std::min(behind[i].hi, ahead[k].hi);
    if (hi - lo > corner) {
      meetings.push_back({behind[i].cell, ahead[k].cell, part_of(line, lo, hi)});
    }
    if (behind[i].hi < ahead[k].hi) {
      ++i;
    } else {
      ++k;
    }
  }
}

/// Cuts a row straight across the way its cells follow one another.
void cut_row(const std::vector<Polygon>& row, const Direction& along,
             const std::vector<double>& shares, const SlabVolume& volume, SlabCells& cells) {
  std::vector<Ring> rings;
  for (const Polygon& part : row) rings.push_back(ring_of(part, along));
  const Region region = region_of(rings);
  const std::vector<Region> cut = cut_by_volume(region, along, shares, volume);
  for (std::size_t j = 0; j < cut.size(); ++j) {
    if (j > 0 && !cut[j].empty()) {
      const double at = cut[j].front().u0;
      for (const auto& stretch : across(region, at)) {
        cells.meetings.push_back({cells.parts.size() - 1,
                                  cells.parts.size(),
                                  {out_of_frame({at, stretch.first}, along),
                                   out_of_frame({at, stretch.second}, along)}});
      }
    }
    cells.parts.push_back(outlines_of(cut[j], along));
  }
}

Length length_of(const std::vector<Polygon>& front) {
  double sum = 0;
  for (const Polygon& line : front) sum += length_nm(line);
  return Length::nm(sum);
}

/// The row's area over its mean front.
Length row_advance(const Course& course, const CutRows& rows, std::size_t r) {
  Area area;
  for (const Polygon& part : rows.parts[r]) area += signed_area(part);
  const Length before = r == 0 ? course.fronts.front.front() : length_of(rows.fronts[r - 1]);
  const Length after =
      r + 1 == rows.parts.size() ? course.fronts.front.back() : length_of(rows.fronts[r]);
  const Length front = (before + after) / 2;
  return front > Length{} ? Length::m(area.si() / front.in_m()) : Length{};
}

}  // namespace

std::vector<std::size_t> cells_in_rows(const FrontTable& fronts, const std::vector<double>& shares,
                                       Area slab, Length least) {
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<std::size_t> rows;
  double from = 0;
  for (std::size_t i = 0; i < shares.size();) {
    std::size_t count = 0;
    double to = from;
    do {
      to += shares[i + count] / all;
      ++count;
    } while (i + count < shares.size() &&
             advance(fronts, slab, from, std::min(1.0, to)) < least * (1 - 1e-9));
    rows.push_back(count);
    i += count;
    from = to;
  }
  return rows;
}

Estimate estimate(const FrontTable& fronts, const std::vector<double>& shares,
                  const std::vector<std::size_t>& rows, Area slab) {
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  Estimate result;
  double from = 0;
  std::size_t cell = 0;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    double to = from;
    for (std::size_t k = 0; k < rows[r]; ++k) to += shares[cell++] / all;
    const auto between = static_cast<double>(rows[r] - 1);
    result.gap = std::max(result.gap, rows[r]);
    if (rows[r] > 1) result.joints += advance(fronts, slab, from, std::min(1.0, to)) * between;
    if (r + 1 < rows.size()) {
      result.joints += fronts.at(to);
      result.longest = std::max(result.longest, fronts.at(to));
    }
    from = to;
  }
  return result;
}

std::optional<SlabCells> cut_cells(const Course& course, const std::vector<double>& shares,
                                   const std::vector<std::size_t>& rows, const SlabVolume& volume) {
  std::vector<double> row_shares;
  std::vector<std::size_t> first_cell;
  std::size_t cell = 0;
  for (const std::size_t count : rows) {
    first_cell.push_back(cell);
    row_shares.push_back(0);
    for (std::size_t k = 0; k < count; ++k) row_shares.back() += shares[cell++];
  }
  const auto cut = course.cut(row_shares);
  if (!cut) return std::nullopt;
  SlabCells cells;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (rows[r] == 1) {
      cells.parts.push_back(cut->parts[r]);
    } else {
      const auto first = shares.begin() + static_cast<std::ptrdiff_t>(first_cell[r]);
      cut_row(cut->parts[r], cut->along[r], {first, first + static_cast<std::ptrdiff_t>(rows[r])},
              volume, cells);
    }
    cells.advances.resize(cells.parts.size(), row_advance(course, *cut, r));
  }
  for (std::size_t r = 0; r + 1 < rows.size(); ++r) {
    for (const Polygon& line : cut->fronts[r]) {
      meet_along(line, stretches_on(line, cells, first_cell[r], rows[r]),
                 stretches_on(line, cells, first_cell[r + 1], rows[r + 1]), cells.meetings);
    }
  }
  return cells;
}

}  // namespace strikeoff
