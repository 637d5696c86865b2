// SPDX-License-Identifier: MIT
#include "pour/sweep_field.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

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

/// The nodes on the edge of the mesh at places for which `wanted(x, y)`, in millimetres, holds.
template <class Wanted>
std::vector<std::size_t> edge_where(const PourMesh& mesh, const Wanted& wanted) {
  std::vector<std::size_t> found;
  for (const auto& ring : mesh.rings) {
    for (const std::size_t node : ring) {
      if (wanted(mesh.nodes[node].x.in_mm(), mesh.nodes[node].y.in_mm())) found.push_back(node);
    }
  }
  return found;
}

/// How far the field is at most from what `expected(x, y)` says.
template <class Expected>
double worst(const PourMesh& mesh, const std::vector<double>& field, const Expected& expected) {
  double most = 0;
  for (std::size_t k = 0; k < field.size(); ++k) {
    const Point& p = mesh.nodes[k];
    most = std::max(most, std::abs(field[k] - expected(p.x.in_mm(), p.y.in_mm())));
  }
  return most;
}

const auto at_left = [](double x, double) { return x == 0; };

}  // namespace

TEST_CASE("the harmonic field of a rectangle rises evenly", "[sweep_field]") {
  for (const double spacing : {37.0, 100.0, 250.0}) {
    const PourMesh mesh = mesh_of(rectangle(0, 0, 1800, 600), {}, Length::mm(spacing));
    const auto end = edge_where(mesh, [](double x, double) { return x == 1800; });
    const auto field = SweepFields(mesh).harmonic(edge_where(mesh, at_left), end);
    CHECK(worst(mesh, field, [](double x, double) { return x / 1800; }) < 1e-9);
  }
}

TEST_CASE("the harmonic field of a slanting strip rises evenly along it", "[sweep_field]") {
  // 1200 x 500 turned by the angle of 3-4-5: along (0.8, 0.6), across (-0.6, 0.8).
  const Polygon strip{mm(0, 0), mm(960, 720), mm(660, 1120), mm(-300, 400)};
  const PourMesh mesh = mesh_of(strip, {}, Length::mm(70));
  const auto along = [](double x, double y) { return (0.8 * x + 0.6 * y) / 1200; };
  const auto start = edge_where(mesh, [&](double x, double y) { return along(x, y) < 1e-9; });
  const auto end = edge_where(mesh, [&](double x, double y) { return along(x, y) > 1 - 1e-9; });
  const auto field = SweepFields(mesh).harmonic(start, end);
  CHECK(worst(mesh, field, along) < 1e-9);
}

TEST_CASE("the harmonic field of a quarter ring is the angle", "[sweep_field]") {
  constexpr int chords_in_quarter = 60;
  Polygon ring;
  for (int k = 0; k <= chords_in_quarter; ++k) {
    const double a = std::numbers::pi / 2 * k / chords_in_quarter;
    ring.push_back(mm(2000 * std::cos(a), 2000 * std::sin(a)));
  }
  for (int k = chords_in_quarter; k >= 0; --k) {
    const double a = std::numbers::pi / 2 * k / chords_in_quarter;
    ring.push_back(mm(1000 * std::cos(a), 1000 * std::sin(a)));
  }
  const PourMesh mesh = mesh_of(ring, {}, Length::mm(50));
  const auto start = edge_where(mesh, [](double, double y) { return std::abs(y) < 1e-6; });
  const auto end = edge_where(mesh, [](double x, double) { return std::abs(x) < 1e-6; });
  const auto field = SweepFields(mesh).harmonic(start, end);
  const auto angle = [](double x, double y) { return std::atan2(y, x) / (std::numbers::pi / 2); };
  CHECK(worst(mesh, field, angle) < 1e-3);
}

TEST_CASE("a symmetric U is half poured in the middle", "[sweep_field]") {
  const Polygon u{mm(0, 0),      mm(2800, 0),  mm(2800, 2200), mm(2200, 2200),
                  mm(2200, 600), mm(600, 600), mm(600, 2200),  mm(0, 2200)};
  const PourMesh mesh = mesh_of(u, {}, Length::mm(100));
  const auto start = edge_where(mesh, [](double x, double y) { return y == 2200 && x <= 600; });
  const auto end = edge_where(mesh, [](double x, double y) { return y == 2200 && x >= 2200; });
  const auto field = SweepFields(mesh).harmonic(start, end);
  std::size_t middle = 0;
  for (std::size_t k = 0; k < field.size(); ++k) {
    if (mesh.nodes[k].x != Length::mm(1400)) continue;
    ++middle;
    CHECK(field[k] == Approx(0.5).margin(1e-3));
  }
  CHECK(middle >= 7);
}

TEST_CASE("no place of a made-up slab is left behind", "[sweep_field]") {
  Draw draw(11);
  for (int k = 0; k < 100; ++k) {
    INFO("outline " << k);
    const Polygon outline = random_outline(draw);
    const PourMesh mesh = mesh_of(outline, {}, Length::mm(draw.whole(80, 400)));
    // From one side of the outline to another.
    const auto side_of = [&](std::size_t side) {
      const auto& ring = mesh.rings[0];
      const auto at = [&](std::size_t corner) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
          if (mesh.nodes[ring[i]] == outline[corner % outline.size()]) return i;
        }
        return ring.size();
      };
      std::vector<std::size_t> nodes;
      for (std::size_t i = at(side); i != at(side + 1); i = (i + 1) % ring.size()) {
        nodes.push_back(ring[i]);
      }
      nodes.push_back(ring[at(side + 1)]);
      return nodes;
    };
    const auto start = side_of(0), end = side_of(outline.size() / 2);
    const SweepFields fields(mesh);
    const auto harmonic = fields.harmonic(start, end), distance = fields.distance(start);
    std::vector<double> low(mesh.nodes.size(), 2), high(mesh.nodes.size(), -1), near = low;
    for (const auto& t : mesh.triangles) {
      for (const std::size_t a : t) {
        for (const std::size_t b : t) {
          if (a == b) continue;
          low[a] = std::min(low[a], harmonic[b]);
          high[a] = std::max(high[a], harmonic[b]);
          near[a] = std::min(near[a], distance[b]);
        }
      }
    }
    std::size_t wrong = 0;
    for (std::size_t n = 0; n < mesh.nodes.size(); ++n) {
      const bool starts = std::count(start.begin(), start.end(), n) > 0;
      const bool ends = std::count(end.begin(), end.end(), n) > 0;
      if (!starts && !ends) wrong += low[n] > harmonic[n] + 1e-9 || high[n] < harmonic[n] - 1e-9;
      if (!starts) wrong += !(near[n] <= distance[n]);
    }
    CHECK(wrong == 0);
  }
}

TEST_CASE("a part that reaches neither end comes last", "[sweep_field]") {
  // A bar right across cuts the slab in two.
  const PourMesh mesh =
      mesh_of(rectangle(0, 0, 1800, 600), {rectangle(900, 0, 100, 600)}, Length::mm(100));
  const auto start = edge_where(mesh, at_left);
  const auto middle = edge_where(mesh, [](double x, double) { return x == 900; });
  const SweepFields fields(mesh);
  for (const auto& field : {fields.harmonic(start, middle), fields.distance(start)}) {
    CHECK(worst(mesh, field, [](double x, double) { return std::min(1.0, x / 900); }) < 1e-9);
  }
}

TEST_CASE("distances along a straight slab are exact", "[sweep_field]") {
  const PourMesh mesh = mesh_of(rectangle(0, 0, 1800, 600), {}, Length::mm(70));
  const auto field = SweepFields(mesh).distance(edge_where(mesh, at_left));
  CHECK(worst(mesh, field, [](double x, double) { return x / 1800; }) < 1e-12);
}

TEST_CASE("distances from a corner are straight lines", "[sweep_field]") {
  const PourMesh mesh = mesh_of(rectangle(0, 0, 1800, 600), {}, Length::mm(70));
  const auto field = SweepFields(mesh).distance({mesh.rings[0][0]});
  const double most = std::hypot(1800, 600);
  CHECK(worst(mesh, field, [&](double x, double y) { return std::hypot(x, y) / most; }) < 1e-9);
}

TEST_CASE("distances round an opening bend at its corners", "[sweep_field]") {
  // From (0, 500) past the opening (400..600, 200..800) to (1000, 500): by (400, 200) and
  // (600, 200), sqrt(400^2 + 300^2) + 200 + sqrt(400^2 + 300^2) = 500 + 200 + 500 = 1200. The
  // corners of the slab at the far end: 500 + 200 + sqrt(400^2 + 200^2) = 1147.2, less.
  const Polygon slab{mm(0, 0), mm(1000, 0), mm(1000, 500), mm(1000, 1000), mm(0, 1000), mm(0, 500)};
  const PourMesh mesh = mesh_of(slab, {rectangle(400, 200, 200, 600)}, Length::mm(50));
  const auto start = edge_where(mesh, [](double x, double y) { return x == 0 && y == 500; });
  const auto field = SweepFields(mesh).distance(start);
  const auto at = [&](double x, double y) {
    return field[edge_where(mesh, [&](double a, double b) { return a == x && b == y; }).at(0)];
  };
  CHECK(at(1000, 500) == Approx(1).epsilon(0.005));
  CHECK(at(1000, 0) == Approx(1147.2 / 1200).epsilon(0.01));
  CHECK(at(400, 200) == Approx(500.0 / 1200).epsilon(0.01));
}

TEST_CASE("distances round the inner corner of an L bend at it", "[sweep_field]") {
  const Polygon ell{mm(0, 0), mm(3200, 0), mm(3200, 600), mm(600, 600), mm(600, 2200), mm(0, 2200)};
  for (const double spacing : {60.0, 100.0, 150.0}) {
    const PourMesh mesh = mesh_of(ell, {}, Length::mm(spacing));
    // From the far corner of the upright leg (0, 2200): a place right of the line from there
    // through the inner corner (600, 600) is reached by way of that corner.
    const auto start = edge_where(mesh, [](double x, double y) { return x == 0 && y == 2200; });
    const auto away = [](double x, double y) {
      const bool in_sight = x <= 600 || (2200 - y) * 600 >= x * 1600;
      return in_sight ? std::hypot(x, 2200 - y)
                      : std::hypot(600, 1600) + std::hypot(x - 600, 600 - y);
    };
    // The farthest: 1708.8 + sqrt(2600^2 + 600^2) = 1708.8 + 2668.3
    const double most = std::hypot(600, 1600) + std::hypot(2600, 600);
    const auto field = SweepFields(mesh).distance(start);
    const double off = worst(mesh, field, [&](double x, double y) { return away(x, y) / most; });
    CHECK(off < 0.005);
  }
}
