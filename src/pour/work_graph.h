// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "pour/difference_graph.h"
#include "pour/timetable.h"
#include "strikeoff/job.h"

namespace strikeoff {

// The work of a pour as a graph of differences: five nodes for each batch, when its work begins.

enum class Step : std::size_t { reset, load, mix, discharge, place };
constexpr std::size_t steps_of_batch = 5;
[[nodiscard]] constexpr std::size_t node(std::size_t batch, Step step) {
  return batch * steps_of_batch + static_cast<std::size_t>(step);
}

/// What an arc's time is made of (DifferenceArc::work).
constexpr unsigned mixes = 1, tips_out = 2, carries = 4, places = 8;

/// Seconds of one batch.
struct BatchWork {
  double reset = 0, load = 0, mix = 0, discharge = 0, carry = 0, back = 0, place = 0;
};

/// The batches of a pour in order, numbered from 0, the last one of another size.
struct PourWork {
  std::vector<BatchWork> batches;
  std::size_t mixers = 1;  // in use: as many as people who mix
};

[[nodiscard]] PourWork work_of(const Crew& crew, int batches, double last_share);

/// Who does a role: these people, batch by batch in turn.
using Rota = std::vector<std::size_t>;
/// Precondition: someone has the role.
[[nodiscard]] std::size_t whose(const Rota& turn, std::size_t batch);

/// Who does what, and how people who mix and place order it.
struct Sharing {
  Rota mix, carry, place;
  /// How many pieces of their other work people do between a batch's last other work of theirs and
  /// placing it.
  std::size_t placed_after = 0;
};

/// Everything but the people: batches through the mixers, in order.
[[nodiscard]] DifferenceGraph process_graph(const PourWork& work);

/// Adds that nobody does two things at once, and in which order everyone works.
void add_people(DifferenceGraph& graph, const PourWork& work, const Sharing& sharing);

/// Adds that no joint waits longer than the wait asked for.
void add_joints(DifferenceGraph& graph, const PourWork& work, const std::vector<Touch>& touches);

}  // namespace strikeoff
