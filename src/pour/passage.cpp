// SPDX-License-Identifier: MIT
#include "pour/passage.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "pour/rising_root.h"

namespace strikeoff {
namespace {

constexpr double near_corner_costs = 1.25;  // assumption: a joint there as one a quarter longer
constexpr double in_mouth_costs = 3;        // assumption: its end would stand in wet concrete
constexpr double hair = 1e-9;               // m

double area_of(const Trail& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  }
  return twice / 2;
}

Vec middle_of(const Trail& polygon) {
  Vec sum;
  for (const Vec& corner : polygon) sum = sum + corner;
  return sum / static_cast<double>(polygon.size());
}

/// Where the line a + x (b - a) crosses the edge cd: x, where that is on the edge.
std::optional<double> crossing(const Vec& a, const Vec& b, const Vec& c, const Vec& d) {
  const double beside_c = cross(b - a, c - a), beside_d = cross(b - a, d - a);
  if ((beside_c > 0) == (beside_d > 0)) return std::nullopt;
  const Vec at = c + (d - c) * (beside_c / (beside_c - beside_d));
  return dot(at - a, b - a) / dot(b - a, b - a);
}

}  // namespace

Trail trail_of(const Polygon& polygon) {
  Trail trail;
  for (const Point& place : polygon) trail.push_back(vec(place));
  return trail;
}

Polygon polygon_of(const Trail& trail) {
  Polygon polygon;
  for (const Vec& place : trail) polygon.push_back(point(place));
  return polygon;
}

double area_right_of(const Trail& polygon, const Vec& a, const Vec& b) {
  // A fan from a of what is left after each edge is cut by the line; edges along it count nothing.
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    Vec c = polygon[i], d = polygon[(i + 1) % polygon.size()];
    const double beside_c = cross(b - a, c - a), beside_d = cross(b - a, d - a);
    if (beside_c > 0 && beside_d > 0) continue;
    const auto cut = [&] { return c + (d - c) * (beside_c / (beside_c - beside_d)); };
    if (beside_c > 0) {
      c = cut();
    } else if (beside_d > 0) {
      d = cut();
    }
    twice += cross(c - a, d - a);
  }
  return twice / 2;
}

Passage::Side::Side(Trail corners) : line(std::move(corners)), along{0}, swept{0} {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    along.push_back(along.back() + (line[i + 1] - line[i]).length());
    swept.push_back(swept.back() + cross(line[i], line[i + 1]));
  }
}

/// The piece between two corners that holds a place; the last one its end.
std::size_t Passage::Side::piece(double at) const {
  const auto next = std::upper_bound(along.begin(), along.end(), at);
  const auto i = static_cast<std::size_t>(next - along.begin());
  return std::clamp<std::size_t>(i, 1, std::max<std::size_t>(along.size(), 2) - 1) - 1;
}

Vec Passage::Side::at(double place) const {
  if (line.size() == 1) return line.front();
  const std::size_t i = piece(place);
  const double length = along[i + 1] - along[i];
  if (place >= along[i + 1] || length <= 0) return line[i + 1];
  return line[i] + (line[i + 1] - line[i]) * ((place - along[i]) / length);
}

double Passage::Side::swept_to(double place) const {
  if (line.size() == 1) return 0;
  const std::size_t i = piece(place);
  return swept[i] + cross(line[i], at(place));
}

Passage::Passage(Trail left, Trail right, std::vector<Trail> holes, std::vector<Vec> corners,
                 double clearance)
    : left_(std::move(left)),
      right_(std::move(right)),
      holes_(std::move(holes)),
      corners_(std::move(corners)),
      clearance_(clearance) {
  for (const Trail& hole : holes_) hole_areas_.push_back(area_of(hole));
  area_ = behind(end());
  add_square();
  add_pivots();
}

Front Passage::front(double along_left, double along_right) const {
  return {left_.at(along_left), right_.at(along_right), along_left, along_right};
}

Front Passage::start() const {
  return front(0, 0);
}
Front Passage::end() const {
  return front(left_.length(), right_.length());
}

/// Where a front enters and leaves a hole, as parts of its length.
std::vector<std::pair<double, double>> Passage::crossings(const Front& front,
                                                          const Trail& hole) const {
  std::vector<double> at;
  for (std::size_t i = 0; i < hole.size(); ++i) {
    const auto x = crossing(front.left, front.right, hole[i], hole[(i + 1) % hole.size()]);
    if (x && *x > 0 && *x < 1) at.push_back(*x);
  }
  std::sort(at.begin(), at.end());
  std::vector<std::pair<double, double>> pairs;
  for (std::size_t i = 0; i + 1 < at.size(); i += 2) pairs.emplace_back(at[i], at[i + 1]);
  return pairs;
}

double Passage::behind(const Front& front) const {
  double area =
      (cross(left_.line.front(), right_.line.front()) + right_.swept_to(front.along_right) +
       cross(front.right, front.left) - left_.swept_to(front.along_left)) /
      2;
  if (holes_.empty()) return area;
  for (std::size_t k = 0; k < holes_.size(); ++k) {
    if (!crossings(front, holes_[k]).empty()) {
      area -= area_right_of(holes_[k], front.left, front.right);
      continue;
    }
    // Inside when a ray to the right crosses what bounds the part behind an odd number of times.
    const Vec in = middle_of(holes_[k]);
    bool inside = false;
    const auto edge = [&](const Vec& a, const Vec& b) {
      if ((a.y > in.y) == (b.y > in.y)) return;
      if (in.x < a.x + (b.x - a.x) * ((in.y - a.y) / (b.y - a.y))) inside = !inside;
    };
    const auto side = [&](const Side& of, double up_to, const Vec& last) {
      std::size_t i = 0;
      for (; i + 1 < of.line.size() && of.along[i + 1] < up_to; ++i)
        edge(of.line[i], of.line[i + 1]);
      edge(of.line[i], last);
    };
    edge(left_.line.front(), right_.line.front());
    side(right_, front.along_right, front.right);
    edge(front.right, front.left);
    side(left_, front.along_left, front.left);
    if (inside) area -= hole_areas_[k];
  }
  return area;
}

double Passage::joint_length(const Front& front) const {
  double share = 1;
  for (const Trail& hole : holes_) {
    for (const auto& [in, out] : crossings(front, hole)) share -= out - in;
  }
  return share * front.length();
}

bool Passage::is_near_corner(const Front& front) const {
  if (corners_.empty()) return false;
  std::vector<Vec> ends{front.left, front.right};
  for (const Trail& hole : holes_) {
    const auto met = crossings(front, hole);
    for (const auto& [in, out] : met) {
      ends.push_back(front.left + (front.right - front.left) * in);
      ends.push_back(front.left + (front.right - front.left) * out);
    }
    const Vec way = front.right - front.left;
    const auto passes = [&](const Vec& corner) {
      const double along = std::clamp(dot(corner - front.left, way) / dot(way, way), 0.0, 1.0);
      return (front.left + way * along - corner).length() < clearance_ / 2;
    };
    if (met.empty() && std::any_of(hole.begin(), hole.end(), passes)) return true;
  }
  return std::any_of(ends.begin(), ends.end(), [&](const Vec& end) {
    return std::any_of(corners_.begin(), corners_.end(), [&](const Vec& corner) {
      return (end - corner).length() < clearance_ * (1 - 1e-9);
    });
  });
}

/// True where a front meets the sides at its ends only, and lies between them.
bool Passage::is_clear(const Front& front) const {
  const double length = front.length();
  if (length < hair) return false;
  const double margin = hair / length;
  bool odd = false;
  const Vec middle = (front.left + front.right) / 2;
  const auto edge_is_clear = [&](const Vec& a, const Vec& b) {
    if ((a.y > middle.y) != (b.y > middle.y) &&
        middle.x < a.x + (b.x - a.x) * ((middle.y - a.y) / (b.y - a.y))) {
      odd = !odd;
    }
    const auto x = crossing(front.left, front.right, a, b);
    return !x || *x < margin || *x > 1 - margin;
  };
  const auto side_is_clear = [&](const Side& side) {
    for (std::size_t i = 0; i + 1 < side.line.size(); ++i) {
      if (!edge_is_clear(side.line[i], side.line[i + 1])) return false;
    }
    return true;
  };
  return side_is_clear(left_) && side_is_clear(right_) &&
         edge_is_clear(left_.line.front(), right_.line.front()) &&
         edge_is_clear(right_.line.back(), left_.line.back()) && odd;
}

void Passage::set_mouth(bool on_left, double from, double to) {
  mouth_on_left_ = on_left;
  mouth_from_ = from;
  mouth_to_ = to;
}

bool Passage::is_in_mouth(const Front& front) const {
  const double along = mouth_on_left_ ? front.along_left : front.along_right;
  return along > mouth_from_ + hair && along < mouth_to_ - hair;
}

void Passage::add_turn(double left0, double right0, double left1, double right1,
                       std::vector<Turn>& turns) const {
  if (left1 - left0 < hair && right1 - right0 < hair) return;
  turns.push_back(
      {left0, right0, left1, right1, behind(front(left0, right0)), behind(front(left1, right1))});
  if (!(turns.back().behind0 < turns.back().behind1)) turns.pop_back();
}

/// Fronts square to what lies half-way between the directions of two edges, one of each side.
void Passage::add_square() {
  for (std::size_t i = 0; i + 1 < left_.line.size(); ++i) {
    const Vec l = (left_.line[i + 1] - left_.line[i]).unit();
    for (std::size_t k = 0; k + 1 < right_.line.size(); ++k) {
      const Vec r = (right_.line[k + 1] - right_.line[k]).unit();
      const Vec on = (l + r).unit();
      const double per_left = dot(l, on), per_right = dot(r, on);
      if (per_left < 0.1 || per_right < 0.1) continue;
      const double l0 = dot(left_.line[i], on), l1 = dot(left_.line[i + 1], on);
      const double r0 = dot(right_.line[k], on), r1 = dot(right_.line[k + 1], on);
      const double lo = std::max(l0, r0), hi = std::min(l1, r1);
      if (hi - lo < hair) continue;
      const auto on_left = [&](double x) { return left_.along[i] + (x - l0) / per_left; };
      const auto on_right = [&](double x) { return right_.along[k] + (x - r0) / per_right; };
      add_turn(on_left(lo), on_right(lo), on_left(hi), on_right(hi), square_);
    }
  }
}

/// Fronts that turn about one place of a side.
void Passage::add_fan(double at, bool on_left, std::vector<Turn>& turns) const {
  const Side& other = on_left ? right_ : left_;
  for (std::size_t k = 0; k + 1 < other.line.size(); ++k) {
    if (on_left) {
      add_turn(at, other.along[k], at, other.along[k + 1], turns);
    } else {
      add_turn(other.along[k], at, other.along[k + 1], at, turns);
    }
  }
}

/// About places just off the corners of the sides.
void Passage::add_pivots() {
  for (const bool on_left : {true, false}) {
    const Side& side = on_left ? left_ : right_;
    for (const Vec& corner : corners_) {
      for (std::size_t i = 0; i < side.line.size(); ++i) {
        if ((side.line[i] - corner).length() > clearance_ / 2) continue;
        const double by = clearance_ * (1 + 1e-6);
        for (const double at : {side.along[i] - by, side.along[i] + by}) {
          if (at > 0 && at < side.length()) add_fan(at, on_left, pivots_);
        }
        break;
      }
    }
  }
}

std::optional<Front> Passage::solve(const Turn& turn, double wanted) const {
  const auto at = [&](double x) {
    return front(turn.left0 + (turn.left1 - turn.left0) * x,
                 turn.right0 + (turn.right1 - turn.right0) * x);
  };
  const double guess = (wanted - turn.behind0) / (turn.behind1 - turn.behind0);
  const auto x = rising_root([&](double part) { return behind(at(part)) - wanted; }, 0, 1, guess,
                             1e-13 * area_);
  if (!x) return std::nullopt;
  return at(*x);
}

void Passage::add_candidates(const std::vector<Turn>& turns, double wanted,
                             std::vector<Candidate>& candidates) const {
  for (const Turn& turn : turns) {
    if (wanted <= turn.behind0 || wanted >= turn.behind1) continue;
    const auto found = solve(turn, wanted);
    if (!found || !is_clear(*found)) continue;
    const double cost = joint_length(*found) * (is_near_corner(*found) ? near_corner_costs : 1) *
                        (is_in_mouth(*found) ? in_mouth_costs : 1);
    candidates.push_back({*found, cost});
  }
}

std::vector<Passage::Candidate> Passage::candidates(double wanted) const {
  std::vector<Candidate> found;
  add_candidates(square_, wanted, found);
  const auto cheapest = [&] {
    return std::min_element(found.begin(), found.end(),
                            [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
  };
  // Square to parallel forms and off all corners: none is shorter.
  if (!found.empty() && pivots_.empty() && !is_near_corner(cheapest()->front)) {
    return {*cheapest()};
  }
  add_candidates(pivots_, wanted, found);
  std::vector<Turn> fans;
  if (!found.empty() && is_near_corner(cheapest()->front)) {
    // Turned a little about its middle.
    const Front near = cheapest()->front;
    for (const double step : {-1.0, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1.0}) {
      const double at = near.along_left + step * clearance_;
      if (at > 0 && at < left_.length()) add_fan(at, true, fans);
    }
  }
  if (found.empty()) {
    constexpr int places = 24;
    for (int i = 1; i < places; ++i) add_fan(left_.length() * i / places, true, fans);
    for (int i = 1; i < places; ++i) add_fan(right_.length() * i / places, false, fans);
  }
  add_candidates(fans, wanted, found);
  return found;
}

std::optional<std::vector<Front>> Passage::fronts(const std::vector<double>& wanted) const {
  // The cheapest set, front by front: each goes on from the cheapest that it does not cross.
  std::vector<std::vector<Candidate>> all;
  std::vector<std::vector<std::size_t>> from;
  for (const double area : wanted) {
    all.push_back(candidates(area));
    from.emplace_back(all.back().size(), 0);
    if (all.size() == 1) continue;
    const std::vector<Candidate>& before = all[all.size() - 2];
    for (std::size_t k = 0; k < all.back().size(); ++k) {
      Candidate& next = all.back()[k];
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t i = 0; i < before.size(); ++i) {
        if (before[i].front.along_left > next.front.along_left + hair ||
            before[i].front.along_right > next.front.along_right + hair ||
            before[i].cost >= least * (1 - 1e-12)) {
          continue;
        }
        least = before[i].cost;
        from.back()[k] = i;
      }
      next.cost += least;
    }
  }
  std::vector<Front> fronts(wanted.size());
  std::size_t k = 0;
  for (std::size_t i = wanted.size(); i-- > 0;) {
    const std::vector<Candidate>& here = all[i];
    if (i + 1 == wanted.size()) {
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t c = 0; c < here.size(); ++c) {
        if (here[c].cost < least * (1 - 1e-12)) {
          least = here[c].cost;
          k = c;
        }
      }
    }
    if (here.empty() || !std::isfinite(here[k].cost)) return std::nullopt;
    fronts[i] = here[k].front;
    k = from[i][k];
  }
  return fronts;
}

std::optional<Front> Passage::shortest_at(bool on_left, double along) const {
  const Vec from = (on_left ? left_ : right_).at(along);
  const Side& other = on_left ? right_ : left_;
  std::optional<Front> best;
  for (std::size_t k = 0; k + 1 < other.line.size(); ++k) {
    const Vec edge = other.line[k + 1] - other.line[k];
    const double length = edge.length();
    const double at =
        other.along[k] + std::clamp(dot(from - other.line[k], edge) / length, 0.0, length);
    const Front found = on_left ? front(along, at) : front(at, along);
    if (is_clear(found) && (!best || found.length() < best->length())) best = found;
  }
  return best;
}

std::optional<Front> Passage::across(const Vec& middle, const Front& back,
                                     const Front& ahead) const {
  constexpr int directions = 36;
  std::optional<Front> best;
  for (int i = 0; i < directions; ++i) {
    const double angle = 3.14159265358979323846 * i / directions;
    const Vec d{std::cos(angle), std::sin(angle)};
    for (const Vec& towards : {d, -d}) {
      // The nearest place of the left side one way, of the right side the other.
      const auto nearest = [&](const Side& side, const Vec& way) {
        double least = std::numeric_limits<double>::infinity(), along = -1;
        for (std::size_t k = 0; k + 1 < side.line.size(); ++k) {
          const auto x = crossing(middle, middle + way, side.line[k], side.line[k + 1]);
          if (!x || *x <= 0 || *x >= least) continue;
          least = *x;
          along = side.along[k] + (middle + way * *x - side.line[k]).length();
        }
        return along;
      };
      const double left = nearest(left_, towards), right = nearest(right_, -towards);
      if (left < 0 || right < 0) continue;
      if (left < back.along_left || left > ahead.along_left || right < back.along_right ||
          right > ahead.along_right) {
        continue;
      }
      const Front found = front(left, right);
      if (is_clear(found) && (!best || found.length() < best->length() - hair)) best = found;
    }
  }
  return best;
}

}  // namespace strikeoff
