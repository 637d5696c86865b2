// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "hardening/maturity.h"
#include "hardening/strength.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// How one pour hardens: from the end of the pour, later by what its retarder adds, slower in the
/// cold. All times are from the first water.
class Hardener {
 public:
  Hardener(const Job& job, const PourPlan& pour);
  /// When so much of a label's time has passed for the batch placed last; nothing: not in a year.
  [[nodiscard]] std::optional<Duration> after(Duration label) const;
  /// When it has that compressive strength; nothing when not known.
  [[nodiscard]] std::optional<Duration> when_strong(Pressure strength) const;
  /// Its strength then; 0 where no strength is known.
  [[nodiscard]] Pressure strength(Duration from_first_water) const;
  [[nodiscard]] const std::optional<StrengthCurve>& curve() const { return curve_; }
  [[nodiscard]] const AgeClock& clock() const { return clock_; }
  /// When its clock starts, from the first water.
  [[nodiscard]] Duration start() const { return start_; }

 private:
  Duration start_;
  AgeClock clock_;
  std::optional<StrengthCurve> curve_;
};

/// When the slab has this compressive strength in today's air, from the first water; nothing when
/// not known.
[[nodiscard]] std::optional<Duration> when_strong(const Job& job, const PourPlan& pour,
                                                  Pressure strength);

/// True for a mix that sets like ordinary portland cement: its forms stay 12 h or more
/// (assumption), or its bag does not say.
[[nodiscard]] bool is_ordinary(const Mix& mix);

/// Milestones, strength against time, and how the cold slows both. Reads the slabs' props.
[[nodiscard]] HardeningPlan plan_hardening(const Job& job, const std::vector<SlabPlan>& slabs,
                                           const PourPlan& pour);

}  // namespace strikeoff
