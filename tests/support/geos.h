// SPDX-License-Identifier: MIT
// GEOS, another program's geometry, as the oracle of our own. Tests only. Outlines cross over in
// metres; polygons may run either way round and may be neither convex nor near the origin.
#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "strikeoff/geometry.h"

struct GEOSGeom_t;  // as geos_c.h declares it

namespace strikeoff {

/// A plane region as GEOS holds it: one polygon, several, or nothing. Operations give new regions;
/// every failure inside GEOS throws std::runtime_error with its message.
class GeosRegion {
 public:
  explicit GeosRegion(const Polygon& outline, const std::vector<Polygon>& holes = {});
  /// The union of polygons that may overlap; of none, the empty region.
  static GeosRegion union_of(const std::vector<Polygon>& polygons);

  [[nodiscard]] GeosRegion with(const GeosRegion& other) const;     // union
  [[nodiscard]] GeosRegion common(const GeosRegion& other) const;   // intersection
  [[nodiscard]] GeosRegion without(const GeosRegion& other) const;  // difference
  /// Grown, or shrunk by a negative distance, with corners mitred however sharp they are.
  [[nodiscard]] GeosRegion grown_mitred(Length by) const;
  /// Grown with corners rounded by chords, `quarter` of them to a right angle.
  [[nodiscard]] GeosRegion grown_round(Length by, int quarter) const;

  [[nodiscard]] Area area() const;
  [[nodiscard]] Length perimeter() const;               // of holes too
  [[nodiscard]] std::optional<Point> centroid() const;  // nothing for the empty region
  /// How many separate polygons it has, and how many holes they have together.
  [[nodiscard]] int pieces() const;
  [[nodiscard]] int holes() const;
  [[nodiscard]] bool is_valid() const;  // simple, its holes inside
  [[nodiscard]] bool covers(const GeosRegion& other) const;
  [[nodiscard]] bool covers(const Point& point) const;
  /// True when the two have area in common, not only edges or corners.
  [[nodiscard]] bool overlaps(const GeosRegion& other) const;
  [[nodiscard]] Length distance(const GeosRegion& other) const;  // between regions, 0 inside
  [[nodiscard]] Length distance_to_boundary(const Point& point) const;

 private:
  using Held = std::shared_ptr<const GEOSGeom_t>;
  explicit GeosRegion(Held held) : held_(std::move(held)) {}
  Held held_;
};

/// The triangles of points by Delaunay, each anticlockwise.
[[nodiscard]] std::vector<Polygon> geos_delaunay(const Polygon& points);

/// Shorthands for areas.
[[nodiscard]] Area geos_area(const Polygon& polygon);
[[nodiscard]] Area geos_union_area(const std::vector<Polygon>& polygons);
[[nodiscard]] Area geos_common_area(const Polygon& a, const Polygon& b);

}  // namespace strikeoff
