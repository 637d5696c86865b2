// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "pour/course.h"
#include "pour/rising_root.h"

namespace strikeoff {
namespace {

double volume_of(const Region& region, const Direction& u, const SlabVolume& volume) {
  double sum = 0;
  for (const Polygon& part : outlines_of(region, u)) sum += volume.over(part).si();
  return sum;
}

class StraightCourse : public Course {
 public:
  StraightCourse(Region region, const Direction& u, const SlabVolume& volume)
      : region_(std::move(region)), u_(u), volume_(volume) {
    constexpr int steps = 64;
    const double start = region_.front().u0, length = region_.back().u1 - start;
    std::vector<double> at;
    for (int i = 1; i < steps; ++i) at.push_back(start + length * i / steps);
    double behind = 0;
    const double all = area(region_);
    fronts.behind.push_back(0);
    fronts.front.push_back(Length::nm(width_after(region_, start)));
    for (const Region& part : cut_at(region_, at)) {
      behind += area(part);
      fronts.behind.push_back(behind / all);
      const double end = part.empty() ? start : part.back().u1;
      double width = 0;
      for (const Trapezoid& t : part) width += t.u1 == end ? t.hi1 - t.lo1 : 0;
      fronts.front.push_back(Length::nm(width));
    }
    from = u.x != 0 ? "the left end" : "the front";
    towards = u.x != 0 ? "the right end" : "the back";
  }

  [[nodiscard]] std::optional<CutRows> cut(const std::vector<double>& shares) const override {
    CutRows rows;
    // Cells follow one another from the front to the back, or from left to right.
    rows.along.assign(shares.size(), u_.x != 0 ? Direction{0, 1} : Direction{1, 0});
    double end = region_.front().u0;
    for (const Region& part : cut_by_volume(region_, u_, shares, volume_)) {
      if (!rows.parts.empty()) rows.fronts.push_back(front_at(end));
      rows.parts.push_back(outlines_of(part, u_));
      if (!part.empty()) end = part.back().u1;
    }
    return rows;
  }

 private:
  [[nodiscard]] std::vector<Polygon> front_at(double at) const {
    std::vector<Polygon> lines;
    for (const std::pair<double, double>& stretch : across(region_, at)) {
      lines.push_back(
          {out_of_frame({at, stretch.first}, u_), out_of_frame({at, stretch.second}, u_)});
    }
    return lines;
  }

  Region region_;
  Direction u_;
  SlabVolume volume_;
};

}  // namespace

Length FrontTable::at(double share) const {
  const auto next = std::lower_bound(behind.begin(), behind.end(), share);
  if (next == behind.begin()) return front.front();
  if (next == behind.end()) return front.back();
  const auto i = static_cast<std::size_t>(next - behind.begin());
  const double part = (share - behind[i - 1]) / (behind[i] - behind[i - 1]);
  return front[i - 1] + (front[i] - front[i - 1]) * part;
}

std::vector<Region> cut_by_volume(const Region& region, const Direction& u,
                                  const std::vector<double>& shares, const SlabVolume& volume) {
  std::vector<Region> parts = cut_by_area(region, shares);
  if (volume.is_even() || shares.size() < 2) return parts;
  const double whole = volume_of(region, u, volume), end = region.back().u1;
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<double> at;
  double from = region.front().u0, done = 0, share = 0;
  for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
    share += shares[k];
    const double wanted = whole * (share / all) - done;
    const auto missing = [&](double to) {
      return volume_of(between(region, from, to), u, volume) - wanted;
    };
    const double guess = parts[k].empty() ? from : parts[k].back().u1;
    const double to =
        rising_root(missing, from, end, guess, 1e-9 * std::abs(wanted)).value_or(guess);
    done += missing(to) + wanted;
    at.push_back(to);
    from = to;
  }
  return cut_at(region, at);
}

std::unique_ptr<Course> straight_course(const Polygon& outline, const std::vector<Polygon>& holes,
                                        bool along_x, const SlabVolume& volume) {
  const Direction u = along_x ? Direction{1, 0} : Direction{0, 1};
  std::vector<Ring> rings{ring_of(outline, u)};
  for (const Polygon& hole : holes) rings.push_back(ring_of(hole, u));
  return std::make_unique<StraightCourse>(region_of(rings), u, volume);
}

}  // namespace strikeoff
