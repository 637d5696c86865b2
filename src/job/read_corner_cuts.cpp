// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "core/outlines.h"
#include "core/vec.h"
#include "job/read_shape.h"

namespace strikeoff {
namespace {

/// How closely the edge is drawn to see whether it meets itself.
constexpr Length looked_at_within = Length::mm(1);

struct ReadCut {
  CornerCut cut;
  int number;  // of the corner, as the user counts
  Node entry;
};

std::optional<std::size_t> read_corner(Context& c, const Node& node, const Base& base) {
  const int most = base.sides.empty() ? most_entries : static_cast<int>(base.sides.size());
  const auto number = read_count(c.reader, node, {1, most, "1 and the number of corners"});
  if (!number) return std::nullopt;
  for (std::size_t k = 0; k < base.sides.size(); ++k) {
    if (base.sides[k].corner == *number) return k;
  }
  return std::nullopt;  // the base is already rejected
}

std::optional<ReadCut> read_cut(Context& c, const Node& node, const Base& base) {
  Object o(c.reader, node, "a corner treatment");
  constexpr auto example = R"({"corner": 1, "radius": "1 in"})";
  const Node corner_node = o.need("corner", example);
  const auto corner = read_corner(c, corner_node, base);
  const Node clip = o.find("clip");
  const Node radius =
      clip ? o.find("radius") : o.need("radius", std::string(example) + ", or \"clip\"");
  const auto size = read_quantity(c.reader, radius ? radius : clip, any_length);
  if (radius && clip) {
    c.reader.error(clip.pointer,
                   {"radius-and-clip", "a corner is rounded or clipped, here stands both",
                    "keep \"radius\" or \"clip\""},
                   Reader::Mark::key);
    (void)read_quantity(c.reader, clip, any_length);
  }
  o.finish();
  if (!corner || !size) return std::nullopt;
  return ReadCut{{*corner, *size, bool(radius)}, base.sides[*corner].corner, node};
}

const char* kind_of(const CornerCut& cut) {
  return cut.round ? "radius" : "clip";
}

/// The largest size a tape shows that is not above this one: down to 1/16 in or 1 mm.
Length printable(Length size, Units units) {
  const Length step = units == Units::us ? Length::inches(1.0 / 16) : Length::mm(1);
  return step * std::floor((size + arithmetic) / step);
}

std::string largest_words(const CornerCut& cut, Length most, Units units) {
  const Length size = printable(most, units);
  return size <= Length{}
             ? fmt::format("no {} fits here: leave this corner sharp", kind_of(cut))
             : fmt::format("the largest {} here is {}", kind_of(cut), show(size, units));
}

/// How large a cut may be before a point inside the corner lies outside the edge. With the corner
/// at 0, w towards the centre of the circle of radius 1 that touches both sides, and p the point,
/// that circle of radius r passes p when |p - r w| = r; p lies on the side of the corner for the
/// larger root. A straight cut passes p when both have the same distance from the corner along w.
Length largest_that_covers(const Polygon& outline, std::size_t k, const Point& point, bool round) {
  const std::size_t n = outline.size();
  const Point &corner = outline[k], &before = outline[(k + n - 1) % n],
              &after = outline[(k + 1) % n];
  const auto unit = [&](const Point& to) {
    const Length whole = distance(corner, to);
    return std::pair{(to.x - corner.x) / whole, (to.y - corner.y) / whole};
  };
  const auto [ux, uy] = unit(before);
  const auto [vx, vy] = unit(after);
  const double px = (point.x - corner.x).in_m(), py = (point.y - corner.y).in_m();
  // u + v points along the bisector; its length is 2 cos of half the angle between them.
  const double sx = ux + vx, sy = uy + vy, sum2 = sx * sx + sy * sy;
  const double along = px * sx + py * sy;
  if (!round) return Length::m(2 * along / sum2);
  const double sine = std::abs(ux * vy - uy * vx);  // w = (u + v)/sine
  const double pw = along / sine, w2 = sum2 / (sine * sine), p2 = px * px + py * py;
  return Length::m((pw + std::sqrt(std::max(0.0, pw * pw - p2 * (w2 - 1)))) / (w2 - 1));
}

bool check_wall(Context& c, const ReadCut& read, const Slab& slab) {
  const std::size_t k = read.cut.corner, n = slab.sides.size();
  const Side &arriving = slab.sides[(k + n - 1) % n], &leaving = slab.sides[k];
  if (!arriving.wall && !leaving.wall) return true;
  c.reader.error(pointer_to(read.entry.pointer, "corner"),
                 {"corner-at-wall",
                  fmt::format("corner {} touches the wall at {}, where its edge cannot be formed",
                              read.number, in_quotes(arriving.wall ? arriving.name : leaving.name)),
                  "leave this corner sharp, or take the side out of \"walls\""});
  return false;
}

/// Two cuts at the ends of an edge, or one alone, must not take more than the edge has.
bool check_edges(Context& c, const std::vector<ReadCut>& cuts, std::size_t at, const Slab& slab,
                 const Polygon& outline) {
  const ReadCut& own = cuts[at];
  const std::size_t n = outline.size(), k = own.cut.corner;
  const Length back = set_back(outline, own.cut);
  for (const std::size_t other : {(k + n - 1) % n, (k + 1) % n}) {
    const std::size_t edge = other == (k + 1) % n ? k : other;
    const Length whole = edge_length(outline, edge);
    const auto earlier = std::find_if(cuts.begin(), cuts.begin() + static_cast<std::ptrdiff_t>(at),
                                      [&](const ReadCut& r) { return r.cut.corner == other; });
    const bool alone = earlier == cuts.begin() + static_cast<std::ptrdiff_t>(at);
    const Length taken = alone ? Length{} : set_back(outline, earlier->cut);
    if (back + taken <= whole + arithmetic) continue;
    const std::string others = alone ? ""
                                     : fmt::format(" beside the {} that corner {} takes",
                                                   show(taken, c.units), earlier->number);
    c.reader.error(pointer_to(own.entry.pointer, kind_of(own.cut)),
                   {"corner-cuts-overlap",
                    fmt::format("this {} takes {} of the side {}, which has {}{}", kind_of(own.cut),
                                show(back, c.units), in_quotes(slab.sides[edge].name),
                                show(whole, c.units), others),
                    largest_words(own.cut, own.cut.size * ((whole - taken) / back), c.units)});
    return false;
  }
  return true;
}

/// Base and panel must not stick out of the slab where a corner is cut off.
void check_cover(Context& c, const ReadCut& read, const Slab& slab, const Polygon& outline) {
  const std::size_t k = read.cut.corner;
  if (slab.support == Support::ground || !is_convex_corner(outline, k)) return;
  const Length base = largest_that_covers(outline, k, slab.base[k], read.cut.round);
  const Length panel =
      slab.panel ? largest_that_covers(outline, k, panel_outline(slab)[k], read.cut.round) : base;
  const Length most = std::min(base, panel);
  if (read.cut.size <= most + arithmetic) return;
  c.reader.error(
      pointer_to(read.entry.pointer, kind_of(read.cut)),
      {"corner-cut-too-large",
       fmt::format("with this {} the {}'s corner {} sticks out of the slab", kind_of(read.cut),
                   panel < base ? "panel" : "base", read.number),
       largest_words(read.cut, most, c.units) +
           (panel < base ? "; more overhang of the slab, or less of the panel, allows more"
                         : "; more overhang allows more")});
}

/// The edge drawn by chords, without the hairs that arcs meeting end to end leave.
Polygon drawn(const Slab& slab) {
  Polygon polygon;
  for (const Point& p : chords(slab_edge(slab), looked_at_within)) {
    if (polygon.empty() || distance(polygon.back(), p) > arithmetic) polygon.push_back(p);
  }
  if (distance(polygon.back(), polygon.front()) <= arithmetic) polygon.pop_back();
  return polygon;
}

/// A cut inner corner fills its notch, and may reach an edge across it.
void check_contact(Context& c, const std::vector<ReadCut>& cuts, const Slab& slab,
                   const Polygon& outline) {
  const ReadCut* nearest = nullptr;
  if (std::all_of(cuts.begin(), cuts.end(), [&](const ReadCut& read) {
        return is_convex_corner(outline, read.cut.corner);
      })) {
    return;
  }
  const Polygon edge = drawn(slab);
  const auto contact = self_contact(edge);
  if (!contact) return;
  const auto away = [&](const ReadCut& read) {
    const Point& corner = outline[read.cut.corner];
    return std::min(distance(edge[contact->first], corner),
                    distance(edge[contact->second], corner));
  };
  for (const ReadCut& read : cuts) {
    if (is_convex_corner(outline, read.cut.corner)) continue;
    if (nearest == nullptr || away(read) < away(*nearest)) nearest = &read;
  }
  c.reader.error(
      pointer_to(nearest->entry.pointer, kind_of(nearest->cut)),
      {"corner-cut-meets-edge",
       fmt::format("with this {} the slab's edge runs into itself at the inner corner {}",
                   kind_of(nearest->cut), nearest->number),
       "an inner corner is filled when it is cut: make the cut smaller"});
}

}  // namespace

void read_corner_cuts(Context& c, const Node& node, const Base& base, Slab& slab,
                      bool shape_is_good) {
  const auto entries = read_list(c.reader, node, "corners");
  if (!entries) return;
  const std::size_t before = c.reader.errors();
  std::vector<ReadCut> cuts;
  for (const Node& entry : *entries) {
    const auto cut = read_cut(c, entry, base);
    if (!cut) continue;
    if (std::any_of(cuts.begin(), cuts.end(),
                    [&](const ReadCut& other) { return other.number == cut->number; })) {
      c.reader.error(pointer_to(entry.pointer, "corner"),
                     {"corner-given-twice",
                      fmt::format("corner {} already has a treatment", cut->number), "keep one"});
    } else {
      cuts.push_back(*cut);
    }
  }
  if (!shape_is_good) return;
  const Polygon outline = sharp_outline(slab);
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    if (check_wall(c, cuts[i], slab) && check_edges(c, cuts, i, slab, outline)) {
      check_cover(c, cuts[i], slab, outline);
    }
  }
  if (c.reader.errors() != before) return;
  for (const ReadCut& read : cuts) slab.corner_cuts.push_back(read.cut);
  check_contact(c, cuts, slab, outline);
}

}  // namespace strikeoff
