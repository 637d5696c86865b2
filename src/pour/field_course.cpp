// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "pour/course.h"
#include "pour/front_slide.h"
#include "pour/joint_corners.h"
#include "pour/rising_root.h"

namespace strikeoff {
namespace {

/// A triangle by rising field: values, area, and the length of the front through its middle node.
struct Rising {
  double a = 0, b = 0, c = 0;
  double area = 0, longest = 0;  // m2, m

  [[nodiscard]] double behind(double level) const {
    if (level <= a) return 0;
    if (level >= c) return area;
    if (level < b) return area * (level - a) * (level - a) / ((b - a) * (c - a));
    return area * (1 - (c - level) * (c - level) / ((c - a) * (c - b)));
  }
  [[nodiscard]] double front(double level) const {
    if (level <= a || level >= c) return 0;
    return longest * (level < b ? (level - a) / (b - a) : (c - level) / (c - b));
  }
};

Rising rising(const PourMesh& mesh, const std::vector<double>& field, std::size_t triangle) {
  std::array<std::size_t, 3> n = mesh.triangles[triangle];
  const Polygon corners{mesh.nodes[n[0]], mesh.nodes[n[1]], mesh.nodes[n[2]]};
  std::sort(n.begin(), n.end(), [&](std::size_t i, std::size_t k) { return field[i] < field[k]; });
  Rising t{field[n[0]], field[n[1]], field[n[2]], signed_area(corners).si(), 0};
  if (t.c > t.a) {
    const double part = (t.b - t.a) / (t.c - t.a);
    const Point &low = mesh.nodes[n[0]], &mid = mesh.nodes[n[1]], &high = mesh.nodes[n[2]];
    t.longest = std::hypot((low.x + (high.x - low.x) * part - mid.x).in_m(),
                           (low.y + (high.y - low.y) * part - mid.y).in_m());
  }
  return t;
}

/// Levels at which about equal areas lie between neighbours, from just after the start to just
/// before the end: in a dead end the field hardly rises.
std::vector<double> spread_levels(const std::vector<Rising>& triangles) {
  constexpr double steps = 64, near_end = 1e-6, apart = 1e-12;
  std::vector<std::pair<double, double>> middles;  // field, area
  double all = 0, behind = 0;
  for (const Rising& t : triangles) {
    middles.emplace_back((t.a + t.b + t.c) / 3, t.area);
    all += t.area;
  }
  std::sort(middles.begin(), middles.end());
  std::vector<double> levels{near_end};
  double next = all / steps;
  for (const auto& [field, area] : middles) {
    behind += area;
    if (behind < next) continue;
    next = behind + all / steps;
    if (field > levels.back() + apart && field < 1 - near_end) levels.push_back(field);
  }
  levels.push_back(1 - near_end);
  return levels;
}

FrontTable table_of(const PourMesh& mesh, const std::vector<double>& field,
                    std::vector<double>& levels) {
  std::vector<Rising> triangles;
  for (std::size_t k = 0; k < mesh.triangles.size(); ++k) {
    triangles.push_back(rising(mesh, field, k));
  }
  levels = spread_levels(triangles);
  std::vector<double> behind(levels.size()), front(levels.size()), whole(levels.size() + 1);
  for (const Rising& t : triangles) {
    auto i = static_cast<std::size_t>(std::lower_bound(levels.begin(), levels.end(), t.a) -
                                      levels.begin());
    for (; i < levels.size() && levels[i] < t.c; ++i) {
      behind[i] += t.behind(levels[i]);
      front[i] += t.front(levels[i]);
    }
    whole[i] += t.area;
  }
  FrontTable table;
  const double all = std::accumulate(triangles.begin(), triangles.end(), 0.0,
                                     [](double sum, const Rising& t) { return sum + t.area; });
  double full = 0;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    full += whole[i];
    table.behind.push_back((behind[i] + full) / all);
    table.front.push_back(Length::m(front[i]));
  }
  return table;
}

/// About the level with this share of the slab behind it.
double level_behind(const FrontTable& table, const std::vector<double>& levels, double share) {
  const auto next = std::lower_bound(table.behind.begin(), table.behind.end(), share);
  if (next == table.behind.begin()) return 0;
  if (next == table.behind.end()) return 1;
  const auto i = static_cast<std::size_t>(next - table.behind.begin());
  const double part = (share - table.behind[i - 1]) / (table.behind[i] - table.behind[i - 1]);
  return levels[i - 1] + (levels[i] - levels[i - 1]) * part;
}

/// A cut, or a front within a row that splits it beside an opening.
struct Level {
  double at = 0;
  Front front;
  bool is_cut = true;
};

class FieldCourse : public Course {
 public:
  FieldCourse(std::shared_ptr<const WalkedMesh> mesh, std::vector<double> field,
              const SlabVolume& volume, std::vector<Point> corners, Length clearance)
      : mesh_(std::move(mesh)),
        field_(std::move(field)),
        volume_(volume),
        corners_(std::move(corners)),
        clearance_(clearance) {
    fronts = table_of(mesh_->mesh, field_, levels_);
    for (const Polygon& ring : mesh_->corners) {
      rings_.push_back(volume_.over(ring).si());
      area_ += signed_area(ring).si();
    }
    whole_ = std::accumulate(rings_.begin(), rings_.end(), 0.0);
  }

  [[nodiscard]] std::optional<CutRows> cut(const std::vector<double>& shares) const override {
    if (shares.size() < 2) return std::nullopt;
    // Straight lines may get in each other's way: those that do are left as the field has them,
    // which never cross; at last all of them.
    constexpr int most_tries = 4;
    std::vector<bool> straight(shares.size(), true);
    for (int i = 0; i < most_tries; ++i) {
      auto levels = find_levels(shares, straight);
      if (!levels) break;
      split_rows(*levels);
      if (bend_crossing(*levels, straight)) continue;
      if (auto rows = rows_of(off_corners(*levels))) return rows;
      if (auto rows = rows_of(*levels)) return rows;
      break;
    }
    straight.assign(shares.size(), false);
    auto levels = find_levels(shares, straight);
    if (!levels) return std::nullopt;
    split_rows(*levels);
    return rows_of(*levels);
  }

 private:
  [[nodiscard]] Front front(double level, bool straight) const {
    Front lines = front_at(*mesh_, field_, level);
    return straight ? straightened(*mesh_, std::move(lines)) : lines;
  }

  /// No level goes through a node of the edge: it would meet it in a point or a whole side.
  [[nodiscard]] double clear(double level) const {
    constexpr double near = 1e-9;
    for (const RingEdge& edge : mesh_->edges) {
      if (std::abs(field_[edge.from] - level) < near) return level + 2 * near;
    }
    return level;
  }

  [[nodiscard]] Bands bands(const std::vector<const Level*>& levels) const {
    std::vector<double> at;
    std::vector<const Front*> lines;
    for (const Level* level : levels) {
      at.push_back(level->at);
      lines.push_back(&level->front);
    }
    return bands_between(*mesh_, field_, at, lines);
  }

  /// Of the last band but one: between two levels, or before the only one.
  [[nodiscard]] double volume_before(const std::vector<const Level*>& levels) const {
    const Bands all = bands(levels);
    const std::size_t band = levels.size() - 1;
    double sum = 0;
    for (const Polygon& part : all.parts[band]) sum += volume_.over(part).si();
    for (const std::size_t ring : all.whole[band]) sum += rings_[ring];
    return sum;
  }

  [[nodiscard]] std::optional<std::vector<Level>> find_levels(const std::vector<double>& shares,
                                                              std::vector<bool>& straight) const {
    const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
    std::vector<Level> levels;
    double share = 0, done = 0;
    for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
      share += shares[k] / all;
      const double wanted = whole_ * share - done;
      if (wanted <= 0) return std::nullopt;
      Level level;
      double volume = 0;
      const auto missing = [&](double at) {
        level.at = clear(at);
        level.front = front(level.at, straight[k]);
        std::vector<const Level*> between{&level};
        if (k > 0) between.insert(between.begin(), &levels.back());
        volume = volume_before(between);
        return volume - wanted;
      };
      const double start = k > 0 ? levels.back().at : 0;
      // A fiftieth of what the volumes of batches may differ by.
      const double within = 1e-4 * std::min(shares[k], shares[k + 1]) / all * whole_;
      const double guess = level_behind(fronts, levels_, share);
      bool found = rising_root(missing, start, 1, guess, within).has_value();
      if (!found && straight[k]) {
        // Where the front turns from one straight line to another its volume jumps.
        straight[k] = false;
        found = rising_root(missing, start, 1, guess, within).has_value();
      }
      if (!found) return std::nullopt;
      if (level.front.empty()) return std::nullopt;
      done += volume;
      levels.push_back(std::move(level));
    }
    return levels;
  }

  /// An opening that lies within one row splits it in two, half-way along the opening.
  void split_rows(std::vector<Level>& levels) const {
    std::vector<const Level*> view;
    for (const Level& level : levels) view.push_back(&level);
    const Bands all = bands(view);
    std::vector<Level> splits;
    for (const std::vector<std::size_t>& rings : all.whole) {
      for (const std::size_t ring : rings) {
        if (ring == 0) continue;
        double least = 1, most = 0;
        for (std::size_t e = mesh_->first_of[ring]; e < mesh_->first_of[ring + 1]; ++e) {
          least = std::min(least, field_[mesh_->edges[e].from]);
          most = std::max(most, field_[mesh_->edges[e].from]);
        }
        const double at = clear((least + most) / 2);
        splits.push_back({at, front(at, false), false});
      }
    }
    levels.insert(levels.end(), splits.begin(), splits.end());
    std::stable_sort(levels.begin(), levels.end(),
                     [](const Level& a, const Level& b) { return a.at < b.at; });
    // Openings side by side need but one.
    levels.erase(std::unique(levels.begin(), levels.end(),
                             [](const Level& a, const Level& b) {
                               return !a.is_cut && !b.is_cut && b.at - a.at < 1e-6;
                             }),
                 levels.end());
  }

  /// True when neighbours cross; those are not to be straight.
  static bool bend_crossing(const std::vector<Level>& levels, std::vector<bool>& straight) {
    bool crossing = false;
    std::size_t cuts = 0;
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
      if (levels[i].is_cut) ++cuts;
      if (are_apart(levels[i].front, levels[i + 1].front)) continue;
      crossing = true;
      if (levels[i].is_cut) straight[cuts - 1] = false;
      if (levels[i + 1].is_cut) straight[cuts] = false;
    }
    return crossing;
  }

  /// Straight lines that end too near a corner are swung, so that they end off it and as much lies
  /// behind them as before.
  [[nodiscard]] std::vector<Level> off_corners(std::vector<Level> levels) const {
    for (std::size_t i = 0; i < levels.size(); ++i) {
      for (std::size_t k = 0; k < levels[i].front.size(); ++k) {
        if (!levels[i].is_cut || levels[i].front[k].line.size() != 2) continue;
        for (const bool up : {true, false}) {
          if (auto swung = off_corner(levels, i, k, up)) levels[i].front = std::move(*swung);
        }
      }
    }
    return levels;
  }

  [[nodiscard]] std::optional<Front> off_corner(const std::vector<Level>& levels, std::size_t i,
                                                std::size_t k, bool up) const {
    const FrontLine& line = levels[i].front[k];
    const Point& end = up ? line.line.front() : line.line.back();
    const auto away = near_corner({end}, corners_, clearance_);
    if (!away) return std::nullopt;
    const Length by = (clearance_ - *away) * (1 + 1e-6);
    for (const Length shift : {by, -by}) {
      if (auto swung = swing(levels, i, k, up, shift)) return swung;
    }
    return std::nullopt;
  }

  /// One end moved by so much, the other so that the volumes stay.
  [[nodiscard]] std::optional<Front> swing(const std::vector<Level>& levels, std::size_t i,
                                           std::size_t k, bool up, Length shift) const {
    Level level = levels[i];
    std::vector<const Level*> between{&level};
    if (i > 0) between.insert(between.begin(), &levels[i - 1]);
    const double wanted = volume_before(between);
    const double most = 2 * std::abs(shift.in_nm());
    bool is_possible = true;
    const auto missing = [&](double other) {
      const Length back = Length::nm(other);
      const auto moved = up ? slid(*mesh_, levels[i].front[k], shift, back)
                            : slid(*mesh_, levels[i].front[k], back, shift);
      is_possible = moved.has_value();
      if (!is_possible) return 0.0;  // ends the search
      level.front[k] = *moved;
      return volume_before(between) - wanted;
    };
    const double guess = -shift.in_nm();
    if (!rising_root(missing, -most, most, guess, 1e-6 * wanted) || !is_possible) {
      return std::nullopt;
    }
    const bool clear = !near_corner(level.front[k].line, corners_, clearance_) &&
                       (i == 0 || are_apart(levels[i - 1].front, level.front)) &&
                       (i + 1 == levels.size() || are_apart(level.front, levels[i + 1].front));
    if (!clear) return std::nullopt;
    return level.front;
  }

  /// Nothing when the parts do not tile the slab.
  [[nodiscard]] std::optional<CutRows> rows_of(const std::vector<Level>& levels) const {
    std::vector<const Level*> view;
    for (const Level& level : levels) view.push_back(&level);
    Bands all = bands(view);
    CutRows rows;
    rows.parts.emplace_back();
    double covered = 0;
    for (std::size_t i = 0; i < all.parts.size(); ++i) {
      if (!all.whole[i].empty()) return std::nullopt;
      for (Polygon& part : all.parts[i]) {
        const double area = signed_area(part).si();
        if (std::abs(area) < 1e-10) continue;  // a tenth of a square millimetre
        if (area < 0 || self_contact(part)) return std::nullopt;
        covered += area;
        rows.parts.back().push_back(from_lower_left(std::move(part)));
      }
      if (i == levels.size()) break;
      if (!levels[i].is_cut) continue;
      rows.parts.emplace_back();
      rows.fronts.emplace_back();
      for (const FrontLine& line : levels[i].front) rows.fronts.back().push_back(line.line);
    }
    if (std::abs(covered / area_ - 1) > 1e-7) return std::nullopt;
    set_along(rows);
    return rows;
  }

  /// Cells of a row follow one another along the front behind it, all rows the same way round.
  static void set_along(CutRows& rows) {
    std::vector<Direction> of_fronts;
    for (const std::vector<Polygon>& lines : rows.fronts) {
      double x = 0, y = 0;
      for (const Polygon& line : lines) {
        x += (line.back().x - line.front().x).in_nm();
        y += (line.back().y - line.front().y).in_nm();
      }
      const double length = std::hypot(x, y);
      of_fronts.push_back(length > 0 ? Direction{x / length, y / length} : Direction{});
    }
    const double sign = of_fronts.front().x + of_fronts.front().y < 0 ? -1 : 1;
    rows.along.push_back({sign * of_fronts.front().x, sign * of_fronts.front().y});
    for (const Direction& d : of_fronts) rows.along.push_back({sign * d.x, sign * d.y});
  }

  std::shared_ptr<const WalkedMesh> mesh_;
  std::vector<double> field_;
  SlabVolume volume_;
  std::vector<Point> corners_;  // to keep joints off
  Length clearance_;
  std::vector<double> levels_;   // of the table of fronts
  std::vector<double> rings_;    // volumes; openings negative
  double area_ = 0, whole_ = 0;  // m2, m3
};

}  // namespace

std::unique_ptr<Course> field_course(std::shared_ptr<const WalkedMesh> mesh,
                                     std::vector<double> field, const SlabVolume& volume,
                                     std::vector<Point> corners, Length clearance) {
  return std::make_unique<FieldCourse>(std::move(mesh), std::move(field), volume,
                                       std::move(corners), clearance);
}

}  // namespace strikeoff
