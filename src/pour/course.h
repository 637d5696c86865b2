// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "pour/front_lines.h"
#include "pour/region_outline.h"
#include "pour/slab_volume.h"
#include "strikeoff/geometry.h"

namespace strikeoff {

/// How long the front is while a pour crosses a slab: pairs of how much of its area is behind the
/// front, from 0 to 1, and the length then.
struct FrontTable {
  std::vector<double> behind;
  std::vector<Length> front;
  [[nodiscard]] Length at(double share) const;
};

/// A slab cut into rows that follow one another.
struct CutRows {
  std::vector<std::vector<Polygon>> parts;   // of each row: simple, anticlockwise, apart
  std::vector<std::vector<Polygon>> fronts;  // between a row and the next: lines, not closed
  std::vector<Direction> along;              // each row, the way its cells follow one another
};

/// One way for a pour to cross a slab.
class Course {
 public:
  virtual ~Course() = default;
  /// Rows whose volumes are as `shares`; nothing where this course cannot be cut so.
  [[nodiscard]] virtual std::optional<CutRows> cut(const std::vector<double>& shares) const = 0;

  std::string from, towards;  // in words
  FrontTable fronts;

 protected:
  Course() = default;
  Course(const Course&) = default;
  Course& operator=(const Course&) = default;
};

/// The region cut straight across u into parts whose volumes are as `shares`.
[[nodiscard]] std::vector<Region> cut_by_volume(const Region& region, const Direction& u,
                                                const std::vector<double>& shares,
                                                const SlabVolume& volume);

/// Straight cuts, all across one direction. Cuts every slab.
[[nodiscard]] std::unique_ptr<Course> straight_course(const Polygon& outline,
                                                      const std::vector<Polygon>& holes,
                                                      bool along_x, const SlabVolume& volume);

/// Fronts along which a field over the mesh is the same, pulled straight; those that would end
/// nearer than the clearance to one of the corners are swung off it where that is enough. `field`
/// has a number from 0 to 1 for each node.
[[nodiscard]] std::unique_ptr<Course> field_course(std::shared_ptr<const WalkedMesh> mesh,
                                                   std::vector<double> field,
                                                   const SlabVolume& volume,
                                                   std::vector<Point> corners, Length clearance);

}  // namespace strikeoff
