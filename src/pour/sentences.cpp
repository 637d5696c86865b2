// SPDX-License-Identifier: MIT
#include "pour/sentences.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "core/format.h"

namespace strikeoff {
namespace {

/// "the joints wait 21 min", with what is asked for on top.
std::string need(const Demand& demand) {
  const std::string spare =
      demand.margin > Duration{} ? ", and " + show(demand.margin) + " is to be spare" : "";
  if (demand.wait >= demand.age) return "the joints wait " + show(demand.wait) + spare;
  return "a batch is " + show(demand.age) + " old when it is placed" + spare;
}

double fixed_doses(const Job& job) {
  return retarder_doses(job, 0);
}

/// Why no dose could be worked out.
std::string unknown_dose(const Job& job, const Pace& pace) {
  const std::string why = pace.missing.empty()
                              ? "the bag gives no working time"
                              : pace.bottleneck + ", so how long the joints wait is not known";
  if (auto_retarder(job)) return "No dose of retarder can be worked out: " + why + ".";
  return fmt::format("{} a bag, as the job says, but whether that is enough is not known: {}.",
                     capital(doses_in_words(fixed_doses(job))), why);
}

/// The crew of `people` with the fastest beat; of equals, the one that divides the work most, and
/// of those the first, which has the fewest who mix.
std::pair<People, Pace> fastest(Crew crew, int people) {
  std::pair<People, Pace> best;
  for (People& shared : consecutive_crews(people)) {
    crew.people = std::move(shared);
    Pace with = pace(crew);
    const bool better =
        best.first.empty() || with.takt < best.second.takt ||
        (with.takt == best.second.takt && roles_held(crew.people) < roles_held(best.first));
    if (better) best = {crew.people, std::move(with)};
  }
  return best;
}

Demand demand_of(const Job& job, int gap, const Pace& with) {
  return {edge_wait(gap, with), with.lead, job.limits.margin};
}

/// How today's crew compares with the fewest people.
std::string today(const Crew& crew, int fewest) {
  const auto pours = [](const std::vector<Role>& roles) {
    return std::any_of(roles.begin(), roles.end(), [](Role role) { return role != Role::finish; });
  };
  const auto now = static_cast<int>(std::count_if(crew.people.begin(), crew.people.end(), pours));
  const std::string fewer = fewest > 1 ? "fewer cannot; " : "";
  return fmt::format("{}today {} pour", fewer, now);
}

/// When the next batch gets its water.
std::string next_water(const Timetable& table) {
  const auto after = [&](std::size_t batch) {
    return table.batches[batch + 1].contact - table.batches[batch].place_start;
  };
  const std::string rule = "From batch 2 on, keep the batch dry and add its water ";
  // Nobody on a pour keeps time to half a second.
  for (std::size_t i = 1; i + 1 < table.batches.size(); ++i) {
    if (std::abs((after(i) - after(0)).si()) >= 0.5) return rule + "when the table says.";
  }
  if (std::abs(after(0).si()) < 0.5) {
    return rule + "just as the previous batch starts being placed.";
  }
  if (after(0) > Duration{}) {
    return rule + show(after(0)) + " after the previous batch starts being placed.";
  }
  return fmt::format(
      "{}{} before the previous batch starts being placed, which is {} after that batch got its "
      "own water.",
      rule, show(-after(0)), show(table.batches[1].contact - table.batches[0].contact));
}

}  // namespace

std::string in_quarters(double n) {
  const double quarters = std::round(n * 4);
  if (std::abs(quarters - n * 4) > 1e-9) return show_number(n, 3);
  static constexpr const char* parts[] = {"", "1/4", "1/2", "3/4"};
  const double whole = std::floor(quarters / 4);
  const std::string part = parts[static_cast<int>(quarters - 4 * whole)];
  if (part.empty()) return show_number(whole, 0);
  return whole == 0 ? part : fmt::format("{} {}", show_number(whole, 0), part);
}

std::string doses_in_words(double n) {
  return fmt::format("{} {}", in_quarters(n), n > 0 && n <= 1 ? "dose" : "doses");
}

std::string bags_in_words(double n) {
  return fmt::format("{} {}", in_quarters(n), n > 0 && n <= 1 ? "bag" : "bags");
}

Duration edge_wait(int gap, const Pace& pace) {
  return gap == 0 ? Duration{} : pace.takt * gap + pace.lead;
}

std::string retarder_reason(const Job& job, const Pace& pace, std::optional<Duration> plain,
                            double factor, const Demand& demand, double dose) {
  const Additive* searched = auto_retarder(job);
  const double fixed = fixed_doses(job);
  if (!searched && fixed == 0) return "";
  if (!plain || !pace.missing.empty()) return unknown_dose(job, pace);

  const auto allowed = [&](double doses_of_auto) {
    return retarded_by_all(job, *plain, doses_of_auto) * (factor * job.crew.usable);
  };
  const std::string beside =
      searched && fixed > 0 ? fmt::format(" beside the {} the job fixes", doses_in_words(fixed))
                            : "";
  const Duration without = searched ? allowed(0) : *plain * (factor * job.crew.usable);
  const std::string may = show(without) + " may be used without it";
  if (searched && dose == 0 && covers(without, demand)) {
    return fmt::format("No retarder is needed for the joints{}: {} and {}.", beside, need(demand),
                       may);
  }
  const std::string with = show(allowed(dose)) + " with it";
  const std::string asked = fmt::format("{}, {} and {}", need(demand), may, with);
  if (!searched) {
    return fmt::format("{} a bag, as the job says: {}.", capital(doses_in_words(fixed)), asked);
  }
  if (!covers(allowed(dose), demand)) {
    return fmt::format("{} a bag{} is the most it may have, and that is not enough: {}.",
                       capital(doses_in_words(dose)), beside, asked);
  }
  return fmt::format("{} a bag{}: {}; one step less gives {}.", capital(doses_in_words(dose)),
                     beside, asked, show(allowed(dose - searched->step)));
}

std::string taper_reason(Duration first_stiff, Duration last_stiff, double first, double last) {
  const std::string falls = fmt::format("the dose falls from {} a bag in batch 1 to {} in the last",
                                        doses_in_words(first), in_quarters(last));
  // A step of retarder is minutes, so nobody asks for less.
  if (first_stiff > last_stiff - minutes(1)) {
    return fmt::format(" So that the whole top sets together, about {} after the first water, {}.",
                       show(last_stiff), falls);
  }
  return fmt::format(
      " So that the whole top sets more nearly together, {}; batch 1 has the most it may have and "
      "sets about {} before the last.",
      falls, show(last_stiff - first_stiff));
}

std::string water_rule(const Timetable& table, Duration flat_out) {
  if (table.batches.size() == 1) {
    return "There is one batch: add its water once everyone is in place.";
  }
  const std::string flat =
      flat_out - table.worst_wait < minutes(1)
          ? ""
          : fmt::format(" Mixing flat out would make edges wait {} instead of {}.", show(flat_out),
                        show(table.worst_wait));
  return next_water(table) + flat;
}

std::string no_timetable(const Pace& pace) {
  return capital(pace.bottleneck) + ", so there is no timetable.";
}

std::string smallest_crew(const Job& job, int gap, std::optional<Duration> usable) {
  if (!usable) return "How many people it takes is not known: the bag gives no working time.";
  constexpr int most = 8;  // assumption: more people than that do not fit round one slab
  const std::string mixers = count(job.crew.mixers, "mixer", "mixers");
  Pace quickest;
  for (int people = 1; people <= most; ++people) {
    auto [shared, with] = fastest(job.crew, people);
    if (covers(*usable, demand_of(job, gap, with))) {
      const std::string wait = gap == 0 ? "" : ", edges waiting " + show(edge_wait(gap, with));
      return fmt::format(
          "{} can pour this with {}: {}, a batch every {}{} ({}). Lifting and strike-off are not "
          "counted.",
          count(people, "person", "people"), mixers, describe(shared), show(with.takt), wait,
          today(job.crew, people));
    }
    if (people == 1 || with.takt < quickest.takt) quickest = std::move(with);
  }
  const Demand demand = demand_of(job, gap, quickest);
  const std::string may = show(*usable) + " may be used";
  const std::string held =
      demand.wait > demand.age ? fmt::format(", held back by {}", quickest.bottleneck) : "";
  return fmt::format("No crew of up to {} people can pour this with {}{}: {} and {}.", most, mixers,
                     held, need(demand), may);
}

}  // namespace strikeoff
