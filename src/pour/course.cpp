// SPDX-License-Identifier: MIT
#include "pour/course.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/dissect.h"
#include "pour/rising_root.h"

namespace strikeoff {
namespace {

constexpr double pi = 3.14159265358979323846;

// ---- Straight fronts across a direction, wherever they meet the slab. ----

/// From the first to the last meeting of a line with the outline, and how much of it is concrete.
struct StraightFront {
  Front front;
  double inside = 0;
};

std::optional<StraightFront> straight_front(const SlabPlan& shape, const Vec& along, double at) {
  const Vec on = along * at, across = -along.left();
  std::vector<double> meetings;
  const auto meet = [&](const Polygon& ring) {
    const std::size_t before = meetings.size();
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec c = vec(ring[i]), d = vec(ring[(i + 1) % ring.size()]);
      const double beside_c = dot(c - on, along), beside_d = dot(d - on, along);
      if ((beside_c > 0) == (beside_d > 0)) continue;
      meetings.push_back(dot(c + (d - c) * (beside_c / (beside_c - beside_d)), across));
    }
    return meetings.size() > before;
  };
  if (!meet(shape.outline)) return std::nullopt;
  const auto [first, last] = std::minmax_element(meetings.begin(), meetings.end());
  StraightFront found;
  found.front.left = on + across * *first;
  found.front.right = on + across * *last;
  for (const Polygon& hole : holes_of(shape)) meet(hole);
  std::sort(meetings.begin(), meetings.end());
  for (std::size_t i = 0; i + 1 < meetings.size(); i += 2)
    found.inside += meetings[i + 1] - meetings[i];
  return found;
}

/// A front before or after the whole slab.
Front beyond(const SlabPlan& shape, const Vec& along, bool is_start) {
  double at = is_start ? HUGE_VAL : -HUGE_VAL;
  for (const Point& corner : shape.outline) {
    const double here = dot(vec(corner), along);
    at = is_start ? std::min(at, here) : std::max(at, here);
  }
  const Vec on = along * at;
  return {on + along.left(), on - along.left(), at, at};
}

std::optional<std::vector<Front>> straight_fronts(const SlabPlan& shape, const Vec& along,
                                                  const std::vector<double>& wanted) {
  const Trail outline = trail_of(shape.outline);
  std::vector<Trail> holes;
  for (const Polygon& hole : holes_of(shape)) holes.push_back(trail_of(hole));
  double lo = HUGE_VAL, hi = -HUGE_VAL;
  for (const Vec& corner : outline) {
    lo = std::min(lo, dot(corner, along));
    hi = std::max(hi, dot(corner, along));
  }
  const double all = shape.top_area.si();
  const auto behind = [&](double at) {
    const Vec on = along * at, to = on - along.left();
    double area = area_right_of(outline, on, to);
    for (const Trail& hole : holes) area -= area_right_of(hole, on, to);
    return area;
  };
  std::vector<Front> fronts;
  for (const double area : wanted) {
    const auto at = rising_root([&](double x) { return behind(x) - area; }, lo, hi,
                                lo + (hi - lo) * area / all, 1e-13 * all);
    const auto found = at ? straight_front(shape, along, *at) : std::nullopt;
    if (!found) return std::nullopt;
    fronts.push_back(found->front);
    fronts.back().along_left = fronts.back().along_right = *at;
  }
  return fronts;
}

// ---- Layouts. ----

std::vector<double> rising_sums(const std::vector<double>& parts) {
  std::vector<double> sums;
  std::partial_sum(parts.begin(), parts.end(), std::back_inserter(sums));
  return sums;
}

/// The fronts between places of these areas, along the passage and then along the branch.
std::optional<std::vector<Front>> lines_between(const Course& course, const SlabPlan& shape,
                                                const std::vector<double>& areas) {
  const auto middle = areas.begin() + static_cast<std::ptrdiff_t>(course.in_passage);
  std::vector<double> behind = rising_sums({areas.begin(), middle});
  if (!behind.empty()) behind.pop_back();
  const Route& route = *course.route;
  auto lines =
      route.passage ? route.passage->fronts(behind) : straight_fronts(shape, route.along, behind);
  if (!lines || !route.branch) return lines;
  behind = rising_sums({middle, areas.end()});
  if (!behind.empty()) behind.pop_back();
  const auto more = route.branch->fronts(behind);
  if (!more) return std::nullopt;
  lines->insert(lines->end(), more->begin(), more->end());
  return lines;
}

double inside(const Route& route, const SlabPlan& shape, const Front& line, bool in_branch) {
  if (route.passage) return (in_branch ? *route.branch : *route.passage).joint_length(line);
  const auto found = straight_front(shape, route.along, line.along_left);
  return found ? found->inside : 0;
}

/// The shortest way across an outline through a place inside it, but for those that meet one of the
/// route's ends: there the outline ends, and is not narrow.
double width_at(const Trail& outline, const Vec& place, const Route& route) {
  constexpr int directions = 36;
  const auto is_end = [&](const Vec& a, const Vec& b) {
    if (!route.passage) return false;
    const Front start = route.passage->start(), end = route.passage->end();
    const auto same = [](const Vec& p, const Vec& q) { return (p - q).length() < 1e-9; };
    return (same(a, start.left) && same(b, start.right)) ||
           (same(a, end.right) && same(b, end.left));
  };
  double width = HUGE_VAL;
  for (int i = 0; i < directions; ++i) {
    const double angle = pi * i / directions;
    const Vec way{std::cos(angle), std::sin(angle)};
    double ahead = HUGE_VAL, back = HUGE_VAL;
    bool meets_end = false, meets_end_back = false;
    for (std::size_t k = 0; k < outline.size(); ++k) {
      const Vec &from = outline[k], &to = outline[(k + 1) % outline.size()];
      const Vec c = from - place, d = to - place;
      const double beside_c = cross(way, c), beside_d = cross(way, d);
      if ((beside_c > 0) == (beside_d > 0)) continue;
      const double at = dot(c + (d - c) * (beside_c / (beside_c - beside_d)), way);
      double& nearest = at > 0 ? ahead : back;
      if (std::abs(at) >= nearest) continue;
      nearest = std::abs(at);
      (at > 0 ? meets_end : meets_end_back) = is_end(from, to);
    }
    if (!meets_end && !meets_end_back) width = std::min(width, ahead + back);
  }
  return width;
}

/// Joints, gap and advances of a course whose places and lines are set.
void measure(const SlabPlan& shape, Course& course) {
  const Route& route = *course.route;
  course.joints = course.longest = {};
  course.gap = 0;
  course.advances.clear();
  const auto touch = [&](const Stretch& a, const Stretch& b) {
    const std::size_t apart = a.cell > b.cell ? a.cell - b.cell : b.cell - a.cell;
    course.gap =
        std::max({course.gap, apart, a.cells > 1 ? a.cells : 0, b.cells > 1 ? b.cells : 0});
  };
  const auto joint = [&](double length) {
    course.joints += Length::m(length);
    course.longest = std::max(course.longest, Length::m(length));
  };
  const double all = shape.top_area.si();
  const auto stretch = [&](std::size_t first, std::size_t count, std::size_t line, bool branch) {
    const Passage* passage = branch ? &*route.branch : route.passage ? &*route.passage : nullptr;
    double before = passage ? passage->joint_length(passage->start()) : 0;
    for (std::size_t i = 0; i < count; ++i) {
      const Stretch& place = course.places[first + i];
      const bool is_last = i + 1 == count;
      double after = passage ? passage->joint_length(passage->end()) : 0;
      if (!is_last) {
        after = inside(route, shape, course.lines[line + i], branch);
        joint(after);
        touch(place, course.places[first + i + 1]);
      }
      // At the ends of a slab that is cut straight across the front may have no length.
      const double width = passage ? (before + after) / 2 : std::max(before, after);
      const double area = place.share * all;
      course.advances.push_back(Length::m(width > 0 ? area / width : std::sqrt(area)));
      if (place.cells > 1) {
        for (std::size_t k = 1; k < place.cells; ++k) joint(course.advances.back().in_m());
      }
      before = after;
    }
  };
  stretch(0, course.in_passage, 0, false);
  if (route.branch) {
    const std::size_t first = course.in_passage;
    stretch(first, course.places.size() - first, first - 1, true);
    joint(route.branch->joint_length(route.mouth));
    // What the passage has beside the mouth.
    double from = 0;
    for (std::size_t i = 0; i < first; ++i) {
      const double to = i + 1 == first        ? HUGE_VAL
                        : route.mouth_on_left ? course.lines[i].along_left
                                              : course.lines[i].along_right;
      if (from < route.mouth_to - 1e-6 && to > route.mouth_from + 1e-6) {
        touch(course.places[i], course.places[first]);
      }
      from = to;
    }
  }
  if (route.is_ring && course.places.size() > 1) {
    const Stretch &a = course.places.front(), &b = course.places.back();
    touch(a, b);
    if (a.cell != b.cell) joint(route.passage->joint_length(route.passage->start()));
  }
  constexpr double longest = 1.6;  // assumption: a longer front lies along its arm, not across
  const Trail outline = trail_of(shape.outline);
  course.runs_across =
      std::all_of(course.lines.begin(), course.lines.end(), [&](const Front& line) {
        return line.length() <= longest * width_at(outline, (line.left + line.right) / 2, route);
      });
}

/// Round a ring: the front goes one way with every other batch, or with half of each.
void place_round(const std::vector<double>& shares, Course& course) {
  const std::size_t n = shares.size();
  if (course.fronts == Fronts::in_turn) {
    for (std::size_t i = 0; i < n; i += 2) course.places.push_back({shares[i], i});
    for (std::size_t i = n - n % 2; i >= 2; i -= 2) {
      course.places.push_back({shares[i - 1], i - 1});
    }
    return;
  }
  for (std::size_t i = 0; i + 1 < n; ++i) course.places.push_back({shares[i] / 2, i});
  course.places.push_back({shares[n - 1], n - 1});
  for (std::size_t i = n - 1; i-- > 0;) course.places.push_back({shares[i] / 2, i});
}

/// How much of each batch goes into a branch, from the one that takes the front past its mouth on.
/// That one or the next fills what whole batches leave of the branch, in one part or two, so that
/// none is a sliver (the bounds are assumptions).
std::vector<double> to_branch(const std::vector<double>& shares, double to_pass, double branch,
                              Fronts fronts) {
  constexpr double little = 0.15, some = 0.25, most = 0.85;  // of a batch
  const std::size_t n = shares.size();
  std::vector<double> parts(n, 0.0);
  std::size_t i = 0;
  double passed = 0, ahead = 1 - branch;
  for (; i < n && passed + shares[i] < to_pass - 1e-9; ++i) passed += shares[i];
  if (i + 1 >= n) return {};
  const double usual = shares[i], free = usual - std::max(to_pass - passed, some * usual);
  if (fronts == Fronts::shared) {
    if (free >= little * usual) parts[i] = std::min(free, branch / 2);
    ahead -= passed + usual - parts[i];
    branch -= parts[i];
    for (++i; i < n; ++i) parts[i] = shares[i] * branch / (branch + ahead);
    return parts;
  }
  double first = std::fmod(branch, usual);
  std::size_t splits = 1;
  if (first < some * usual && branch > usual) {
    first = (first + usual) / 2;
    splits = 2;
  } else if (first > most * usual) {
    first /= 2;
    splits = 2;
  }
  if (first > free) ++i;
  for (std::size_t k = 0; k < splits && i < n; ++k, ++i) {
    parts[i] = std::min(first, shares[i]);
    branch -= parts[i];
  }
  for (bool turn = true; i < n; ++i, turn = !turn) {
    double rest = 0;  // of the pour
    for (std::size_t k = i; k < n; ++k) rest += shares[k];
    const double must = shares[i] - (rest - branch);  // the passage holds no more
    parts[i] = std::clamp(turn ? shares[i] : must, 0.0, std::min(shares[i], std::max(branch, 0.0)));
    branch -= parts[i];
  }
  return parts;
}

/// Past the mouth of a branch, then at both fronts.
bool place_branching(const SlabPlan& shape, const std::vector<double>& shares, Course& course) {
  const Route& route = *course.route;
  const Passage& passage = *route.passage;
  auto past = passage.shortest_at(route.mouth_on_left, route.mouth_to + passage.clearance());
  if (!past) past = passage.shortest_at(route.mouth_on_left, route.mouth_to);
  if (!past) return false;
  const double to_pass = passage.behind(*past) / shape.top_area.si();
  const std::vector<double> parts = to_branch(shares, to_pass, route.branch_share, course.fronts);
  if (parts.empty()) return false;
  std::vector<Stretch> side;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (shares[i] - parts[i] > 1e-9) course.places.push_back({shares[i] - parts[i], i});
    if (parts[i] > 1e-9) side.push_back({parts[i], i});
  }
  if (side.empty() || course.places.empty()) return false;
  course.in_passage = course.places.size();
  course.places.insert(course.places.end(), side.begin(), side.end());
  return true;
}

/// Scaled so that the places of the passage fill it, and those of the branch the branch.
void fill_up(const Course& course, const SlabPlan& shape, std::vector<double>& areas) {
  const Route& route = *course.route;
  const auto scale = [&](std::size_t first, std::size_t last, double whole) {
    const auto from = areas.begin() + static_cast<std::ptrdiff_t>(first),
               to = areas.begin() + static_cast<std::ptrdiff_t>(last);
    const double sum = std::accumulate(from, to, 0.0);
    std::for_each(from, to, [&](double& area) { area *= whole / sum; });
  };
  scale(0, course.in_passage, route.passage ? route.passage->area() : shape.top_area.si());
  if (route.branch) scale(course.in_passage, areas.size(), route.branch->area());
}

std::vector<double> areas_of(const Course& course, const SlabPlan& shape) {
  std::vector<double> areas;
  for (const Stretch& place : course.places) areas.push_back(place.share);
  fill_up(course, shape, areas);
  return areas;
}

// ---- Cutting. ----

using Parts = std::vector<std::vector<Polygon>>;

/// A place to a sixteenth of a nanometre: 1500 mm is that, whatever has been multiplied on the way.
Point settled(const Vec& place) {
  const auto settle = [](double m) { return Length::nm(std::round(m * 16e9) / 16); };
  return {settle(place.x), settle(place.y)};
}

Cut cut_of(const Front& line, int behind, int ahead) {
  // What lies behind is to the left of the way from right to left.
  return {settled(line.right), settled(line.left), behind, ahead};
}

/// Cuts through openings that no front meets, across the place they are in.
bool add_seams(const Course& course, const SlabPlan& shape, const std::vector<Polygon>& holes,
               const std::vector<Front>& lines, std::vector<Cut>& cuts) {
  const Route& route = *course.route;
  for (const Polygon& hole : holes) {
    const Trail ring = trail_of(hole);
    const Rectangle box = bounding_box(hole);
    const Vec middle = vec(box.at) + Vec{box.length.in_m() / 2, box.depth.in_m() / 2};
    const auto is_met = [&](const Front& line) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec &c = ring[i], &d = ring[(i + 1) % ring.size()];
        const Vec w = line.right - line.left;
        const double beside_c = cross(w, c - line.left), beside_d = cross(w, d - line.left);
        if ((beside_c > 0) == (beside_d > 0)) continue;
        const Vec at = c + (d - c) * (beside_c / (beside_c - beside_d));
        const double x = dot(at - line.left, w) / dot(w, w);
        if (x > 0 && x < 1) return true;
      }
      return false;
    };
    if (std::any_of(lines.begin(), lines.end(), is_met)) continue;
    std::optional<Front> seam;
    int number = 0;
    const auto look = [&](std::size_t first, std::size_t count, const Passage* passage) {
      for (std::size_t i = 0; i < count && !seam; ++i) {
        const std::size_t line = first - (first > 0 ? 1 : 0) + i;
        const Front back = i > 0 ? lines[line - 1] : passage->start();
        const Front ahead = i + 1 < count ? lines[line] : passage->end();
        seam = passage->across(middle, back, ahead);
        number = static_cast<int>(first + i);
      }
    };
    if (route.passage) {
      look(0, course.in_passage, &*route.passage);
      if (route.branch) {
        look(course.in_passage, course.places.size() - course.in_passage, &*route.branch);
      }
    } else {
      const double at = dot(middle, route.along);
      if (const auto found = straight_front(shape, route.along, at)) seam = found->front;
      number = static_cast<int>(std::count_if(
          lines.begin(), lines.end(), [&](const Front& line) { return line.along_left < at; }));
    }
    // A hole that bounds the passage of a ring is met at the start.
    if (route.is_ring && !seam) continue;
    if (!seam) return false;
    cuts.push_back(cut_of(*seam, number, number));
  }
  return true;
}

std::optional<Parts> parts_between(const Course& course, const SlabPlan& shape,
                                   const std::vector<Front>& lines) {
  const Route& route = *course.route;
  std::vector<Cut> cuts;
  const std::size_t first = course.in_passage;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto behind = static_cast<int>(route.branch && i + 1 >= first ? i + 1 : i);
    cuts.push_back(cut_of(lines[i], behind, behind + 1));
  }
  std::vector<Cut> mouth;  // fronts of the passage may end on it
  if (route.branch) mouth.push_back(cut_of(route.mouth, -1, static_cast<int>(first)));
  if (route.is_ring) {
    const auto last = static_cast<int>(course.places.size()) - 1;
    cuts.push_back(cut_of(route.passage->start(), last, 0));
  }
  const std::vector<Polygon> holes = holes_of(shape);
  std::vector<Front> all = lines;
  if (route.is_ring) all.push_back(route.passage->start());
  if (!add_seams(course, shape, holes, all, cuts)) return std::nullopt;
  const auto found = dissect(shape.outline, holes, mouth, cuts);
  if (!found) return std::nullopt;
  Parts parts(course.places.size());
  Area covered;
  for (const CutPart& part : *found) {
    covered += signed_area(part.outline);
    parts[static_cast<std::size_t>(std::max(part.number, 0))].push_back(part.outline);
  }
  // Openings are exact, their outlines are chords.
  const bool tiles = std::abs(covered / shape.top_area - 1) < 1e-3;
  const bool all_have_some =
      std::none_of(parts.begin(), parts.end(), [](const auto& part) { return part.empty(); });
  if (!tiles || !all_have_some) return std::nullopt;
  return parts;
}

double volume_of(const std::vector<Polygon>& parts, const SlabVolume& volume) {
  double sum = 0;
  for (const Polygon& part : parts) sum += volume.over(part).si();
  return sum;
}

constexpr double most_moved = 0.025;  // m, assumption: a line is moved so far to meet another
constexpr double too_short = 0.95 * least_side_joint.in_m();  // for a joint

/// Cuts a row into cells from its left side to its right, or the other way: each by a line across
/// it that begins, if that is near, where a line of the row before has ended, so that four cells
/// meet at a point.
class RowCutter {
 public:
  RowCutter(std::vector<Polygon> row, const Front& back, const Front& ahead, bool from_left,
            const SlabVolume& volume)
      : rest_(std::move(row)), volume_(volume) {
    back_ = from_left ? back.left : back.right;
    ahead_ = from_left ? ahead.left : ahead.right;
    const Vec b = (back.right - back.left).unit(), a = (ahead.right - ahead.left).unit();
    along_ = (b + a).unit() * (from_left ? 1 : -1);
    to_front_ = along_.left();
    if (dot(to_front_, ahead.left - back.left) < 0) to_front_ = -to_front_;
    back_way_ = b * (from_left ? 1 : -1);
    ahead_way_ = a * (from_left ? 1 : -1);
    double lo = HUGE_VAL, hi = -HUGE_VAL;
    for (const Polygon& part : rest_) {
      for (const Point& corner : part) {
        lo = std::min(lo, dot(vec(corner), along_));
        hi = std::max(hi, dot(vec(corner), along_));
      }
    }
    lo_ = lo;
    hi_ = hi;
  }

  /// The next cell, of so much volume; `near` are the places along the back where lines ended.
  std::optional<std::vector<Polygon>> next(double wanted, const std::vector<Vec>& near) {
    const auto straight = solve(wanted, [&](double x) { return across(x, x); });
    if (!straight) return std::nullopt;
    std::pair<Vec, Vec> line = across(*straight, *straight);
    for (const Vec& end : near) {
      const double away = dot(end, along_) - *straight;
      if (std::abs(away) < 1e-9 || std::abs(away) > most_moved + too_short) continue;
      // To the very point where that is near; else, where it must be, until the contact is short.
      double by = 0;
      if (std::abs(away) <= most_moved) by = away;
      if (std::abs(away) > too_short) by = away - std::copysign(too_short, away);
      const auto other = solve(wanted, [&](double x) { return across(*straight + by, x); });
      if (by != 0 && other) line = across(*straight + by, *other);
      break;
    }
    ends_.push_back(line.second);
    return take(line);
  }
  [[nodiscard]] std::vector<Polygon> rest() const { return rest_; }
  [[nodiscard]] const std::vector<Vec>& ends() const { return ends_; }

 private:
  /// From the back at one place along the row to its front at another.
  [[nodiscard]] std::pair<Vec, Vec> across(double at_back, double at_front) const {
    const auto on = [&](const Vec& from, const Vec& way, double at) {
      return from + way * ((at - dot(from, along_)) / dot(way, along_));
    };
    return {on(back_, back_way_, at_back), on(ahead_, ahead_way_, at_front)};
  }
  /// What lies on the side of the line from which cells are taken.
  [[nodiscard]] Polygon before(const Polygon& part, const std::pair<Vec, Vec>& line) const {
    const bool left = cross(line.second - line.first, along_) < 0;
    const Outline clip = left ? clipped(outline_of(part), point(line.first), point(line.second))
                              : clipped(outline_of(part), point(line.second), point(line.first));
    Polygon polygon;
    for (const OutlineEdge& edge : clip) polygon.push_back(edge.from);
    return polygon;
  }
  template <class LineAt>
  std::optional<double> solve(double wanted, LineAt line_at) const {
    const auto missing = [&](double x) {
      double sum = 0;
      for (const Polygon& part : rest_) {
        const Polygon clip = before(part, line_at(x));
        if (clip.size() > 2) sum += volume_.over(clip).si();
      }
      return sum - wanted;
    };
    return rising_root(missing, lo_, hi_, (lo_ + hi_) / 2, 1e-9 * wanted);
  }
  std::optional<std::vector<Polygon>> take(const std::pair<Vec, Vec>& line) {
    std::vector<Polygon> cell, rest;
    const Vec w = line.second - line.first;
    for (const Polygon& part : rest_) {
      std::vector<Vec> meetings;
      for (std::size_t i = 0; i < part.size(); ++i) {
        const Vec c = vec(part[i]), d = vec(part[(i + 1) % part.size()]);
        const double beside_c = cross(w, c - line.first), beside_d = cross(w, d - line.first);
        if ((beside_c > 0) == (beside_d > 0)) continue;
        meetings.push_back(c + (d - c) * (beside_c / (beside_c - beside_d)));
      }
      std::sort(meetings.begin(), meetings.end(),
                [&](const Vec& a, const Vec& b) { return dot(a, w) < dot(b, w); });
      const bool left = cross(w, along_) < 0;
      if (meetings.size() < 2) {
        const bool is_before = dot(vec(part.front()) - line.first, along_) < 0;
        (is_before ? cell : rest).push_back(part);
        continue;
      }
      const auto halves = dissect(
          part, {},
          {{settled(meetings.front()), settled(meetings.back()), left ? 1 : 2, left ? 2 : 1}});
      if (!halves) return std::nullopt;
      for (const CutPart& half : *halves) (half.number == 1 ? cell : rest).push_back(half.outline);
    }
    rest_ = std::move(rest);
    return cell;
  }

  std::vector<Polygon> rest_;
  const SlabVolume& volume_;
  Vec back_, ahead_, back_way_, ahead_way_, along_, to_front_;
  double lo_ = 0, hi_ = 0;
  std::vector<Vec> ends_;
};

}  // namespace

std::optional<Course> course_along(const Route& route, const SlabPlan& shape,
                                   const std::vector<double>& shares, Fronts fronts) {
  Course course;
  course.route = &route;
  course.fronts = fronts;
  if ((route.is_ring || route.branch.has_value()) == (fronts == Fronts::one)) return std::nullopt;
  if (route.is_ring) {
    if (shares.size() < 3) return std::nullopt;
    place_round(shares, course);
  } else if (route.branch) {
    if (!place_branching(shape, shares, course)) return std::nullopt;
  } else {
    for (std::size_t i = 0; i < shares.size(); ++i) course.places.push_back({shares[i], i});
  }
  if (!route.branch) course.in_passage = course.places.size();
  auto lines = lines_between(course, shape, areas_of(course, shape));
  if (!lines) return std::nullopt;
  course.lines = std::move(*lines);
  measure(shape, course);
  return course;
}

std::optional<Course> in_rows(const Course& ribbons, const SlabPlan& shape,
                              const std::vector<double>& shares, Length least, Alone alone,
                              bool from_left) {
  if (ribbons.fronts != Fronts::one) return std::nullopt;
  Course course = ribbons;
  course.from_left = from_left;
  course.places.clear();
  const std::size_t n = shares.size(), end = n - (alone.last ? 1 : 0);
  for (std::size_t i = 0; i < n;) {
    std::size_t count = 1;
    if (!(alone.first && i == 0) && i < end) {
      const double wanted = std::ceil(least / ribbons.advances[i] - 1e-9);
      count = std::min(end - i, static_cast<std::size_t>(std::clamp(wanted, 1.0, 1e6)));
    }
    Stretch row{0, i, count};
    for (std::size_t k = 0; k < count; ++k) row.share += shares[i + k];
    course.places.push_back(row);
    i += count;
  }
  course.in_passage = course.places.size();
  if (course.in_passage == n) return std::nullopt;
  auto lines = lines_between(course, shape, areas_of(course, shape));
  if (!lines) return std::nullopt;
  course.lines = std::move(*lines);
  measure(shape, course);
  return course;
}

std::optional<std::vector<CutCell>> cut(const Course& course, const SlabPlan& shape,
                                        const SlabVolume& volume,
                                        const std::vector<double>& shares) {
  std::vector<double> areas = areas_of(course, shape);
  std::vector<Front> lines = course.lines;
  auto parts = parts_between(course, shape, lines);
  if (!parts) return std::nullopt;
  if (!volume.is_even() && course.places.size() > 1) {
    // A little more or less area until the volumes are right.
    constexpr int most_tries = 24;
    constexpr double enough = 1e-6, at_most = 3e-3;  // of a batch
    double worst = 0;
    for (int i = 0; i < most_tries; ++i) {
      std::vector<double> volumes;
      for (const auto& part : *parts) volumes.push_back(volume_of(part, volume));
      const double all = std::accumulate(volumes.begin(), volumes.end(), 0.0);
      worst = 0;
      for (std::size_t k = 0; k < areas.size(); ++k) {
        const double missing = course.places[k].share * all - volumes[k];
        worst = std::max(worst, std::abs(missing) / (course.places[k].share * all));
        areas[k] *= 1 + missing / volumes[k];
      }
      if (worst <= enough) break;
      fill_up(course, shape, areas);
      auto next = lines_between(course, shape, areas);
      auto cut_anew = next ? parts_between(course, shape, *next) : std::nullopt;
      if (!cut_anew) return std::nullopt;
      lines = std::move(*next);
      parts = std::move(cut_anew);
    }
    if (worst > at_most) return std::nullopt;
  }
  std::size_t cells = 0;
  for (const Stretch& place : course.places) cells = std::max(cells, place.cell + place.cells);
  std::vector<CutCell> result(cells);
  std::vector<Vec> ends;
  for (std::size_t k = 0; k < course.places.size(); ++k) {
    const Stretch& place = course.places[k];
    std::vector<Polygon>& here = (*parts)[k];
    if (place.cells == 1) {
      std::vector<Polygon>& cell = result[place.cell].parts;
      cell.insert(cell.end(), here.begin(), here.end());
      ends.clear();
      continue;
    }
    const Route& route = *course.route;
    const auto edge = [&](bool is_start) {
      return !route.passage ? beyond(shape, route.along, is_start)
             : is_start     ? route.passage->start()
                            : route.passage->end();
    };
    const Front back = k == 0 ? edge(true) : lines[k - 1];
    const Front ahead = k + 1 == course.places.size() ? edge(false) : lines[k];
    const double row = volume_of(here, volume);
    RowCutter cutter(std::move(here), back, ahead, course.from_left, volume);
    for (std::size_t c = 0; c + 1 < place.cells; ++c) {
      auto cell = cutter.next(row * shares[place.cell + c] / place.share, ends);
      if (!cell) return std::nullopt;
      result[place.cell + c].parts = std::move(*cell);
    }
    result[place.cell + place.cells - 1].parts = cutter.rest();
    ends = cutter.ends();
  }
  for (std::size_t k = 0; k < course.places.size(); ++k) {
    for (std::size_t c = 0; c < course.places[k].cells; ++c) {
      result[course.places[k].cell + c].advance = course.advances[k];
    }
  }
  for (CutCell& cell : result) {
    if (cell.parts.empty()) return std::nullopt;
    cell.volume = Volume::from_si(volume_of(cell.parts, volume));
  }
  return result;
}

}  // namespace strikeoff
