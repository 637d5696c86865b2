// SPDX-License-Identifier: MIT
#include "pour/zones.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <tuple>
#include <utility>

#include "core/vec.h"
#include "mix/mix.h"
#include "pour/contacts.h"
#include "pour/course.h"
#include "pour/portions.h"

namespace strikeoff {
namespace {

constexpr Length most_lift = Length::mm(150);  // assumption: what a rod works through with care

int lifts_of(const SlabPlan& shape) {
  return std::max(1, whole_up(shape.edge_thickness / most_lift));
}

/// What fills one cell: one batch, or one for each lift from the bottom up.
struct Column {
  std::size_t first = 0, count = 1;  // portions
  double volume = 0;
};

/// What is shared with another slab stays alone, and so does what is left over.
std::vector<Column> columns_of(const std::vector<Portion>& portions, int lifts, Alone alone) {
  const auto tall = static_cast<std::size_t>(lifts);
  const std::size_t first = alone.first ? 1 : 0, last = portions.size() - (alone.last ? 1 : 0);
  const std::size_t in_lifts = first + (last > first ? (last - first) / tall * tall : 0);
  std::vector<Column> columns;
  for (std::size_t i = 0; i < portions.size();) {
    Column column{i, i >= first && i < in_lifts ? tall : 1, 0};
    for (std::size_t k = 0; k < column.count; ++k) column.volume += portions[i + k].volume;
    columns.push_back(column);
    i += column.count;
  }
  return columns;
}

/// How good a course is: the smaller the better, from the first to the last.
struct Rank {
  /// 0 works and is as wide as wished, 1 works, 2 is too late, too narrow or runs along its arm.
  int kind = 0;
  std::size_t gap = 0;
  bool runs_across = true;  // no front lies along its arm
  Length joints, longest;
};

bool is_better(const Rank& a, const Rank& b) {
  constexpr double same = 1 - 1e-7;
  if (a.kind != b.kind) return a.kind < b.kind;
  if (a.gap != b.gap) return a.gap < b.gap;
  if (a.runs_across != b.runs_across) return a.runs_across;
  if (a.joints < b.joints * same) return true;
  if (b.joints < a.joints * same) return false;
  return a.longest < b.longest * same;
}

/// A slab, the ways across it, and how wide its ribbons should be.
class SlabCutter {
 public:
  SlabCutter(const Slab& slab, const SlabPlan& shape, Length strip)
      : slab_(slab), shape_(shape), volume_(slab, shape, strip), lifts_(lifts_of(shape)) {}

  [[nodiscard]] const SlabPlan& shape() const { return shape_; }
  [[nodiscard]] int lifts() const { return lifts_; }

  /// How much fills a ribbon that is just wide enough, across the shortest front.
  [[nodiscard]] double narrow(Length must) {
    double front = HUGE_VAL;
    for (const Route& route : routes()) {
      if (!route.passage || route.is_ring) continue;
      const double width = std::max(route.passage->joint_length(route.passage->start()),
                                    route.passage->joint_length(route.passage->end()));
      front = std::min(front, width);
    }
    const double area = shape_.top_area.si();
    if (front == HUGE_VAL) front = std::sqrt(area);
    return std::min(must.in_m() * front / area, 1.0) * shape_.concrete.si();
  }

  struct Chosen {
    Course course;
    std::vector<CutCell> cells;
    std::vector<CellContact> contacts;
  };

  [[nodiscard]] Chosen cut(const std::vector<double>& shares, Alone alone, const ZoneWish& wish,
                           const Sweep* keep) {
    std::vector<Candidate> candidates;
    const Length least = wish.rule.least.value_or(usual_advance(shape_.edge_thickness));
    const auto consider = [&](std::optional<Course> course, bool rows) {
      if (!course) return;
      if (keep && !is_kept(*course, *keep)) return;
      const Rank rank = ranked(*course, rows, alone, wish);
      candidates.push_back({rank, std::move(*course), rows});
    };
    for (const Route& route : routes()) {
      // Across a plain rectangle every passage is straight.
      const bool is_plain = shape_.outline.size() == 4 && shape_.openings.empty();
      if (!route.passage && is_plain && !candidates.empty()) break;
      for (const Fronts fronts : {Fronts::one, Fronts::in_turn, Fronts::shared}) {
        const auto ribbons = course_along(route, shape_, shares, fronts);
        if (!ribbons) continue;
        consider(ribbons, false);
        if (is_wide(*ribbons, least)) continue;
        for (const bool from_left : {true, false}) {
          consider(in_rows(*ribbons, shape_, shares, least, alone, from_left), true);
        }
      }
      if (shares.size() == 1 && !candidates.empty()) break;
    }
    return best_of(std::move(candidates), shares, alone, wish, keep);
  }

 private:
  struct Candidate {
    Rank rank;
    Course course;
    bool in_rows = false;
    std::vector<CutCell> cells = {};  // once it is cut
    std::vector<CellContact> contacts = {};
  };

  /// The best that can be cut. What a course comes to is an estimate where cells of rows meet; the
  /// one that is still the best once it is cut is taken.
  [[nodiscard]] Chosen best_of(std::vector<Candidate> candidates, const std::vector<double>& shares,
                               Alone alone, const ZoneWish& wish, const Sweep* keep) {
    while (!candidates.empty()) {
      auto best = candidates.begin();
      for (auto next = best + 1; next != candidates.end(); ++next) {
        if (is_better(next->rank, best->rank)) best = next;
      }
      if (!best->cells.empty()) {
        return {std::move(best->course), std::move(best->cells), std::move(best->contacts)};
      }
      auto cells = strikeoff::cut(best->course, shape_, volume_, shares);
      if (!cells) {
        candidates.erase(best);
        continue;
      }
      best->cells = std::move(*cells);
      best->contacts = contacts_of(best->cells, shape_);
      best->course.gap = 0;
      for (const CellContact& contact : best->contacts) {
        if (!contact.is_joint) continue;
        best->course.gap = std::max(best->course.gap, contact.second - contact.first);
      }
      best->rank = ranked(best->course, best->in_rows, alone, wish);
    }
    if (keep) return cut(shares, alone, wish, nullptr);
    throw std::logic_error("no way across a slab");
  }

  const std::vector<Route>& routes() {
    if (routes_.empty()) routes_ = routes_across(slab_, shape_, volume_);
    return routes_;
  }

  [[nodiscard]] static bool is_kept(const Course& course, const Sweep& keep) {
    const bool in_cells = std::any_of(course.places.begin(), course.places.end(),
                                      [](const Stretch& place) { return place.cells > 1; });
    return course.route->from == keep.from && course.route->towards == keep.towards &&
           course.fronts == keep.fronts && in_cells == keep.cells > 1;
  }

  /// The narrowest of the places, those of a batch shared with another slab left out.
  [[nodiscard]] static Length narrowest(const Course& course, Alone alone) {
    const std::size_t last = course.places.back().cell + course.places.back().cells - 1;
    std::optional<Length> least;
    for (std::size_t i = 0; i < course.places.size(); ++i) {
      const Stretch& place = course.places[i];
      const bool is_rest = place.cells == 1 &&
                           ((alone.first && place.cell == 0) || (alone.last && place.cell == last));
      if (is_rest) continue;
      least = std::min(least.value_or(course.advances[i]), course.advances[i]);
    }
    return least.value_or(Length::m(1e3));
  }

  /// As wide as wished; round a corner some are less.
  [[nodiscard]] static bool is_wide(const Course& course, Length least) {
    std::vector<Length> advances = course.advances;
    const auto middle = advances.begin() + static_cast<std::ptrdiff_t>(advances.size() / 2);
    std::nth_element(advances.begin(), middle, advances.end());
    return *middle >= least * (1 - 1e-9);
  }

  [[nodiscard]] Rank ranked(const Course& course, bool rows, Alone alone,
                            const ZoneWish& wish) const {
    Rank rank{0, course.gap, course.runs_across, course.joints, course.longest};
    const auto gap = static_cast<int>(course.gap) * lifts_;
    const bool works = gap <= wish.reach.works, comfortable = gap <= wish.reach.comfortable;
    const Length least = wish.rule.least.value_or(usual_advance(shape_.edge_thickness));
    const bool two_fronts_meet = course.fronts == Fronts::one || course.gap <= 2;
    const bool wide = two_fronts_meet && (rows ? comfortable : is_wide(course, least));
    const bool too_narrow = !rows && narrowest(course, alone) < wish.rule.must * (1 - 1e-6);
    rank.kind = !works || too_narrow || !course.runs_across ? 2 : wide ? 0 : 1;
    return rank;
  }

  Slab slab_;
  SlabPlan shape_;
  SlabVolume volume_;
  std::vector<Route> routes_;
  int lifts_ = 1;
};

/// Puts the cells of one slab into the plan: which batches fill them and where those meet.
class SlabZones {
 public:
  SlabZones(const SlabPlan& shape, const std::vector<Portion>& portions,
            const std::vector<Column>& columns, int lifts)
      : shape_(shape), portions_(portions), columns_(columns), lifts_(lifts) {}

  void add(const std::vector<CutCell>& cells, const std::vector<CellContact>& contacts,
           ZonePlan& plan) const {
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      add_zones(columns_[c], cells[c], plan);
      for (std::size_t k = 0; k + 1 < columns_[c].count; ++k) {
        plan.joints.push_back(joint(batch(columns_[c], k), batch(columns_[c], k + 1), {}));
      }
    }
    for (const CellContact& contact : contacts) {
      const Column &a = columns_[contact.first], &b = columns_[contact.second];
      for (std::size_t k = 0; k < std::max(a.count, b.count); ++k) {
        (contact.is_joint ? plan.joints : plan.too_short)
            .push_back(joint(batch(a, k), batch(b, k), {contact.from, contact.to}));
      }
    }
  }

 private:
  [[nodiscard]] int batch(const Column& column, std::size_t lift) const {
    return portions_[column.first + (column.count == 1 ? 0 : lift)].batch;
  }

  void add_zones(const Column& column, const CutCell& cell, ZonePlan& plan) const {
    for (int lift = 1; lift <= lifts_; ++lift) {
      const auto filled_by =
          static_cast<std::size_t>(batch(column, static_cast<std::size_t>(lift) - 1));
      for (const Polygon& part : cell.parts) {
        plan.zones[filled_by - 1].push_back({shape_.name, part, lift});
      }
    }
    for (std::size_t k = 0; k < column.count; ++k) {
      const Portion& portion = portions_[column.first + k];
      plan.volumes[static_cast<std::size_t>(portion.batch) - 1] +=
          cell.volume * (portion.volume / column.volume);
    }
  }

  [[nodiscard]] Joint joint(int first, int second, const Polygon& line) const {
    Joint joint{std::min(first, second), std::max(first, second), {}, shape_.name, line, {}, {}};
    if (!line.empty()) joint.length = distance(line.front(), line.back());
    return joint;
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

Length usual_advance(Length thickness) {
  return std::max(2 * thickness, Length::mm(150));
}

RibbonRule ribbon_rule(const Crew& crew, const Mix& mix) {
  constexpr Length least = Length::mm(40);  // assumption
  return {crew.least_advance, std::max(least, 3 * mix.aggregate.value_or(Length{}))};
}

struct ZoneCutter::Slabs {
  std::vector<SlabCutter> cutters;

  [[nodiscard]] std::vector<SlabShare> shares_in(const std::vector<std::size_t>& order,
                                                 Length must) {
    std::vector<SlabShare> shares;
    for (const std::size_t k : order) {
      const bool alone = cutters.size() == 1;
      shares.push_back({cutters[k].shape().concrete.si(), alone ? 0 : cutters[k].narrow(must)});
    }
    return shares;
  }

  [[nodiscard]] Portions portions(const std::vector<std::size_t>& order, const ZoneWish& wish) {
    const std::vector<SlabShare> shares = shares_in(order, wish.rule.must);
    if (wish.room < 0) return portions_of(shares, wish.shares);
    return equal_portions(shares, static_cast<int>(wish.shares.size()), wish.room, wish.more_room);
  }

  /// The orders worth trying: as the slabs are kept; else those that leave the fewest ribbons too
  /// narrow and share the fewest batches between slabs, as the job has them first.
  [[nodiscard]] std::vector<std::vector<std::size_t>> orders(const ZoneWish& wish) {
    std::vector<std::size_t> order(cutters.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t i = 0; i < wish.keep.size() && i < order.size(); ++i) {
      for (std::size_t k = 0; k < cutters.size(); ++k) {
        if (cutters[k].shape().name == wish.keep[i].slab) order[i] = k;
      }
    }
    constexpr std::size_t most_slabs = 5, most_orders = 6;  // bounds the work
    if (!wish.keep.empty() || order.size() == 1 || order.size() > most_slabs) return {order};
    std::vector<std::vector<std::size_t>> best;
    std::pair<int, std::size_t> least;
    do {
      const Portions tried = portions(order, wish);
      std::size_t count = 0;
      for (const auto& slab : tried.of) count += slab.size();
      const std::pair cost{tried.narrow, count};
      if (!best.empty() && cost > least) continue;
      if (!best.empty() && cost < least) best.clear();
      least = cost;
      if (best.size() < most_orders) best.push_back(order);
    } while (std::next_permutation(order.begin(), order.end()));
    return best;
  }

  [[nodiscard]] ZonePlan cut(const ZoneWish& wish, const std::vector<std::size_t>& order);
};

ZoneCutter::ZoneCutter(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
                       Length strip)
    : slabs_(std::make_unique<Slabs>()) {
  slabs_->cutters.reserve(slabs.size());
  for (std::size_t k = 0; k < slabs.size(); ++k) {
    slabs_->cutters.emplace_back(slabs[k], shapes[k], strip);
  }
}

ZoneCutter::~ZoneCutter() = default;
ZoneCutter::ZoneCutter(ZoneCutter&&) noexcept = default;
ZoneCutter& ZoneCutter::operator=(ZoneCutter&&) noexcept = default;

ZonePlan ZoneCutter::cut(const ZoneWish& wish) const {
  const auto orders = slabs_->orders(wish);
  ZonePlan best = slabs_->cut(wish, orders.front());
  for (std::size_t i = 1; i < orders.size() && best.gap > 1; ++i) {
    ZonePlan other = slabs_->cut(wish, orders[i]);
    if (std::tuple(other.gap, other.joint_length * (1 + 1e-7)) <
        std::tuple(best.gap, best.joint_length)) {
      best = std::move(other);
    }
  }
  return best;
}

ZonePlan ZoneCutter::Slabs::cut(const ZoneWish& wish, const std::vector<std::size_t>& order) {
  ZonePlan plan;
  plan.zones.resize(wish.shares.size());
  plan.volumes.resize(wish.shares.size());
  plan.advances.resize(wish.shares.size());
  plan.narrowest = Length::m(1e3);
  std::vector<double> largest(wish.shares.size());
  const Portions portions = this->portions(order, wish);
  for (std::size_t place = 0; place < order.size(); ++place) {
    SlabCutter& slab = cutters[order[place]];
    const std::vector<Portion>& parts = portions.of[place];
    const auto is_shared = [&](std::size_t other, bool at_start) {
      if (other >= order.size() || portions.of[other].empty() || parts.empty()) return false;
      return at_start ? portions.of[other].back().batch == parts.front().batch
                      : portions.of[other].front().batch == parts.back().batch;
    };
    const Alone alone{place > 0 && is_shared(place - 1, true), is_shared(place + 1, false)};
    const std::vector<Column> columns = columns_of(parts, slab.lifts(), alone);
    std::vector<double> shares;
    for (const Column& column : columns)
      shares.push_back(column.volume / slab.shape().concrete.si());
    const auto [course, cells, contacts] =
        slab.cut(shares, alone, wish, wish.keep.size() > place ? &wish.keep[place] : nullptr);
    SlabZones(slab.shape(), parts, columns, slab.lifts()).add(cells, contacts, plan);
    std::size_t most = 1;
    for (const Stretch& row : course.places) most = std::max(most, row.cells);
    plan.in_cells = plan.in_cells || most > 1;
    plan.sweeps.push_back({slab.shape().name, course.route->from, course.route->towards,
                           slab.lifts(), course.fronts, static_cast<int>(most)});
    // A batch that ends one slab and begins the next advances as it does in the larger part.
    for (std::size_t c = 0; c < columns.size(); ++c) {
      if (columns.size() > 1) plan.narrowest = std::min(plan.narrowest, cells[c].advance);
      for (std::size_t i = columns[c].first; i < columns[c].first + columns[c].count; ++i) {
        const auto batch = static_cast<std::size_t>(parts[i].batch) - 1;
        if (parts[i].volume <= largest[batch]) continue;
        largest[batch] = parts[i].volume;
        plan.advances[batch] = cells[c].advance;
      }
    }
  }
  sum_up(plan);
  return plan;
}

}  // namespace strikeoff
