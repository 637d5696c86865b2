// SPDX-License-Identifier: MIT
#include "pour/lone_finisher.h"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "pour/crew.h"
#include "pour/difference_graph.h"
#include "pour/finishing.h"

namespace strikeoff {
namespace {

constexpr int most_lone_steps = 500;
constexpr std::size_t most_lone_batches = 40;

/// Something with a place in the day that cannot be moved.
struct Fixed {
  double start = 0, takes = 0;  // s
};

/// When this person is busy pouring.
std::vector<Fixed> busy(const Crew& crew, std::size_t person, const Plan& plan) {
  const std::vector<Role>& own = crew.people[person];
  if (has(own, Role::mix) || has(own, Role::carry)) return {{0, plan.pour.end.si()}};
  if (!has(own, Role::place)) return {};
  std::size_t before = 0;
  for (std::size_t i = 0; i < person; ++i) {
    if (has(crew.people[i], Role::place)) ++before;
  }
  // Those who place take turns.
  const auto placers = static_cast<std::size_t>(holders(crew.people, Role::place));
  std::vector<Fixed> found;
  for (std::size_t i = before; i < plan.batches.size(); i += placers) {
    const Batch& batch = plan.batches[i];
    found.push_back({batch.place_start.si(), (batch.place_end - batch.place_start).si()});
  }
  return found;
}

/// One piece of finishing: not before, done by.
struct Slot {
  double from = 0, by = 0, takes = 0;  // s
};

std::vector<Slot> strikes(const Plan& plan) {
  const std::size_t n = plan.batches.size();
  const auto behind = static_cast<std::size_t>(std::max(1, plan.pour.gap));
  std::vector<Slot> pieces;
  for (std::size_t i = 0; i < n; ++i) {
    const Batch& batch = plan.batches[i];
    const double from = plan.batches[std::min(i + behind, n - 1)].place_end.si();
    const double takes = strike_off_time({batch}).si();
    const double usable = plan.pour.usable ? (batch.contact + *plan.pour.usable).si() : 0;
    pieces.push_back({from, std::max(usable, from + takes), takes});
  }
  return pieces;
}

}  // namespace

Lone lone_finisher(const Crew& crew, const Plan& plan, Duration stiff, Duration final_set,
                   double minutes_per_m2) {
  if (holders(crew.people, Role::finish) != 1) return Lone::not_alone;
  const auto who = static_cast<std::size_t>(std::distance(
      crew.people.begin(),
      std::find_if(crew.people.begin(), crew.people.end(),
                   [](const std::vector<Role>& roles) { return has(roles, Role::finish); })));
  const std::size_t n = plan.batches.size();
  std::vector<Slot> work = strikes(plan);
  if (work.back().from + work.back().takes <= (plan.batches.front().contact + stiff).si()) {
    return Lone::no_conflict;
  }
  if (n > most_lone_batches) return Lone::not_known;
  for (const Batch& batch : plan.batches) {
    const double takes = strike_off_time({batch}).si() * minutes_per_m2 * trowel_passes;
    work.push_back({std::max(batch.contact + stiff, batch.place_end).si(),
                    (batch.contact + final_set).si(), takes});
  }
  const std::vector<Fixed> placing = busy(crew, who, plan);

  // Node 0 is the first water contact; then striking off, trowelling, pouring.
  DifferenceGraph graph(1 + work.size() + placing.size());
  std::vector<EitherOrder> pairs;
  for (std::size_t k = 0; k < work.size(); ++k) {
    graph.add({0, 1 + k, work[k].from});
    graph.add({1 + k, 0, work[k].takes - work[k].by});
    if (k < n) {
      graph.add({1 + k, 1 + n + k, work[k].takes});
      for (std::size_t j = n; j < work.size(); ++j) {
        pairs.push_back({1 + k, 1 + j, work[k].takes, work[j].takes});
      }
    }
    if (k + 1 != n && k + 1 < work.size()) graph.add({1 + k, 2 + k, work[k].takes});
  }
  for (std::size_t p = 0; p < placing.size(); ++p) {
    const std::size_t at = 1 + work.size() + p;
    graph.add({0, at, placing[p].start});
    graph.add({at, 0, -placing[p].start});
    for (std::size_t k = 0; k < work.size(); ++k) {
      pairs.push_back({at, 1 + k, placing[p].takes, work[k].takes});
    }
  }
  int steps = most_lone_steps;
  std::vector<double> x;
  switch (put_in_order(graph, pairs, 0, steps, x)) {
    case Ordering::found:
      return Lone::fits;
    case Ordering::none:
      return Lone::does_not_fit;
    case Ordering::gave_up:
      break;
  }
  return Lone::not_known;
}

}  // namespace strikeoff
