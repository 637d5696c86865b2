// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "hardening/maturity.h"
#include "hardening/strength.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// How one pour hardens: from the end of the pour, later by what its retarder adds, slower in the
/// cold. All times are from the first water.
class Hardener {
 public:
  /// For a pour that begins at this local time, after midnight.
  Hardener(const Job& job, const PourPlan& pour, Duration start_of_pour);
  /// When so much of a label's time has passed for the batch placed last; nothing: not in a year.
  [[nodiscard]] std::optional<Duration> after(Duration label) const;
  /// When it has that compressive strength; nothing when the bag does not say that it ever has.
  [[nodiscard]] std::optional<Duration> when_strong(Pressure strength) const;
  /// How old it is then, at the label's temperature.
  [[nodiscard]] Duration equivalent(Duration from_first_water) const;
  /// Nothing without strengths on the bag.
  [[nodiscard]] const std::optional<StrengthCurve>& curve() const { return curve_; }
  /// More than steps.
  [[nodiscard]] bool has_curve() const;
  [[nodiscard]] Duration delay() const { return delay_; }
  /// When the clock starts: the end of the pour and the delay.
  [[nodiscard]] Duration start() const { return start_; }
  [[nodiscard]] std::optional<double> slowing() const { return clock_.slowing(); }

 private:
  Duration delay_;  // by the retarder
  Duration start_;
  AgeClock clock_;
  std::optional<StrengthCurve> curve_;
};

/// When the slab has this compressive strength in today's air, from the first water; nothing when
/// not known.
[[nodiscard]] std::optional<Duration> when_strong(const Job& job, const PourPlan& pour,
                                                  Pressure strength);

/// Milestones, strength against time, and how the cold slows both, for a pour that begins at this
/// local time; `start_by` is left open.
[[nodiscard]] HardeningPlan plan_hardening(const Job& job, const std::vector<SlabPlan>& slabs,
                                           const PourPlan& pour, Duration start_of_pour);

}  // namespace strikeoff
