// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "mix/fresh_mix.h"
#include "mix/mix.h"

namespace strikeoff {
namespace {

Check dose_most(const Additive& additive, const DoseTotal& dose) {
  Check check;
  check.code = "dose-most";
  check.title = "Within the most allowed: " + additive.name;
  check.value = dose.per_bag;
  check.limit = additive.most;
  check.unit = dose.per_bag > 1 ? "doses a bag" : "dose a bag";
  check.about = additive.name;
  check.basis = basis("dose-most");
  if (!additive.most) {
    check.level = Level::caution;
    check.title = "The most allowed is not known: " + additive.name;
    check.advice =
        "Read the label and give `most` in the job; too much can weaken the slab or "
        "keep it from setting.";
  } else if (dose.per_bag > *additive.most + 1e-9) {
    check.level = Level::stop;
    check.title = "More than the label allows: " + additive.name;
    check.advice = fmt::format(
        "Use at most {} a bag; gain time with colder water, smaller batches "
        "or more people.",
        show_number(*additive.most, 2));
  }
  return check;
}

/// Retarders hold back less as it gets warmer (citric acid and gluconate: Zou et al., Constr.
/// Build. Mater. 2020, abstract, from memory), and their minutes are those of the label's
/// temperature.
Check dose_heat(const Job& job, const Plan& plan, const Additive& retarder) {
  constexpr double warmer_by = 5;  // K (assumption)
  const Temperature mix = plan.pour.mix_temperature;
  Check check;
  check.code = "dose-heat";
  check.title = "The retarder works at about the temperature its minutes hold at: " + retarder.name;
  check.value = mix.in_c();
  check.limit = job.mix.at.in_c() + warmer_by;
  check.unit = "C";
  check.about = retarder.name;
  check.basis = basis("dose-heat");
  if (mix.in_c() <= *check.limit + 1e-9) return check;
  check.level = Level::caution;
  check.title = "The retarder may hold back less in this heat: " + retarder.name;
  check.advice = fmt::format(
      "The mix will be {} and the minutes a dose gives hold at {}: try one bag at that temperature "
      "before the pour, and do not go over the label's most to make up for it.",
      show(mix, job.units), show(job.mix.at, job.units));
  return check;
}

std::vector<Check> dose_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (const DoseTotal& dose : plan.mix.doses) {
    const auto additive = std::find_if(job.additives.begin(), job.additives.end(),
                                       [&](const Additive& a) { return a.name == dose.name; });
    if (additive != job.additives.end() && dose.per_bag > 0) {
      checks.push_back(dose_most(*additive, dose));
      if (additive->kind == AdditiveKind::retarder) {
        checks.push_back(dose_heat(job, plan, *additive));
      }
    }
  }
  return checks;
}

Check water_most(const Job& job, const Plan& plan) {
  const Volume water = plan.mix.water_per_bag;
  // 1e-9 L: unit conversions round, labels do not.
  const Volume tolerance = litres(1e-9);
  Check check;
  check.code = "water-most";
  check.title = "The water is within the label's range";
  check.value = in_litres(water);
  check.unit = "L a bag";
  check.basis = basis("water-most");
  if (job.mix.water_most) check.limit = in_litres(*job.mix.water_most);
  if (job.mix.water_most && water > *job.mix.water_most + tolerance) {
    check.level = Level::stop;
    check.title = "More water than the label allows";
    check.advice = fmt::format(
        "Use at most {} a bag: more makes the slab weaker and lets it "
        "shrink and crack.",
        show_water(*job.mix.water_most, job.units));
  } else if (job.mix.water_least && water < *job.mix.water_least - tolerance) {
    check.level = Level::caution;
    check.limit = in_litres(*job.mix.water_least);
    check.title = "Less water than the label asks for";
    check.advice = fmt::format(
        "Use at least {} a bag, or it will not fill the edge; a plasticizer "
        "makes it flow without water.",
        show_water(*job.mix.water_least, job.units));
  } else if (!job.mix.water_most) {
    check.level = Level::caution;
    check.title = "The most water allowed is not known";
    check.advice =
        "Read the bag and give water `most` in the job; never add water to make a "
        "stiffening batch flow again.";
  }
  return check;
}

Check ice(const Job& job, const Plan& plan) {
  const Mass water = plan.mix.water_per_bag * water_density;
  Check check;
  check.code = "ice";
  check.title = "The ice melts before the batch is placed";
  check.value = 100 * plan.mix.ice_per_bag.si() / water.si();
  check.limit = 100 * most_ice;
  check.unit = "% of the water";
  check.basis = basis("ice-check");
  if (*check.value <= *check.limit + 1e-9) return check;
  check.level = Level::caution;
  check.title = "So much ice that the mix's temperature is uncertain";
  check.advice = fmt::format(
      "Use at most {} of crushed ice a bag and colder water beside it, and see that no ice is left "
      "when a batch is tipped out.",
      show(water * most_ice, job.units));
  return check;
}

/// Limits of the fresh mix.
constexpr Temperature coldest = Temperature::celsius(10);
constexpr Temperature freezing_near = Temperature::celsius(5);
constexpr Temperature hottest = Temperature::celsius(35);

/// The mixing water that brings the mix to a limit.
std::string water_for(Temperature limit, const Job& job, const Plan& plan) {
  const Mass water = plan.mix.water_per_bag * water_density, ice = plan.mix.ice_per_bag;
  const auto chill = ice < water
                         ? chill_to(limit, job.mix.bag, job.site.bag_temperature, water, ice)
                         : std::nullopt;
  if (!chill) return "no mixing water does it, so bags of another temperature or another day";
  const bool warm = limit > plan.pour.mix_temperature;
  std::string text =
      fmt::format("water at {} does it", warm ? show_at_least(chill->water, job.units)
                                              : show_at_most(chill->water, job.units));
  if (chill->ice > Mass{}) {
    text += fmt::format(" with {} of each bag's as crushed ice", show(chill->ice, job.units));
  }
  return text;
}

Check mix_temperature(const Job& job, const Plan& plan) {
  const Temperature mix = plan.pour.mix_temperature;
  Check check;
  check.code = "mix-temperature";
  check.title = "The fresh mix is neither too cold nor too hot";
  check.value = mix.in_c();
  check.unit = "C";
  check.limit = (mix < coldest ? coldest : hottest).in_c();
  check.basis = basis("mix-temperature-check");
  if (mix < freezing_near) {
    check.level = Level::stop;
    check.limit = freezing_near.in_c();
    check.title = "The fresh mix is too cold to set";
    check.advice = fmt::format("Store the bags warm, or wait: {} is the least; {}.",
                               show(coldest, job.units), water_for(coldest, job, plan));
  } else if (mix < coldest) {
    check.level = Level::caution;
    check.title = "The fresh mix is cold";
    check.advice = fmt::format(
        "Bring it to {}: {}; keep the slab warm, and expect everything to "
        "take longer.",
        show(coldest, job.units), water_for(coldest, job, plan));
  } else if (mix > hottest) {
    check.level = Level::caution;
    check.title = "The fresh mix is hot";
    check.advice = fmt::format("Bring it under {}: {}; bags in the shade, an early morning.",
                               show(hottest, job.units), water_for(hottest, job, plan));
  }
  return check;
}

Check mixer_capacity(const Job& job, const Plan& plan) {
  Volume largest;
  for (const Batch& batch : plan.batches) largest = std::max(largest, batch.volume);
  Check check;
  check.code = "mixer-capacity";
  check.title = "A batch fits the mixer";
  check.value = in_litres(largest);
  check.unit = "L";
  check.basis = basis("mixer-capacity");
  if (!job.crew.mixer_capacity) {
    check.level = Level::caution;
    check.title = "Whether a batch fits the mixer is not known";
    check.advice = fmt::format("Drum, tub or bucket must mix {} at once, with room to stir.",
                               show_concrete(largest, job.units));
    return check;
  }
  check.limit = in_litres(*job.crew.mixer_capacity);
  if (largest > *job.crew.mixer_capacity + litres(1e-9)) {
    check.level = Level::stop;
    check.title = "A batch is too large for the mixer";
    check.advice = fmt::format("It mixes {} at most: take fewer bags a batch.",
                               show_concrete(*job.crew.mixer_capacity, job.units));
  }
  return check;
}

std::optional<Check> batch_in_bucket(const Job& job, const Plan& plan) {
  if (!job.crew.bucket || plan.batches.empty()) return std::nullopt;
  const Batch& most = *std::max_element(
      plan.batches.begin(), plan.batches.end(),
      [](const Batch& a, const Batch& b) { return a.bucket_fills < b.bucket_fills; });
  Check check;
  check.code = "batch-in-bucket";
  check.title = "The water of a batch fits the bucket";
  check.basis = basis("batch-in-bucket");
  if (most.bucket_fills > 1) {
    check.level = Level::caution;
    check.value = most.bucket_fills;
    check.unit = "fills";
    check.title = "The water of a batch does not fit the bucket";
    check.advice = fmt::format("Fill it {} times to the mark of the batch list, and count aloud.",
                               most.bucket_fills);
  }
  return check;
}

}  // namespace

std::vector<Check> mix_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks = dose_checks(job, plan);
  checks.push_back(water_most(job, plan));
  checks.push_back(mix_temperature(job, plan));
  if (plan.mix.ice_per_bag > Mass{}) checks.push_back(ice(job, plan));
  checks.push_back(mixer_capacity(job, plan));
  if (const auto bucket = batch_in_bucket(job, plan)) checks.push_back(*bucket);
  return checks;
}

}  // namespace strikeoff
