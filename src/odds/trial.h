// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "odds/crew_course.h"
#include "odds/pert.h"
#include "pour/finishing.h"
#include "strikeoff/odds.h"

namespace strikeoff {

/// Two batches whose edges meet: first < second, from 0.
struct BatchPair {
  std::size_t first = 0, second = 0;
};

/// Inputs whose part in the risk is reported, in the order of `Trial::inputs`.
enum Input : std::size_t {
  working_time_input,
  temperature_input,
  pace_input,
  stops_input,
  mixing_input,
  carrying_input,
  placing_input,
  input_count
};

/// What is the same in every pour.
struct TrialModel {
  TrialModel(const Job& job, const Plan& plan, const Spreads& spreads);

  Spreads spreads;
  std::optional<CrewCourse> course;  // nothing: a role is nobody's, so there is no timetable
  std::vector<BatchPair> pairs;      // that touch, by first, then second
  Pert load, mix, discharge, reset, carry, back, place;  // seconds of one batch
  Pert trowel;                                           // a share of one person's usual pace
  Pert loss;                                             // of the mix, as a share of the slab
  double bags = 0;          // that fill the forms, at the label's yield
  double working_time = 0;  // 0: the bag does not say
  double final_set = 0;     // 0: the bag does not say
  Temperature mix_temperature, label_temperature;
  std::optional<MolarEnergy> activation_energy;
  Finishers finishers;
  std::vector<double> trowel_work;  // of each batch's zone: one person's usual seconds
};

/// One pour. Times in seconds.
struct Trial {
  double end = 0;           // last batch placed
  double wait = 0;          // the longest of a joint
  double margin = 0;        // the least working time less wait of a joint
  double joint = 0;         // the largest wait / working time
  std::uint32_t worst = 0;  // the pair with it
  double age = 0;           // the largest age when placed / working time
  bool late = false;        // a zone too hard before its second pass ended
  double bags = 0;          // that filled the forms
  std::array<double, input_count> inputs{};
};

/// Pours again and again; each thread has its own.
class Pourer {
 public:
  Pourer(const TrialModel& model, std::uint64_t seed);
  /// Depends on the seed and this number only.
  [[nodiscard]] Trial pour(std::int64_t number);

 private:
  struct Day;
  [[nodiscard]] std::array<std::uint32_t, 4> bits(std::uint32_t batch, std::uint32_t call) const;
  [[nodiscard]] Day day(Trial& trial) const;
  void run_course(const Day& day, Trial& trial);
  void judge_joints(Trial& trial) const;
  [[nodiscard]] bool trowelled_late(const Day& day, double end) const;

  const TrialModel& model_;
  std::array<std::uint32_t, 2> key_;
  std::uint64_t number_ = 0;
  std::optional<CrewCourse> course_;
  std::vector<double> stays_workable_;  // each batch
};

}  // namespace strikeoff
