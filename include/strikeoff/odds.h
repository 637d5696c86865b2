// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// How often the pour as planned would go wrong, by pouring it many times with minutes, working time
// and weather that vary as they do on a site.

/// How far things stray from the plan. The defaults are assumptions; 0 switches a spread off.
struct Spreads {
  // The same all day: spread of the logarithm, about the same as a share.
  double working_time = 0.10;
  double crew_pace = 0.12;
  double mix_temperature_c = 2;  // standard deviation, in degrees C
  // From batch to batch.
  double batch_working_time = 0.05;  // of the logarithm
  double drill_stop = 0.02;          // chance a batch, in [0, 1]
  Duration drill_swap = minutes(4);  // what a stop costs
  double least_time = 0.9;           // of the usual time: the least an operation takes, in (0, 1]
  // Of the mix: standard deviations as shares; what is lost as shares of the slab.
  double yield = 0.02;
  double volume = 0.02;
  double loss_usual = 0.03, loss_bad = 0.10;
};

struct OddsOptions {
  std::int64_t runs = 20'000;  // 1 to most_runs
  std::uint64_t seed = 1;
  int threads = 1;     // 1 to most_threads; the answer does not depend on it
  double risk = 0.05;  // that the dose and the bags are sought for; in (0, 1)
  Spreads spreads = {};
  /// Called now and then, from the calling thread, with how many pours are done.
  std::function<void(std::int64_t)> progress = {};
};

inline constexpr std::int64_t most_runs = 10'000'000;
inline constexpr int most_threads = 64;

/// How often something happened, and the 95 % interval of its chance (Wilson 1927).
struct Chance {
  std::int64_t times = 0, runs = 0;
  double share = 0, low = 0, high = 0;
};

/// In 5, 50 and 95 of 100 pours it is at most this.
struct Quantiles {
  Duration p5, p50, p95;
};

/// How often this joint was the nearest to going cold.
struct JointShare {
  int first = 0, second = 0;  // batch numbers
  Chance worst;
};

/// An input, and which share of the spread of ln(wait / working time) of the worst joint goes with
/// it: the square of their correlation. The rest comes from single batches.
struct Driver {
  std::string name;
  double share = 0;
};

/// What would bring the chance of a cold joint down to the risk asked for.
struct SaferMix {
  Duration working_time;             // the working time it takes
  std::optional<double> doses;       // of `retarder` per bag; nothing without a retarder
  std::string retarder;              // its name
  bool enough = false;               // the dose gives that working time
  double planned = 0;                // doses of it per bag in the plan
  std::optional<double> most_doses;  // per bag that it may have
};

struct OddsAssumption {
  std::string what, value, reason;
};

struct Odds {
  std::string name;
  Units units = Units::metric;
  std::int64_t runs = 0;
  std::uint64_t seed = 0;
  double risk = 0;
  int batches = 0;
  bool plan_stops = false;  // a check of the plan is at `stop`

  // A chance that cannot be known is absent; `unknown` says why, a sentence each.
  std::optional<Chance> cold_joint;   // an edge waited longer than its mix stays workable
  std::optional<Chance> stiff_batch;  // a batch was stiff before it was placed
  std::optional<Chance> late_trowel;  // a zone was too hard before it was trowelled twice
  std::optional<Chance> overrun;      // the pour took longer than the job's `pour_within`
  Chance short_of_mix;                // the bags of the plan did not fill the forms
  Chance short_with_spare;            // nor did they with the spare bags
  int bags = 0, spare_bags = 0;       // of the plan
  int bags_needed = 0;                // enough but for the risk asked for
  std::vector<std::string> unknown;

  std::optional<Duration> pour_within;
  std::optional<Quantiles> end;         // last batch placed
  std::optional<Quantiles> worst_wait;  // the longest wait of a joint
  std::optional<Quantiles> margin;      // of the joint with the least: working time less wait
  std::vector<JointShare> joints;       // the most often worst first, at most `most_joints`
  std::vector<Driver> drivers;          // the largest first
  double unexplained = 0;               // share that goes with none of them
  std::optional<SaferMix> remedy;
  std::vector<std::string> advice;  // what to do, a sentence or two each
  std::vector<OddsAssumption> assumptions;
};

inline constexpr std::size_t most_joints = 20;

/// Pours the plan `options.runs` times. The crew keeps to the plan's water rule: each batch gets
/// its water as long after the batch before starts being placed as in the plan, and later where a
/// mixer or a person is not free. Same job, same options, same odds, whatever the number of
/// threads. Memory is 44 bytes a run. Throws std::invalid_argument for options out of range.
/// Precondition: `plan` is the plan of `job`.
[[nodiscard]] Odds simulate(const Job& job, const Plan& plan, const OddsOptions& options = {});

}  // namespace strikeoff
