// SPDX-License-Identifier: MIT
#include "pour/search_reasons.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <utility>

#include "core/format.h"
#include "mix/mix.h"
#include "pour/search.h"
#include "pour/sentences.h"

namespace strikeoff {
namespace {

constexpr const char* key_of(Role role) {
  switch (role) {
    case Role::mix:
      return "mixing";
    case Role::carry:
      return "carrying";
    case Role::place:
      return "placing";
    case Role::finish:
      break;
  }
  return "finishing";
}

/// Weighs a setup against the best one in words.
class Weighing {
 public:
  Weighing(const Job& job, const Setup& best, const PourModel& model)
      : job_(job), best_(best), model_(model), outlook_(model.exact(best)) {}

  /// What is worse about another: "3 bags would be 2 min short".
  [[nodiscard]] std::string other(const std::string& name, Setup setup) const {
    setup = cooled(std::move(setup), job_, model_);
    const Outlook seen = model_.exact(setup);
    if (outlook_.works && !seen.works) return name + " would be " + show(-seen.slack) + " short";
    if (!outlook_.works) return fmt::format("{} would be {} short", name, show(-seen.slack));
    if (seen.dose > outlook_.dose) {
      return fmt::format("{} would need {} of retarder a bag", name, doses_in_words(seen.dose));
    }
    if (seen.end > outlook_.end + seconds(1)) {
      return fmt::format("{} would take {} instead of {}", name, show(seen.end),
                         show(outlook_.end));
    }
    const double bags = bags_of(seen, setup), now = bags_of(outlook_, best_);
    if (bags > now) return fmt::format("{} would take {}", name, bags_in_words(bags));
    if (seen.works && seen.slack > outlook_.slack) {
      return fmt::format("{} would leave {} to spare instead of {}", name, show(seen.slack),
                         show(outlook_.slack));
    }
    return name + " would be no better";
  }

  [[nodiscard]] bool is_known() const { return outlook_.usable.has_value(); }

 private:
  [[nodiscard]] static double bags_of(const Outlook& seen, const Setup& setup) {
    return seen.batches * setup.crew.bags_per_batch;
  }

  const Job& job_;
  const Setup& best_;
  const PourModel& model_;
  Outlook outlook_;
};

/// The sentence of one choice: what was taken, then what its neighbours would do.
SettledValue choice(std::string path, const std::string& value, const Weighing& weighing,
                    const std::vector<std::pair<std::string, Setup>>& others) {
  std::vector<std::string> parts;
  if (weighing.is_known()) {
    for (const auto& [name, setup] : others) parts.push_back(weighing.other(name, setup));
  } else {
    parts.emplace_back("the bag gives no working time to compare with");
  }
  std::string reason = capital(value);
  for (std::size_t i = 0; i < parts.size(); ++i) reason += (i == 0 ? ": " : "; ") + parts[i];
  return {std::move(path), value, reason + "."};
}

SettledValue of_bags(const Job& job, const Setup& best, const PourModel& model,
                     const Weighing& weighing) {
  const std::vector<double> sizes = bag_sizes(job, model.mix());
  const auto at = std::find(sizes.begin(), sizes.end(), best.crew.bags_per_batch);
  std::vector<std::pair<std::string, Setup>> others;
  const auto add = [&](double bags) {
    Setup setup = best;
    setup.crew = with_bags(setup.crew, bags);
    others.emplace_back(bags_in_words(bags), std::move(setup));
  };
  if (at != sizes.begin()) add(*(at - 1));
  if (at + 1 != sizes.end()) add(*(at + 1));
  return choice("/crew/bags_per_batch", bags_in_words(best.crew.bags_per_batch) + " a batch",
                weighing, others);
}

SettledValue of_mixers(const Setup& best, const Weighing& weighing) {
  std::vector<std::pair<std::string, Setup>> others;
  const auto add = [&](int mixers) {
    Setup setup = best;
    setup.crew.mixers = mixers;
    others.emplace_back(std::to_string(mixers), std::move(setup));
  };
  if (best.crew.mixers > 1) add(best.crew.mixers - 1);
  add(best.crew.mixers + 1);
  return choice("/crew/mixers", count(best.crew.mixers, "mixer", "mixers"), weighing, others);
}

SettledValue of_people(Role role, const Setup& best, const Weighing& weighing) {
  const int now = holders(best.crew.people, role);
  std::vector<std::pair<std::string, Setup>> others;
  if (now > 1) {
    Setup fewer = best;
    auto& people = fewer.crew.people;
    people.erase(std::find(people.begin(), people.end(), std::vector<Role>{role}));
    others.emplace_back(std::to_string(now - 1), std::move(fewer));
  }
  Setup more = best;
  more.crew.people.push_back({role});
  others.emplace_back(std::to_string(now + 1), std::move(more));
  return choice(fmt::format("/crew/{}", key_of(role)),
                fmt::format("{} {}", count(now, "person", "people"), key_of(role)), weighing,
                others);
}

/// Cooling is compared with none.
SettledValue of_cooling(const Job& job, const Setup& best, const PourModel& model, bool is_ice) {
  const Setup tap{best.crew, job.site.water_temperature, job.site.ice};
  const Outlook without = model.exact(tap), with = model.exact(best);
  const std::string path = is_ice ? "/site/ice" : "/site/water_temperature";
  const bool none = is_ice ? best.ice == job.site.ice : best.water == job.site.water_temperature;
  std::string value = is_ice ? show(best.ice, job.units) + " of ice a bag"
                             : "water at " + show(best.water, job.units);
  if (is_ice && none) value = "no ice";
  if (!with.usable) {
    return {path, value, capital(value) + ": the bag gives no working time to compare with."};
  }
  if (none) {
    const char* const why =
        without.works || with.works ? "nothing more is needed" : "colder would not help either";
    return {path, value, fmt::format("{}: {}.", capital(value), why)};
  }
  const auto state = [&](const Setup& setup, const Outlook& seen) {
    std::string text = fmt::format("a mix of {} of which {} may be used",
                                   show(model.mix_temperature(setup.water, setup.ice), job.units),
                                   show(*seen.usable));
    if (seen.dose > 0) text += " with " + doses_in_words(seen.dose) + " of retarder a bag";
    return text;
  };
  return {path, value,
          fmt::format("{} makes {}; without cooling {}.", capital(value), state(best, with),
                      state(tap, without))};
}

}  // namespace

std::vector<SettledValue> reasons(const Job& job, const Setup& best, const PourModel& model) {
  const Weighing weighing(job, best, model);
  std::vector<SettledValue> choices;
  if (job.open.bags_per_batch) choices.push_back(of_bags(job, best, model, weighing));
  if (job.open.mixers) choices.push_back(of_mixers(best, weighing));
  for (const Role role : job.open.counted) {
    if (role != Role::finish) choices.push_back(of_people(role, best, weighing));
  }
  if (job.open.sharing) {
    const std::string people = describe(best.crew.people);
    choices.push_back(
        {"/crew/roles", people,
         fmt::format("{}: of {} people no others are quicker, with a batch every {}.",
                     capital(people), best.crew.people.size(), show(pace(best.crew).takt))});
  }
  if (job.open.water_temperature) choices.push_back(of_cooling(job, best, model, false));
  if (job.open.ice) choices.push_back(of_cooling(job, best, model, true));
  return choices;
}

SettledValue finishers_choice(std::optional<int> people) {
  const std::string value = count(people.value_or(1), "person", "people") + " finishing";
  const char* const why =
      people ? "the fewest that trowel every zone twice before it sets, even slowly"
             : "how many it takes is not known; see the checks";
  return {"/crew/finishing", value, fmt::format("{}: {}.", capital(value), why)};
}

}  // namespace strikeoff
