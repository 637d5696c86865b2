// SPDX-License-Identifier: MIT
#include "support/geos.h"

#include <geos_c.h>

#include <stdexcept>
#include <string>
#include <utility>

namespace strikeoff {
namespace {

/// One handle for the whole test program, which has one thread.
class Context {
 public:
  Context() : handle_(GEOS_init_r()) {
    GEOSContext_setErrorMessageHandler_r(handle_, &Context::keep, this);
  }
  ~Context() { GEOS_finish_r(handle_); }
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;

  [[nodiscard]] GEOSContextHandle_t handle() const { return handle_; }
  [[noreturn]] void fail() const { throw std::runtime_error("GEOS: " + message_); }

 private:
  static void keep(const char* message, void* self) {
    static_cast<Context*>(self)->message_ = message;
  }
  GEOSContextHandle_t handle_;
  std::string message_;
};

const Context& context() {
  static const Context only;
  return only;
}

GEOSContextHandle_t geos() {
  return context().handle();
}

template <class T>
T* checked(T* made) {
  if (made == nullptr) context().fail();
  return made;
}

/// GEOS's predicates give 2 for an exception.
bool checked(char answer) {
  if (answer == 2) context().fail();
  return answer == 1;
}

struct Destroy {
  void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(geos(), geometry); }
};
using Owned = std::unique_ptr<GEOSGeometry, Destroy>;

Owned owned(GEOSGeometry* made) {
  return Owned(checked(made));
}

Owned ring_of(const Polygon& polygon) {
  const auto n = static_cast<unsigned>(polygon.size());
  GEOSCoordSequence* points = checked(GEOSCoordSeq_create_r(geos(), n + 1, 2));
  for (unsigned i = 0; i <= n; ++i) {
    const Point& p = polygon[i % n];
    GEOSCoordSeq_setXY_r(geos(), points, i, p.x.in_m(), p.y.in_m());
  }
  return owned(GEOSGeom_createLinearRing_r(geos(), points));
}

Owned polygon_of(const Polygon& outline, const std::vector<Polygon>& holes) {
  std::vector<GEOSGeometry*> rings;
  for (const Polygon& hole : holes) rings.push_back(ring_of(hole).release());
  return owned(GEOSGeom_createPolygon_r(geos(), ring_of(outline).release(), rings.data(),
                                        static_cast<unsigned>(rings.size())));
}

Owned point_of(const Point& p) {
  return owned(GEOSGeom_createPointFromXY_r(geos(), p.x.in_m(), p.y.in_m()));
}

double number(int (*measure)(GEOSContextHandle_t, const GEOSGeometry*, double*),
              const GEOSGeometry* geometry) {
  double value = 0;
  if (measure(geos(), geometry, &value) == 0) context().fail();
  return value;
}

}  // namespace

GeosRegion::GeosRegion(const Polygon& outline, const std::vector<Polygon>& holes)
    : held_(polygon_of(outline, holes)) {}

GeosRegion GeosRegion::union_of(const std::vector<Polygon>& polygons) {
  std::vector<GEOSGeometry*> members;
  for (const Polygon& polygon : polygons) members.push_back(polygon_of(polygon, {}).release());
  const Owned all = owned(GEOSGeom_createCollection_r(geos(), GEOS_MULTIPOLYGON, members.data(),
                                                      static_cast<unsigned>(members.size())));
  return GeosRegion(owned(GEOSUnaryUnion_r(geos(), all.get())));
}

GeosRegion GeosRegion::with(const GeosRegion& other) const {
  return GeosRegion(owned(GEOSUnion_r(geos(), held_.get(), other.held_.get())));
}

GeosRegion GeosRegion::common(const GeosRegion& other) const {
  return GeosRegion(owned(GEOSIntersection_r(geos(), held_.get(), other.held_.get())));
}

GeosRegion GeosRegion::without(const GeosRegion& other) const {
  return GeosRegion(owned(GEOSDifference_r(geos(), held_.get(), other.held_.get())));
}

GeosRegion GeosRegion::grown_mitred(Length by) const {
  const double sharpest = 1e9;  // how far a mitre may run out, in offsets
  return GeosRegion(owned(GEOSBufferWithStyle_r(geos(), held_.get(), by.in_m(), 8, GEOSBUF_CAP_FLAT,
                                                GEOSBUF_JOIN_MITRE, sharpest)));
}

GeosRegion GeosRegion::grown_round(Length by, int quarter) const {
  return GeosRegion(owned(GEOSBuffer_r(geos(), held_.get(), by.in_m(), quarter)));
}

Area GeosRegion::area() const {
  return Area::from_si(number(&GEOSArea_r, held_.get()));
}

Length GeosRegion::perimeter() const {
  return Length::m(number(&GEOSLength_r, held_.get()));
}

std::optional<Point> GeosRegion::centroid() const {
  if (checked(GEOSisEmpty_r(geos(), held_.get()))) return std::nullopt;
  const Owned middle = owned(GEOSGetCentroid_r(geos(), held_.get()));
  return Point{Length::m(number(&GEOSGeomGetX_r, middle.get())),
               Length::m(number(&GEOSGeomGetY_r, middle.get()))};
}

int GeosRegion::pieces() const {
  int count = 0;
  for (int i = 0; i < GEOSGetNumGeometries_r(geos(), held_.get()); ++i) {
    const GEOSGeometry* piece = GEOSGetGeometryN_r(geos(), held_.get(), i);
    count +=
        GEOSGeomTypeId_r(geos(), piece) == GEOS_POLYGON && !checked(GEOSisEmpty_r(geos(), piece));
  }
  return count;
}

int GeosRegion::holes() const {
  int count = 0;
  for (int i = 0; i < GEOSGetNumGeometries_r(geos(), held_.get()); ++i) {
    const GEOSGeometry* piece = GEOSGetGeometryN_r(geos(), held_.get(), i);
    if (GEOSGeomTypeId_r(geos(), piece) != GEOS_POLYGON) continue;
    count += GEOSGetNumInteriorRings_r(geos(), piece);
  }
  return count;
}

bool GeosRegion::is_valid() const {
  return checked(GEOSisValid_r(geos(), held_.get()));
}

bool GeosRegion::covers(const GeosRegion& other) const {
  return checked(GEOSCovers_r(geos(), held_.get(), other.held_.get()));
}

bool GeosRegion::covers(const Point& point) const {
  return checked(GEOSCovers_r(geos(), held_.get(), point_of(point).get()));
}

bool GeosRegion::overlaps(const GeosRegion& other) const {
  // The interiors meet in an area: DE-9IM "2" first.
  return checked(GEOSRelatePattern_r(geos(), held_.get(), other.held_.get(), "2********"));
}

Length GeosRegion::distance(const GeosRegion& other) const {
  double metres = 0;
  if (GEOSDistance_r(geos(), held_.get(), other.held_.get(), &metres) == 0) {
    context().fail();
  }
  return Length::m(metres);
}

Length GeosRegion::distance_to_boundary(const Point& point) const {
  const Owned boundary = owned(GEOSBoundary_r(geos(), held_.get()));
  double metres = 0;
  if (GEOSDistance_r(geos(), boundary.get(), point_of(point).get(), &metres) == 0) {
    context().fail();
  }
  return Length::m(metres);
}

std::vector<Polygon> geos_delaunay(const Polygon& points) {
  std::vector<GEOSGeometry*> members;
  for (const Point& point : points) members.push_back(point_of(point).release());
  const Owned all = owned(GEOSGeom_createCollection_r(geos(), GEOS_MULTIPOINT, members.data(),
                                                      static_cast<unsigned>(members.size())));
  const Owned made = owned(GEOSDelaunayTriangulation_r(geos(), all.get(), 0, 0));
  std::vector<Polygon> triangles;
  for (int i = 0; i < GEOSGetNumGeometries_r(geos(), made.get()); ++i) {
    const GEOSGeometry* ring =
        GEOSGetExteriorRing_r(geos(), GEOSGetGeometryN_r(geos(), made.get(), i));
    Polygon triangle;
    for (unsigned k = 0; k < 3; ++k) {
      double x = 0, y = 0;
      GEOSCoordSeq_getXY_r(geos(), GEOSGeom_getCoordSeq_r(geos(), ring), k, &x, &y);
      triangle.push_back({Length::m(x), Length::m(y)});
    }
    if (signed_area(triangle) < Area{}) std::swap(triangle[1], triangle[2]);
    triangles.push_back(triangle);
  }
  return triangles;
}

Area geos_area(const Polygon& polygon) {
  return GeosRegion(polygon).area();
}

Area geos_union_area(const std::vector<Polygon>& polygons) {
  return GeosRegion::union_of(polygons).area();
}

Area geos_common_area(const Polygon& a, const Polygon& b) {
  return GeosRegion(a).common(GeosRegion(b)).area();
}

}  // namespace strikeoff
