// SPDX-License-Identifier: MIT
#include "pour/mesh.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <numbers>
#include <set>
#include <utility>

#include "strikeoff/outline.h"
#include "support/random_outlines.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Point mm(double x, double y) {
  return {Length::mm(x), Length::mm(y)};
}

Polygon rectangle(double x, double y, double length, double depth) {
  return corners_of(Rectangle{mm(x, y), Length::mm(length), Length::mm(depth)});
}

double area_m2(const PourMesh& mesh) {
  double sum = 0;
  for (const auto& [a, b, c] : mesh.triangles) {
    sum += signed_area({mesh.nodes[a], mesh.nodes[b], mesh.nodes[c]}).si();
  }
  return sum;
}

/// Sides of triangles, each way they are walked.
std::multiset<std::pair<std::size_t, std::size_t>> sides_of(const PourMesh& mesh) {
  std::multiset<std::pair<std::size_t, std::size_t>> sides;
  for (const auto& t : mesh.triangles) {
    for (std::size_t k = 0; k < 3; ++k) sides.emplace(t[k], t[(k + 1) % 3]);
  }
  return sides;
}

/// What must hold for every mesh; `holes` do not touch anything.
void check(const Polygon& outline, const std::vector<Polygon>& holes, const PourMesh& mesh) {
  double area = std::abs(signed_area(outline).si());
  for (const Polygon& hole : holes) area -= std::abs(signed_area(hole).si());
  CHECK(area_m2(mesh) == Approx(area).epsilon(1e-10));
  std::size_t flat = 0;
  for (const auto& [a, b, c] : mesh.triangles) {
    flat += !(signed_area({mesh.nodes[a], mesh.nodes[b], mesh.nodes[c]}) > Area{});
  }
  CHECK(flat == 0);

  // Each side is walked once, and once the other way unless it is a side of a ring.
  const auto sides = sides_of(mesh);
  std::set<std::pair<std::size_t, std::size_t>> edge;
  for (const auto& ring : mesh.rings) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      CHECK(edge.emplace(ring[k], ring[(k + 1) % ring.size()]).second);
    }
  }
  std::size_t wrong = 0;
  for (const auto& side : sides) {
    const std::pair<std::size_t, std::size_t> back{side.second, side.first};
    wrong += sides.count(side) != 1 || sides.count(back) != (edge.count(side) == 1 ? 0u : 1u);
  }
  for (const auto& side : edge) wrong += sides.count(side) != 1;
  CHECK(wrong == 0);

  // The corners in order, and nothing but straight sides between them.
  REQUIRE(mesh.rings.size() == holes.size() + 1);
  for (std::size_t r = 0; r < mesh.rings.size(); ++r) {
    Polygon ring;
    for (const std::size_t node : mesh.rings[r]) ring.push_back(mesh.nodes[node]);
    const Polygon& given = r == 0 ? outline : holes[r - 1];
    CHECK((signed_area(ring) > Area{}) == (r == 0));
    CHECK(std::abs(signed_area(ring).si()) == Approx(std::abs(signed_area(given).si())));
    std::size_t found = 0;
    const bool turned = (signed_area(given) > Area{}) != (r == 0);
    for (const Point& p : ring) {
      const std::size_t next = turned ? (given.size() - found) % given.size() : found;
      if (found < given.size() && p == given[next]) ++found;
    }
    CHECK(found == given.size());
  }
}

void check(const Polygon& outline, const std::vector<Polygon>& holes, double spacing_mm) {
  check(outline, holes, mesh_of(outline, holes, Length::mm(spacing_mm)));
}

}  // namespace

TEST_CASE("a rectangle is meshed in right triangles of the spacing", "[mesh]") {
  const PourMesh mesh = mesh_of(rectangle(0, 0, 600, 300), {}, Length::mm(100));
  check(rectangle(0, 0, 600, 300), {}, mesh);
  CHECK(mesh.nodes.size() == 7 * 4);
  CHECK(mesh.triangles.size() == 6 * 3 * 2);
  CHECK(mesh.rings.at(0).size() == 18);
}

TEST_CASE("shapes of all kinds are filled without gap or overlap", "[mesh]") {
  const Polygon ell{mm(0, 0), mm(900, 0), mm(900, 300), mm(300, 300), mm(300, 700), mm(0, 700)};
  check(ell, {}, 100);
  check(rectangle(0, 0, 1000, 800), {rectangle(300, 300, 200, 200)}, 90);
  const Polygon diamond{mm(400, 200), mm(500, 300), mm(400, 400), mm(300, 300)};
  check(rectangle(0, 0, 1000, 800), {diamond, rectangle(600, 100, 50, 600)}, 90);
  check(rectangle(0, 0, 800, 1000), {diamond, rectangle(600, 100, 50, 600)}, 90);
}

TEST_CASE("rounded corners and round holes keep every corner", "[mesh]") {
  const Polygon edge =
      chords(outline_of(Rectangle{mm(0, 0), Length::mm(1800), Length::mm(600)}, Length::mm(50)),
             drawn_within);
  const Polygon sink =
      chords(outline_of(Rectangle{mm(500, 150), Length::mm(300), Length::mm(300)}, Length::mm(150)),
             drawn_within);
  check(edge, {sink}, 60);
}

TEST_CASE("made-up outlines with holes are filled", "[mesh]") {
  Draw draw(7);
  for (int k = 0; k < 300; ++k) {
    INFO("outline " << k);
    Polygon outline = random_outline(draw);
    if (draw.one_in(2)) outline = chords(random_cut_corners(draw, outline), drawn_within);
    if (self_contact(outline)) continue;
    std::vector<Polygon> holes;
    for (int n = 0; n < 6; ++n) {
      const double size = draw.whole(50, 500);
      const double x = draw.whole(-4000, 4000), y = draw.whole(-4000, 4000);
      const Rectangle box{mm(x, y), Length::mm(size), Length::mm(draw.whole(50, 500))};
      const Length radius = draw.one_in(2) ? Length{} : std::min(box.length, box.depth) * 0.5;
      const Polygon hole = chords(outline_of(box, radius), drawn_within);
      bool fits = contains(outline, box) && distance(hole, outline) > Length::mm(1);
      for (const Polygon& other : holes) {
        fits = fits && distance(hole, other) > Length::mm(1) && !contains(other, hole.front()) &&
               !contains(hole, other.front());
      }
      if (fits) holes.push_back(hole);
    }
    check(outline, holes, draw.whole(60, 400));
  }
}

TEST_CASE("rectangles along the edge or each other leave no gap", "[mesh]") {
  const Polygon slab = rectangle(0, 0, 1000, 800);
  const auto area = [&](const std::vector<Polygon>& holes) {
    return area_m2(mesh_of(slab, holes, Length::mm(90)));
  };
  CHECK(area({rectangle(0, 300, 100, 100)}) == Approx(0.8 - 0.01));  // its side on a side
  CHECK(area({rectangle(300, 0, 100, 100)}) == Approx(0.8 - 0.01));
  CHECK(area({rectangle(0, 0, 100, 100)}) == Approx(0.8 - 0.01));  // its corner on a corner
  CHECK(area({rectangle(500, 300, 100, 100), rectangle(600, 400, 100, 100)}) == Approx(0.8 - 0.02));
  CHECK(area({rectangle(500, 300, 100, 100), rectangle(600, 300, 100, 100)}) == Approx(0.8 - 0.02));
  CHECK(area({rectangle(500, 0, 100, 800)}) == Approx(0.8 - 0.08));  // from side to side
}

TEST_CASE("corners level but for rounding are cut through once", "[mesh]") {
  const Polygon leaning{mm(0, 0),
                        mm(1000, 0),
                        mm(1000, 300),
                        mm(600, 300),
                        {Length::nm(6e8 + 1e-6), Length::mm(600)},
                        mm(0, 600)};
  const PourMesh mesh = mesh_of(leaning, {}, Length::mm(100));
  CHECK(area_m2(mesh) == Approx(0.3 + 0.18));  // 1 x 0.3 + 0.6 x 0.3
  CHECK(mesh.nodes.size() == 7 * 7 + 4 * 4);
}

TEST_CASE("a mesh keeps to its bound in any shape", "[mesh]") {
  const auto nodes = [](const Polygon& outline, double spacing_mm) {
    const PourMesh mesh = mesh_of(outline, {}, Length::mm(spacing_mm));
    CHECK(area_m2(mesh) == Approx(signed_area(outline).si()));
    return mesh.nodes.size();
  };
  CHECK(nodes(rectangle(0, 0, 20000, 20), 100) < 1000);
  CHECK(nodes(rectangle(0, 0, 20, 20000), 0.01) < 25000);
  CHECK(nodes(rectangle(0, 0, 3000, 2000), 0) < 25000);
  Polygon thorns, comb{mm(3000, 3000), mm(0, 3000)};
  for (int k = 0; k < 1000; ++k) {
    const double angle = 2 * std::numbers::pi * k / 1000, radius = k % 2 == 0 ? 3000 : 50;
    thorns.push_back(mm(radius * std::cos(angle), radius * std::sin(angle)));
  }
  for (int k = 0; k < 250; ++k) {
    comb.insert(comb.end(), {mm(12 * k, 0), mm(12 * k + 6, 0), mm(12 * k + 6, 2000 + k),
                             mm(12 * k + 12, 2000 + k)});
  }
  CHECK(nodes(thorns, 100) < 25000);
  CHECK(nodes(comb, 100) < 25000);
}
