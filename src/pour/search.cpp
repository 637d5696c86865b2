// SPDX-License-Identifier: MIT
#include "pour/search.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>

#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "pour/crew.h"
#include "pour/finishing.h"
#include "pour/pour.h"
#include "pour/search_reasons.h"
#include "pour/setting.h"

namespace strikeoff {
namespace {

constexpr int most_of_a_role = 4, most_mixers = 4;  // assumption: more do not fit round one slab
constexpr double most_bags = 12;
constexpr std::size_t most_batches = 500;  // of smaller batches than must be: bounds the work
constexpr Mass heavy_bag = kilograms(20), tub = kilograms(60);
constexpr Temperature coldest_mix = Temperature::celsius(10);  // UFGS 03 30 00 as quoted
constexpr std::size_t looked_at_closely = 4;

bool is_open(const Job& job, Role role) {
  const auto& open = job.open.counted;
  return std::find(open.begin(), open.end(), role) != open.end();
}

int pouring(const People& people) {
  return static_cast<int>(std::count_if(people.begin(), people.end(), [](const auto& roles) {
    return std::any_of(roles.begin(), roles.end(), [](Role role) { return role != Role::finish; });
  }));
}

/// Whoever places also trowels: they stand at the slab.
People with_finishers(People people) {
  for (std::vector<Role>& roles : people) {
    if (has(roles, Role::place)) {
      roles.push_back(Role::finish);
    }
  }
  return people;
}

/// Every number from 1 for the open roles, as the job has it for the others.
std::vector<People> counted_crews(const Job& job, int most) {
  std::vector<People> crews{{}};
  for (const Role role : {Role::mix, Role::carry, Role::place, Role::finish}) {
    const bool varies = is_open(job, role) && role != Role::finish;
    const int least = varies ? 1 : holders(job.crew.people, role);
    const int last = varies ? most : least;
    std::vector<People> next;
    for (const People& crew : crews) {
      for (int n = least; n <= last; ++n) {
        next.push_back(crew);
        next.back().insert(next.back().end(), static_cast<std::size_t>(n), {role});
      }
    }
    crews = std::move(next);
  }
  return crews;
}

std::vector<People> crews_of(const Job& job) {
  if (job.open.sharing) {
    std::vector<People> crews = consecutive_crews(static_cast<int>(job.crew.people.size()));
    for (People& people : crews) people = with_finishers(std::move(people));
    return crews;
  }
  if (job.open.counted.empty()) return {job.crew.people};
  return counted_crews(job, job.mix.working_time ? most_of_a_role : 1);
}

struct Cooling {
  Temperature water;
  Mass ice;
  double factor;  // of the working time
};

/// Ice rises, the water gets colder: least trouble first.
std::vector<Cooling> coolings(const Job& job, const PourModel& model) {
  const Mass water = model.mix().water_per_bag * water_density;
  const Temperature tap = job.site.water_temperature;
  std::vector<Cooling> options{{tap, job.site.ice, model.factor(setup_of(job))}};
  const int ice_steps = job.open.ice ? 4 : 0;  // up to a fifth of the water
  for (int step = 0; step <= ice_steps; ++step) {
    const Mass ice = job.open.ice ? water * (most_ice * step / ice_steps) : job.site.ice;
    const double last =
        job.open.water_temperature ? std::min(tap.in_c(), coldest_water.in_c()) : tap.in_c();
    for (double c = tap.in_c(); c >= last; c -= 1) {
      const Temperature cold = Temperature::celsius(c);
      const bool is_first = step == 0 && c == tap.in_c();
      if (is_first || model.mix_temperature(cold, ice) < coldest_mix) continue;
      options.push_back({cold, ice, model.factor({{}, cold, ice})});
    }
  }
  return options;
}

double to_rank(Duration time) {
  return std::round(in_minutes(time) * 1e6);
}

/// Of crews with as many people and mixers the one with the fastest beat pours best, whatever else
/// is chosen; of equals the one that divides the work most.
std::vector<Crew> fastest_crews(const Job& job, double bags) {
  std::map<std::pair<int, int>, std::pair<Crew, Duration>> best;
  const bool known = job.mix.working_time.has_value();
  for (const People& people : crews_of(job)) {
    const int mixers = job.open.mixers && known ? most_mixers : job.crew.mixers;
    for (int m = job.open.mixers ? 1 : mixers; m <= mixers; ++m) {
      Crew crew = with_bags(job.crew, bags);
      crew.people = people;
      crew.mixers = m;
      const Duration takt = pace(crew).takt;
      const auto [place, is_new] = best.try_emplace({pouring(people), m}, crew, takt);
      auto& [held, its_takt] = place->second;
      const bool as_fast = to_rank(takt) == to_rank(its_takt);
      if (is_new || (!as_fast && takt > its_takt)) continue;
      if (!as_fast || roles_held(people) < roles_held(held.people)) {
        place->second = {std::move(crew), takt};
      }
    }
  }
  std::vector<Crew> crews;
  for (auto& [count, crew] : best) crews.push_back(std::move(crew.first));
  return crews;
}

Job with_setup(Job job, const Setup& setup) {
  job.crew = setup.crew;
  job.site.water_temperature = setup.water;
  job.site.ice = setup.ice;
  job.open = {};
  return job;
}

/// The fewest who only finish and trowel every zone in time.
std::optional<int> least_finishers(const Job& job, const PourModel& model) {
  const Pour pour = plan_pour(job, model.mix(), model);
  const Setting times = setting(job, pour.plan);
  if (!times.stiff || !times.final_set) return std::nullopt;
  return fewest_finishers(pour.batches, *times.stiff, *times.final_set);
}

/// The first that does with the dose the coldest needs; the coldest when none does.
Setup cooled(Setup setup, const std::vector<Cooling>& options, const PourModel& model) {
  const auto longest =
      std::max_element(options.begin(), options.end(),
                       [](const auto& a, const auto& b) { return a.factor < b.factor; });
  const Outlook at_best = model.judged(model.quick(setup), longest->factor);
  const Duration per_factor = *at_best.usable / longest->factor;
  const auto enough = std::find_if(options.begin(), options.end(), [&](const Cooling& option) {
    return covers(per_factor * option.factor, at_best.demand);
  });
  const Cooling& taken = enough == options.end() ? *longest : *enough;
  setup.water = taken.water;
  setup.ice = taken.ice;
  return setup;
}

}  // namespace

std::vector<double> bag_sizes(const Job& job, const MixPlan& mix) {
  const double holds = job.crew.mixer_capacity
                           ? std::floor(*job.crew.mixer_capacity / mix.yield * (1 + 1e-9))
                           : std::floor(tub / job.mix.bag);
  const double needed = whole_up(mix.bags_exact);
  const double most = std::max(1.0, std::min({holds, needed, most_bags}));
  std::vector<double> sizes;
  const auto batches = [&](double bags) {
    return static_cast<std::size_t>(batch_count(mix, bags));
  };
  if (!job.mix.working_time) return {1};
  if (job.mix.bag >= heavy_bag && batches(0.5) <= most_batches) sizes.push_back(0.5);
  for (double bags = 1; bags <= most; ++bags) {
    if (bags == most || batches(bags) <= most_batches) sizes.push_back(bags);
  }
  return sizes;
}

Rank rank_of(const Setup& setup, const Outlook& outlook, const PourModel& model) {
  const double bags = setup.crew.bags_per_batch;
  return {!outlook.works,
          outlook.works ? 0.0 : -to_rank(outlook.slack),
          bags != std::floor(bags),
          outlook.dose,
          pouring(setup.crew.people),
          setup.crew.mixers,
          to_rank(outlook.end),
          batch_count(model.mix(), bags) * bags,
          setup.ice.si(),
          -setup.water.in_c()};
}

Setup cooled(Setup setup, const Job& job, const PourModel& model) {
  if (!job.mix.working_time || (!job.open.water_temperature && !job.open.ice)) return setup;
  return cooled(std::move(setup), coolings(job, model), model);
}

std::vector<Setup> open_setups(const Job& job, const PourModel& model) {
  const std::vector<double> sizes = job.open.bags_per_batch
                                        ? bag_sizes(job, model.mix())
                                        : std::vector<double>{job.crew.bags_per_batch};
  const bool cools = job.mix.working_time && (job.open.water_temperature || job.open.ice);
  const auto options = cools ? coolings(job, model) : std::vector<Cooling>{};
  std::vector<Setup> setups;
  for (const double bags : sizes) {
    for (Crew& crew : fastest_crews(job, bags)) {
      Setup setup{std::move(crew), job.site.water_temperature, job.site.ice};
      setups.push_back(cools ? cooled(std::move(setup), options, model) : std::move(setup));
    }
  }
  return setups;
}

Settled settle(const Job& job, const PourModel& model) {
  if (!job.open.any()) return {job, {}};
  struct Candidate {
    Setup setup;
    Rank rank;
  };
  std::vector<Candidate> candidates;
  for (Setup& setup : open_setups(job, model)) {
    const Rank rank = rank_of(setup, model.quick(setup), model);
    candidates.push_back({std::move(setup), rank});
  }
  const auto better = [](const Candidate& a, const Candidate& b) { return a.rank < b.rank; };
  std::stable_sort(candidates.begin(), candidates.end(), better);
  candidates.resize(std::min(candidates.size(), looked_at_closely));
  for (Candidate& c : candidates) c.rank = rank_of(c.setup, model.exact(c.setup), model);
  const Setup best = std::min_element(candidates.begin(), candidates.end(), better)->setup;

  Settled settled{with_setup(job, best), reasons(job, best, model)};
  if (is_open(job, Role::finish)) {
    const auto n = least_finishers(settled.job, model);
    People& people = settled.job.crew.people;
    people.insert(people.end(), static_cast<std::size_t>(n.value_or(1) - 1), {Role::finish});
    settled.choices.push_back(finishers_choice(n));
  }
  return settled;
}

}  // namespace strikeoff
