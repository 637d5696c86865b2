// SPDX-License-Identifier: MIT
#include "pour/zones.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <tuple>
#include <utility>

#include "mix/mix.h"
#include "pour/region.h"

namespace strikeoff {
namespace {

/// What one batch leaves in one slab, as a fraction of a batch.
struct Portion {
  int batch = 0;
  double share = 1;
};

/// A row across the sweep, one cell per portion from low to high v.
struct Row {
  double end = 0;  // u where the next row starts
  std::vector<Region> cells;
  std::size_t first = 0;  // its first portion
};

/// The slab as the sweep sees it: u along the long direction.
struct Sweep {
  bool along_x = true;
  Length front;  // across
  Region region;
};

Sweep sweep_of(const SlabPlan& slab) {
  const Rectangle box = bounding_box(slab.outline);
  Sweep sweep;
  sweep.along_x = box.length >= box.depth;
  sweep.front = sweep.along_x ? box.depth : box.length;
  const auto ring = [&](const Polygon& polygon) {
    Ring corners;
    for (const Point& p : polygon) {
      const double x = p.x.in_nm(), y = p.y.in_nm();
      corners.push_back(sweep.along_x ? Corner{x, y} : Corner{y, x});
    }
    return corners;
  };
  std::vector<Ring> rings{ring(slab.outline)};
  for (const OpeningPlan& opening : slab.openings) {
    rings.push_back(ring(chords(opening.edge, drawn_within)));
  }
  sweep.region = region_of(rings);
  return sweep;
}

/// The portions of the slab between two points of the pour, both counted in batches. A point
/// within 1e-9 of a whole batch is that batch's end: no sliver from rounding.
std::vector<Portion> portions(double from, double to) {
  const auto settle = [](double q) {
    return std::abs(q - std::round(q)) < 1e-9 ? std::round(q) : q;
  };
  from = settle(from);
  to = settle(to);
  std::vector<Portion> out;
  for (double q = std::floor(from); q < to; ++q) {
    out.push_back({static_cast<int>(q) + 1, std::min(to, q + 1) - std::max(from, q)});
  }
  return out;
}

bool is_rectangle(const SlabPlan& slab) {
  return slab.outline.size() == 4 && is_right_angled(slab.outline);
}

/// How many batches make one row, so that the front never advances by less than max(2h, 150 mm)
/// (assumption): a thinner ribbon cannot be worked in and dries at its edge.
std::size_t cells_in_row(const SlabPlan& slab, Length front, Volume batch, std::size_t portions) {
  const Length depth = slab.concrete / slab.top_area;
  const Length advance = batch / (depth * front);
  const Length least = std::max(2 * slab.edge_thickness, Length::mm(150));
  const double all = static_cast<double>(portions);
  return static_cast<std::size_t>(std::max(1, whole_up(std::min(least / advance, all))));
}

std::vector<double> shares(const std::vector<Portion>& portions, std::size_t first,
                           std::size_t count) {
  std::vector<double> out;
  for (std::size_t i = first; i < first + count; ++i) out.push_back(portions[i].share);
  return out;
}

/// Where consecutive parts of a cut meet.
void meet(const std::vector<Region>& parts, const std::vector<Portion>& portions, std::size_t first,
          std::vector<BatchContact>& contacts) {
  for (std::size_t k = 0; k + 1 < parts.size(); ++k) {
    if (parts[k + 1].empty()) continue;
    const double cut = parts[k + 1].front().u0;
    std::vector<Stretch> ends, starts;
    add_stretches(parts[k], cut, Facing::onward, portions[first + k].batch, ends);
    add_stretches(parts[k + 1], cut, Facing::back, portions[first + k + 1].batch, starts);
    add_contacts(std::move(ends), std::move(starts), contacts);
  }
}

/// Cuts the region into rows of `per_row` cells; the last row may hold fewer.
std::vector<Row> cut_rows(const Region& region, const std::vector<Portion>& portions,
                          std::size_t per_row, std::vector<BatchContact>& contacts) {
  std::vector<double> row_shares;
  for (std::size_t i = 0; i < portions.size(); i += per_row) {
    double sum = 0;
    for (const double s : shares(portions, i, std::min(per_row, portions.size() - i))) sum += s;
    row_shares.push_back(sum);
  }
  std::vector<Row> rows;
  double end = region.front().u0;
  for (Region& part : cut_by_area(region, row_shares)) {
    const std::size_t first = rows.size() * per_row;
    if (!part.empty()) end = part.back().u1;
    Row row{end, {}, first};
    const std::size_t count = std::min(per_row, portions.size() - first);
    if (count == 1) {
      row.cells.push_back(std::move(part));
    } else {
      row.cells = cut_by_area(exchanged(part), shares(portions, first, count));
      meet(row.cells, portions, first, contacts);
      for (Region& cell : row.cells) cell = exchanged(cell);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

/// Where each row meets the next.
void meet(const std::vector<Row>& rows, const std::vector<Portion>& portions,
          std::vector<BatchContact>& contacts) {
  const auto collect = [&](const Row& row, double u, Facing facing) {
    std::vector<Stretch> stretches;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      add_stretches(row.cells[c], u, facing, portions[row.first + c].batch, stretches);
    }
    return stretches;
  };
  for (std::size_t r = 0; r + 1 < rows.size(); ++r) {
    add_contacts(collect(rows[r], rows[r].end, Facing::onward),
                 collect(rows[r + 1], rows[r].end, Facing::back), contacts);
  }
}

/// The outline of trapezoids that follow one another, in the base frame, anticlockwise; corners
/// that coincide or lie on a straight line stand once.
Polygon outline(const std::vector<Trapezoid>& chain, bool along_x) {
  const auto point = [&](double u, double v) {
    return along_x ? Point{Length::nm(u), Length::nm(v)} : Point{Length::nm(v), Length::nm(u)};
  };
  Polygon low, high;
  for (const Trapezoid& t : chain) {
    low.insert(low.end(), {point(t.u0, t.lo0), point(t.u1, t.lo1)});
    high.insert(high.end(), {point(t.u0, t.hi0), point(t.u1, t.hi1)});
  }
  low.insert(low.end(), high.rbegin(), high.rend());
  if (!along_x) std::reverse(low.begin() + 1, low.end());
  Polygon polygon;
  for (const Point& p : low) {
    while (polygon.size() > 1 &&
           signed_area({polygon[polygon.size() - 2], polygon.back(), p}) == Area{}) {
      polygon.pop_back();
    }
    if (polygon.empty() || !(polygon.back() == p)) polygon.push_back(p);
  }
  if (polygon.front() == polygon.back()) polygon.pop_back();
  return polygon;
}

/// A cell's trapezoids in chains: each goes on where the one before it ended.
std::vector<std::vector<Trapezoid>> chains_of(const Region& cell) {
  std::vector<std::vector<Trapezoid>> chains;
  std::map<std::tuple<double, double, double>, std::size_t> open;  // by where a chain ends
  for (const Trapezoid& t : cell) {
    const auto before = open.find({t.u0, t.lo0, t.hi0});
    std::size_t chain = chains.size();
    if (before == open.end()) {
      chains.emplace_back();
    } else {
      chain = before->second;
      open.erase(before);
    }
    chains[chain].push_back(t);
    open[{t.u1, t.lo1, t.hi1}] = chain;
  }
  return chains;
}

/// Neighbours, gap, joints and the longest front from who meets whom.
void sum_up(const std::vector<BatchContact>& contacts, ZonePlan& plan) {
  const std::size_t batches = plan.zones.size();
  plan.neighbours.resize(batches);
  // The front after batch i is what joins batches up to i to later ones.
  std::vector<Length> opened(batches + 1), closed(batches + 1);
  for (const BatchContact& contact : contacts) {
    const auto first = static_cast<std::size_t>(contact.first);
    const auto second = static_cast<std::size_t>(contact.second);
    const Length length = Length::nm(contact.length);
    plan.neighbours[first - 1].push_back(contact.second);
    plan.neighbours[second - 1].push_back(contact.first);
    plan.gap = std::max(plan.gap, contact.second - contact.first);
    plan.joint_length += length;
    opened[first] += length;
    closed[second] += length;
  }
  Length front;
  for (std::size_t i = 0; i < opened.size(); ++i) {
    front += opened[i] - closed[i];
    plan.wet_edge_max = std::max(plan.wet_edge_max, front);
  }
  for (std::vector<int>& numbers : plan.neighbours) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  }
}

}  // namespace

ZonePlan cut_zones(const std::vector<SlabPlan>& slabs, int batches) {
  Volume whole;
  for (const SlabPlan& slab : slabs) whole += slab.concrete;
  const Volume batch = whole / batches;

  ZonePlan plan;
  plan.zones.resize(static_cast<std::size_t>(batches));
  std::vector<BatchContact> contacts;
  Volume before;
  for (const SlabPlan& slab : slabs) {
    const std::vector<Portion> parts = portions(before / batch, (before + slab.concrete) / batch);
    before += slab.concrete;
    const Sweep sweep = sweep_of(slab);
    const std::size_t per_row =
        is_rectangle(slab) ? cells_in_row(slab, sweep.front, batch, parts.size()) : 1;
    plan.gap_is_assumed = plan.gap_is_assumed || (!is_rectangle(slab) && parts.size() > 2);
    const std::vector<Row> rows = cut_rows(sweep.region, parts, per_row, contacts);
    meet(rows, parts, contacts);
    for (const Row& row : rows) {
      for (std::size_t c = 0; c < row.cells.size(); ++c) {
        std::vector<Zone>& zones =
            plan.zones[static_cast<std::size_t>(parts[row.first + c].batch - 1)];
        for (const auto& chain : chains_of(row.cells[c])) {
          zones.push_back({slab.name, outline(chain, sweep.along_x)});
        }
      }
    }
  }
  sum_up(contacts, plan);
  return plan;
}

}  // namespace strikeoff
