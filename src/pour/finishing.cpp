// SPDX-License-Identifier: MIT
#include "pour/finishing.h"

#include <algorithm>
#include <cstddef>

#include "pour/crew.h"

namespace strikeoff {
namespace {

/// Timetables add and multiply minutes; differences below this are rounding.
constexpr Duration tolerance = minutes(1e-9);
constexpr int most_people = 20;

bool somebody(const Crew& crew, Role role) {
  return std::any_of(crew.people.begin(), crew.people.end(),
                     [&](const std::vector<Role>& roles) { return has(roles, role); });
}

/// From when its age counts as that of the last batch does: more retarder keeps it younger.
Duration born(const Batch& batch) {
  return batch.contact + batch.longer;
}

Area top_of(const Batch& batch) {
  Area area;
  for (const Zone& zone : batch.zones) area += signed_area(zone.outline);
  return area;
}

/// One person's time for both passes.
Duration work(Area area, double minutes_per_m2) {
  return minutes(area.si() * minutes_per_m2 * trowel_passes);
}

/// When so much work begun at `start` is done.
Duration done(Duration start, Duration work, const Finishers& who) {
  const Duration joined = std::max(start, who.others_free);
  const Duration before = (joined - start) * who.free_at_once;
  if (who.free_at_once > 0 && work <= before) return start + work / who.free_at_once;
  return joined + (work - before) / who.people;
}

bool in_time(const std::vector<Batch>& batches, Duration stiff, Duration final_set, int people,
             double minutes_per_m2) {
  const Finishers who{people, people, {}};
  return oldest(batches, trowel_in_order(batches, stiff, who, minutes_per_m2)) <=
         final_set + tolerance;
}

}  // namespace

Finishers finishers(const Crew& crew, const PourPlan& pour) {
  Finishers found{0, 0, pour.end};
  for (const std::vector<Role>& roles : crew.people) {
    if (!has(roles, Role::finish)) continue;
    ++found.people;
    const bool only =
        std::all_of(roles.begin(), roles.end(), [](Role role) { return role == Role::finish; });
    if (only) ++found.free_at_once;
  }
  if (found.people == 0) return {};
  if (found.people == found.free_at_once) found.others_free = {};
  return found;
}

std::vector<Stint> trowel_in_order(const std::vector<Batch>& batches, Duration stiff,
                                   const Finishers& finishers, double minutes_per_m2) {
  std::vector<Stint> spans;
  Duration free = finishers.free_at_once > 0 ? Duration{} : finishers.others_free;
  for (const Batch& batch : batches) {
    const Duration start = std::max({free, born(batch) + stiff, batch.place_end});
    free = done(start, work(top_of(batch), minutes_per_m2), finishers);
    spans.push_back({start, free});
  }
  return spans;
}

Duration oldest(const std::vector<Batch>& batches, const std::vector<Stint>& spans) {
  Duration age;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    age = std::max(age, spans[i].end - born(batches[i]));
  }
  return age;
}

std::optional<Stint> trowel_at_once(const Plan& plan, Duration stiff, Duration final_set,
                                    const Finishers& finishers) {
  Area top;
  for (const Batch& batch : plan.batches) top += top_of(batch);
  const Duration open = std::max(plan.pour.end, born(plan.batches.back()) + stiff);
  const auto earlier = [](const Batch& a, const Batch& b) { return born(a) < born(b); };
  const Duration close =
      born(*std::min_element(plan.batches.begin(), plan.batches.end(), earlier)) + final_set;
  if (done(open, work(top, slow_trowel), finishers) > close + tolerance) return std::nullopt;
  return Stint{open, done(open, work(top, usual_trowel), finishers)};
}

std::optional<int> fewest_finishers(const std::vector<Batch>& batches, Duration stiff,
                                    Duration final_set) {
  for (int people = 1; people <= most_people; ++people) {
    if (in_time(batches, stiff, final_set, people, slow_trowel)) return people;
  }
  return std::nullopt;
}

bool can_be_trowelled(const std::vector<Batch>& batches, Duration stiff, Duration final_set) {
  return final_set > stiff && in_time(batches, stiff, final_set, most_people, quick_trowel);
}

Role strike_off_role(const Crew& crew) {
  return somebody(crew, Role::finish) ? Role::finish : Role::place;
}

Duration strike_off_time(const std::vector<Batch>& batches) {
  Area largest;
  for (const Batch& batch : batches) largest = std::max(largest, top_of(batch));
  return minutes(largest.si());
}

std::optional<Duration> strike_off_spare(const Crew& crew, Duration takt) {
  const Role role = strike_off_role(crew);
  std::optional<Duration> most;
  for (const std::vector<Role>& roles : crew.people) {
    if (!has(roles, role)) continue;
    const Duration spare = takt - cycle(crew, roles);
    if (!most || spare > *most) most = spare;
  }
  return most;
}

}  // namespace strikeoff
