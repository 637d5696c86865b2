// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// How long each operation of one batch takes, in seconds.
struct OperationTimes {
  double load = 0, mix = 0, discharge = 0, reset = 0, carry = 0, back = 0, place = 0;
};

/// The usual times of the job.
[[nodiscard]] OperationTimes usual_times(const Times& times);

/// Pours the batches one after the other with the crew's hands, at whatever each operation takes.
///
/// Load, mix, discharge, carry and place follow one another. A person does one thing at a time, the
/// batches in order; of those who have a role the one who has the batch in hand goes on with it,
/// else the one who is free first. Who mixes stays with the batch until it is discharged, who
/// carries is there from the discharge; who mixes next cleans the mixer first. The crew keeps to
/// the plan's water rule: water goes in as long after the batch before starts being placed as in
/// the plan. Where the plan has it earlier than that, nobody can know when that will be: then it is
/// as long after the water of the batch before as in the plan, and as long after the last batch
/// that starts being placed before it.
///
/// The times of the plan come out again at the usual times, where the plan's beat is no bound.
class CrewCourse {
 public:
  /// Precondition: someone mixes, carries and places; at least one batch.
  CrewCourse(const Crew& crew, const std::vector<Batch>& batches);

  [[nodiscard]] std::size_t batches() const { return contact_.size(); }

  /// `draw(i)` gives batch i's times, once each, in order. Batch 0's water is at 0.
  template <class Draw>
  void pour(Draw draw);

  // What the last pour came to, in seconds from the first water contact.
  [[nodiscard]] double contact(std::size_t batch) const { return contact_[batch]; }
  [[nodiscard]] double placed(std::size_t batch) const { return placed_[batch]; }

 private:
  /// Water not before `after_place` after batch `place` starts being placed, nor `after_water`
  /// after the batch before got its own.
  struct WaterRule {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::size_t place = none;
    double after_place = 0;
    bool counts_water = false;
    double after_water = 0;
  };
  struct Person {
    bool carries = false, places = false;
  };

  [[nodiscard]] std::size_t first_free(const std::vector<std::size_t>& people) const;
  [[nodiscard]] double earliest_water(std::size_t batch) const;

  std::vector<Person> people_;
  std::vector<std::size_t> mixing_, carrying_, placing_;  // persons
  std::vector<std::size_t> mixer_;                        // of each batch
  std::vector<WaterRule> rules_;                          // of each batch
  // State of the pour.
  std::vector<double> free_;                      // when each person is
  std::vector<double> empty_, reset_;             // each mixer: since when, and what cleaning takes
  std::vector<double> contact_, start_, placed_;  // each batch; start_: of its placing
};

inline std::size_t CrewCourse::first_free(const std::vector<std::size_t>& people) const {
  std::size_t first = people.front();
  for (const std::size_t person : people) {
    if (free_[person] < free_[first]) first = person;
  }
  return first;
}

inline double CrewCourse::earliest_water(std::size_t batch) const {
  const WaterRule& rule = rules_[batch];
  double time = 0;
  if (rule.place != WaterRule::none) time = start_[rule.place] + rule.after_place;
  if (rule.counts_water) time = std::max(time, contact_[batch - 1] + rule.after_water);
  return time;
}

template <class Draw>
void CrewCourse::pour(Draw draw) {
  constexpr double long_ago = -1e9;  // before the first water everyone has had time to get ready
  std::fill(free_.begin(), free_.end(), long_ago);
  std::fill(empty_.begin(), empty_.end(), long_ago);
  for (std::size_t i = 0; i < batches(); ++i) {
    const OperationTimes t = draw(i);
    const std::size_t mixer = mixer_[i], mixes = first_free(mixing_);
    const double ready = std::max(empty_[mixer], free_[mixes]) + reset_[mixer] + t.load;
    contact_[i] = i == 0 ? 0 : std::max(ready, earliest_water(i));

    const double mixed = contact_[i] + t.mix;
    const bool same_carries = people_[mixes].carries;
    const std::size_t carries = same_carries ? mixes : first_free(carrying_);
    const double discharged =
        (same_carries ? mixed : std::max(mixed, free_[carries])) + t.discharge;
    empty_[mixer] = free_[mixes] = discharged;
    reset_[mixer] = t.reset;

    const double there = discharged + t.carry;
    const bool same_places = people_[carries].places;
    const std::size_t places = same_places ? carries : first_free(placing_);
    start_[i] = same_places ? there : std::max(there, free_[places]);
    placed_[i] = free_[places] = start_[i] + t.place;
    free_[carries] = (same_places ? placed_[i] : there) + t.back;
  }
}

}  // namespace strikeoff
