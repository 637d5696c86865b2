// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "pour/crew.h"
#include "pour/retarder.h"
#include "pour/timetable.h"
#include "pour/zones.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// What can be chosen of a pour until the day itself.
struct Setup {
  Crew crew;
  Temperature water;
  Mass ice;  // of one bag, part of its water
};

[[nodiscard]] Setup setup_of(const Job& job);

/// What a pour with some setup comes to.
struct Outlook {
  int batches = 1;
  Pace pace;
  Demand demand;
  Duration end;
  double dose = 0;                 // of an "auto" retarder: the least that does, else its most
  std::optional<Duration> usable;  // nothing: the bag does not say
  /// To spare of whichever is scarcest: usable time beyond the demand, or the time the pour may
  /// take. Negative: so much is missing. Without a working time it counts as none.
  Duration slack;
  bool works = false;
};

/// Asks what a pour would come to with other crews, batches, water and ice. The zones of each
/// number of batches are cut once. Keeps references to what it is made of; not to be used from two
/// threads at once.
class PourModel {
 public:
  PourModel(const Job& job, const MixPlan& mix, const ZoneCutter& cutter)
      : job_(job), mix_(mix), cutter_(cutter) {}

  /// The zones of so many equal batches, by how far apart they may lie in time.
  [[nodiscard]] const ZonePlan& zones(int batches, const Setup& setup) const;
  [[nodiscard]] Temperature mix_temperature(Temperature water, Mass ice) const;
  /// Of the working time, for that temperature.
  [[nodiscard]] double factor(const Setup& setup) const;

  /// By the beat of the crew: the worst joint waits gap x takt + lead.
  [[nodiscard]] Outlook quick(const Setup& setup) const;
  /// By the timetable with the least worst wait.
  [[nodiscard]] Outlook exact(const Setup& setup) const;
  /// The same pour with the mix at another temperature.
  [[nodiscard]] Outlook judged(Outlook outlook, double factor) const;

  [[nodiscard]] const Job& job() const { return job_; }
  [[nodiscard]] const MixPlan& mix() const { return mix_; }

 private:
  const Job& job_;
  const MixPlan& mix_;
  const ZoneCutter& cutter_;
  /// How many batches apart two that touch may be: comfortably with the least retarder that lets
  /// neighbours touch at all, at most with the most.
  [[nodiscard]] Reach reach(int batches, const Setup& setup) const;

  mutable std::map<std::pair<int, Reach>, ZonePlan> zones_;
};

/// The joints as the timetable wants them.
[[nodiscard]] std::vector<Touch> touches_of(const std::vector<Joint>& joints);

}  // namespace strikeoff
