// SPDX-License-Identifier: MIT
#include "pour/zones.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

#include "mix/mix.h"
#include "pour/cells.h"
#include "pour/courses.h"
#include "pour/joint_corners.h"
#include "pour/slab_volume.h"

namespace strikeoff {
namespace {

/// What one batch leaves in one slab.
struct Portion {
  int batch = 0;
  double share = 1;  // of the whole pour
};

/// What fills one cell: one batch, or one for each lift from the bottom up.
struct Column {
  std::size_t first = 0, count = 1;  // portions
  double share = 0;
};

/// Where each of these shares of the whole ends, the last at 1.
std::vector<double> ends_of(const std::vector<double>& shares) {
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<double> ends;
  double sum = 0;
  for (const double share : shares) ends.push_back((sum += share) / all);
  ends.back() = 1;
  return ends;
}

/// The portions of each slab. A batch that ends within 1e-9 of itself of a slab's end ends there:
/// no sliver from rounding.
std::vector<std::vector<Portion>> portions_of(const std::vector<SlabPlan>& shapes,
                                              const std::vector<double>& shares) {
  std::vector<double> volumes;
  for (const SlabPlan& shape : shapes) volumes.push_back(shape.concrete.si());
  const std::vector<double> slab_ends = ends_of(volumes);
  std::vector<std::vector<Portion>> portions(shapes.size());
  double from = 0;
  std::size_t k = 0;
  const std::vector<double> batch_ends = ends_of(shares);
  for (std::size_t i = 0; i < shares.size(); ++i) {
    double end = batch_ends[i];
    const double near = 1e-9 * (end - from);
    const auto slab_end = std::lower_bound(slab_ends.begin(), slab_ends.end(), end - near);
    if (slab_end != slab_ends.end() && *slab_end <= end + near) end = *slab_end;
    while (from < end) {
      const double to = std::min(end, slab_ends[k]);
      if (to > from) portions[k].push_back({static_cast<int>(i) + 1, to - from});
      from = to;
      if (to == slab_ends[k]) ++k;
    }
  }
  return portions;
}

constexpr Length most_lift = Length::mm(150);  // assumption: what a rod works through with care

int lifts_of(const SlabPlan& shape) {
  return std::max(1, whole_up(shape.edge_thickness / most_lift));
}

std::vector<Column> columns_of(const std::vector<Portion>& portions, int lifts) {
  const auto tall = static_cast<std::size_t>(lifts);
  const std::size_t in_lifts = portions.size() / tall * tall;
  std::vector<Column> columns;
  for (std::size_t i = 0; i < portions.size();) {
    Column column{i, i < in_lifts ? tall : 1, 0};
    for (std::size_t k = 0; k < column.count; ++k) column.share += portions[i + k].share;
    columns.push_back(column);
    i += column.count;
  }
  return columns;
}

/// A slab and the ways to pour it.
struct SlabCourses {
  SlabCourses(const Slab& of, const SlabPlan& as, Length strip)
      : slab(of), shape(as), volume(of, as, strip), corners(crack_corners(as)) {
    courses.push_back(plain_course(shape, volume));
  }

  Slab slab;
  SlabPlan shape;
  SlabVolume volume;
  std::vector<Point> corners;
  std::vector<std::unique_ptr<Course>> courses;  // the plain one first
  bool has_all = false;
};

/// A course and what it would come to.
struct Candidate {
  const Course* course = nullptr;
  std::vector<std::size_t> rows;
  Estimate estimate;
};

std::vector<Candidate> ranked(const SlabCourses& slab, const std::vector<double>& shares,
                              const Sweep* keep) {
  // Straight cuts across the slab are the easiest to mark out: worth joints 2 % longer
  // (assumption).
  constexpr double plain_may_be = 0.98;
  const Length least = std::max(2 * slab.shape.edge_thickness, Length::mm(150));
  const Area top = slab.shape.top_area;
  std::vector<Candidate> candidates;
  for (const auto& course : slab.courses) {
    if (keep && (course->from != keep->from || course->towards != keep->towards)) continue;
    Candidate next{course.get(), cells_in_rows(course->fronts, shares, top, least), {}};
    next.estimate = estimate(course->fronts, shares, next.rows, top);
    if (course == slab.courses.front()) next.estimate.joints = next.estimate.joints * plain_may_be;
    candidates.push_back(std::move(next));
  }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) {
                     if (a.estimate.gap != b.estimate.gap) return a.estimate.gap < b.estimate.gap;
                     if (a.estimate.joints != b.estimate.joints)
                       return a.estimate.joints < b.estimate.joints;
                     return a.estimate.longest < b.estimate.longest;
                   });
  return candidates;
}

struct Chosen {
  const Course* course = nullptr;
  SlabCells cells;
};

/// Joints that end at a corner, or that no straight board makes.
std::size_t awkward_joints(const SlabCourses& slab, const SlabCells& cells) {
  const Length clearance = corner_clearance(slab.shape);
  return static_cast<std::size_t>(
      std::count_if(cells.meetings.begin(), cells.meetings.end(), [&](const CellMeeting& meeting) {
        return meeting.line.size() > 2 || near_corner(meeting.line, slab.corners, clearance);
      }));
}

Chosen choose(const SlabCourses& slab, const std::vector<double>& shares, const Sweep* keep) {
  const std::vector<Candidate> candidates = ranked(slab, shares, keep);
  constexpr double longer = 1.1;  // assumption: what a straight joint off all corners is worth
  constexpr std::size_t most_cut = 3;
  Chosen best;
  const Candidate* first = nullptr;
  std::size_t fewest = 0, tried = 0;
  for (const Candidate& next : candidates) {
    if (first != nullptr &&
        (tried == most_cut || fewest == 0 || next.estimate.gap > first->estimate.gap ||
         next.estimate.joints > first->estimate.joints * longer)) {
      break;
    }
    auto cells = cut_cells(*next.course, shares, next.rows, slab.volume);
    if (!cells) continue;
    const std::size_t awkward = awkward_joints(slab, *cells);
    if (first == nullptr || awkward < fewest) {
      best = {next.course, std::move(*cells)};
      fewest = awkward;
    }
    if (first == nullptr) first = &next;
    ++tried;
  }
  if (keep && first == nullptr) return choose(slab, shares, nullptr);
  return best;
}

Length length_of(const Polygon& line) {
  Length length;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    length += edge_length({line[i], line[i + 1]}, 0);
  }
  return length;
}

/// Puts the cells of one slab into the plan: which batches fill them and where those meet.
class SlabZones {
 public:
  SlabZones(const SlabPlan& shape, const std::vector<Portion>& portions,
            const std::vector<Column>& columns, int lifts)
      : shape_(shape), portions_(portions), columns_(columns), lifts_(lifts) {}

  void add(const SlabCells& cells, ZonePlan& plan) const {
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      add_zones(columns_[c], cells.parts[c], plan);
      for (std::size_t k = 0; k + 1 < columns_[c].count; ++k) {
        add_joint(batch(columns_[c], k), batch(columns_[c], k + 1), {}, plan);
      }
    }
    for (const CellMeeting& meeting : cells.meetings) {
      if (length_of(meeting.line) < least_joint) continue;
      const Column &a = columns_[meeting.first], &b = columns_[meeting.second];
      for (std::size_t k = 0; k < std::max(a.count, b.count); ++k) {
        add_joint(batch(a, k), batch(b, k), meeting.line, plan);
      }
    }
  }

 private:
  [[nodiscard]] int batch(const Column& column, std::size_t lift) const {
    return portions_[column.first + (column.count == 1 ? 0 : lift)].batch;
  }

  void add_zones(const Column& column, const std::vector<Polygon>& parts, ZonePlan& plan) const {
    for (int lift = 1; lift <= lifts_; ++lift) {
      const int filled_by = batch(column, static_cast<std::size_t>(lift) - 1);
      for (const Polygon& part : parts) {
        plan.zones[static_cast<std::size_t>(filled_by) - 1].push_back({shape_.name, part, lift});
      }
    }
  }

  void add_joint(int first, int second, const Polygon& line, ZonePlan& plan) const {
    Joint joint{std::min(first, second), std::max(first, second), {}, shape_.name, line, {}, {}};
    joint.length = length_of(line);
    plan.joints.push_back(std::move(joint));
  }

  const SlabPlan& shape_;
  const std::vector<Portion>& portions_;
  const std::vector<Column>& columns_;
  int lifts_;
};

/// Neighbours, gap, joint length and fronts from the joints.
void sum_up(ZonePlan& plan) {
  const std::size_t batches = plan.zones.size();
  std::stable_sort(plan.joints.begin(), plan.joints.end(), [](const Joint& a, const Joint& b) {
    return a.first != b.first ? a.first < b.first : a.second < b.second;
  });
  plan.neighbours.resize(batches);
  // The front after batch i is what joins batches up to i to later ones.
  std::vector<Length> opened(batches + 1), closed(batches + 1);
  for (const Joint& joint : plan.joints) {
    const auto first = static_cast<std::size_t>(joint.first);
    const auto second = static_cast<std::size_t>(joint.second);
    plan.neighbours[first - 1].push_back(joint.second);
    plan.neighbours[second - 1].push_back(joint.first);
    plan.gap = std::max(plan.gap, joint.second - joint.first);
    plan.joint_length += joint.length;
    opened[first] += joint.length;
    closed[second] += joint.length;
  }
  Length front;
  for (std::size_t i = 1; i <= batches; ++i) {
    front += opened[i] - closed[i];
    if (i == batches) front = {};  // rounding is no wet edge
    plan.fronts.push_back(front);
    plan.wet_edge_max = std::max(plan.wet_edge_max, front);
  }
  for (std::vector<int>& numbers : plan.neighbours) {
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  }
}

}  // namespace

struct ZoneCutter::Courses {
  std::vector<SlabPlan> shapes;
  std::vector<SlabCourses> slabs;

  const SlabCourses& of(std::size_t k, bool is_cut) {
    // Bounds the work for jobs of many slabs.
    constexpr std::size_t most_of_slab = 16, most_of_job = 400;
    SlabCourses& slab = slabs[k];
    if (is_cut && !slab.has_all && !is_plain(slab.shape)) {
      slab.has_all = true;
      const std::size_t most = std::clamp<std::size_t>(most_of_job / slabs.size(), 1, most_of_slab);
      for (auto& course : other_courses(slab.slab, slab.shape, slab.volume, most)) {
        slab.courses.push_back(std::move(course));
      }
    }
    return slab;
  }
};

ZoneCutter::ZoneCutter(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
                       Length strip)
    : courses_(std::make_unique<Courses>()) {
  courses_->shapes = shapes;
  courses_->slabs.reserve(slabs.size());
  for (std::size_t k = 0; k < slabs.size(); ++k) {
    courses_->slabs.emplace_back(slabs[k], shapes[k], strip);
  }
}

ZoneCutter::~ZoneCutter() = default;
ZoneCutter::ZoneCutter(ZoneCutter&&) noexcept = default;
ZoneCutter& ZoneCutter::operator=(ZoneCutter&&) noexcept = default;

ZonePlan ZoneCutter::cut(const std::vector<double>& shares, const std::vector<Sweep>& keep) const {
  ZonePlan plan;
  plan.zones.resize(shares.size());
  plan.advances.resize(shares.size());
  std::vector<double> largest(shares.size());
  const auto portions = portions_of(courses_->shapes, shares);
  for (std::size_t k = 0; k < portions.size(); ++k) {
    const SlabPlan& shape = courses_->shapes[k];
    const int lifts = lifts_of(shape);
    const std::vector<Column> columns = columns_of(portions[k], lifts);
    std::vector<double> column_shares;
    for (const Column& column : columns) column_shares.push_back(column.share);
    const Chosen chosen = choose(courses_->of(k, columns.size() > 1), column_shares,
                                 keep.empty() ? nullptr : &keep[k]);
    SlabZones(shape, portions[k], columns, lifts).add(chosen.cells, plan);
    plan.sweeps.push_back({shape.name, chosen.course->from, chosen.course->towards, lifts});
    // A batch that ends one slab and begins the next advances as it does in the larger part.
    for (std::size_t c = 0; c < columns.size(); ++c) {
      for (std::size_t i = columns[c].first; i < columns[c].first + columns[c].count; ++i) {
        const auto batch = static_cast<std::size_t>(portions[k][i].batch) - 1;
        if (portions[k][i].share <= largest[batch]) continue;
        largest[batch] = portions[k][i].share;
        plan.advances[batch] = chosen.cells.advances[c];
      }
    }
  }
  sum_up(plan);
  return plan;
}

ZonePlan cut_zones(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes, int batches,
                   Length strip) {
  return ZoneCutter(slabs, shapes, strip)
      .cut(std::vector<double>(static_cast<std::size_t>(batches), 1.0));
}

}  // namespace strikeoff
