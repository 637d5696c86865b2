// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"
#include "strikeoff/pour_log.h"

namespace strikeoff {

/// A joint one side of which is still to be placed.
struct OpenJoint {
  Joint joint;
  // The later batch must be placed by then, and how long before that it will be; negative: too
  // late. Nothing where the working time is not known.
  std::optional<Duration> meet_by, margin;
};

/// Where to end the slab for today: a board stands there on edge, and later mix goes against
/// hardened concrete.
struct StopEnd {
  int after = 0;              // the last batch that still goes in; 0: none
  std::string reason;         // one sentence
  Length length;              // of the board: its joints together
  std::vector<Joint> joints;  // the lines it stands on
  int leaves_out = 0;         // batches that do not go in today
  bool is_for_bags = false;   // more bags in time make it needless
};

/// The batch to mix next.
struct NextBatch {
  int number = 0;
  Duration contact;                        // as soon as the crew can
  std::optional<Duration> latest_contact;  // then the edges it meets are just met; never less than
                                           // `contact` while the pour goes on
};

struct Resume {
  /// What is left, as a plan. `batches` are those not yet placed, from the first one on, up to a
  /// stop-end for want of time; `mix` what is still to be mixed (bags and water of batches that
  /// have no water yet); `pour` the joints still to be made and today's working time; `checks` what
  /// was found. `date` has the log's first contact. Cut list, materials, cost and schedule are
  /// empty.
  Plan rest;
  Duration now;
  std::optional<std::chrono::minutes> first_contact;
  int begun = 0;   // batches that have got their water
  int placed = 0;  // of these, placed
  Volume filled;   // net volume those that have begun fill, as the plan counts it
  Volume left;     // net volume still to fill, in forms as deep as they were measured
  double bags_used = 0, bags_needed = 0, bags_left = 0, bags_short = 0;
  bool bags_left_is_known = false;  // else: as planned to be bought, less those used
  std::vector<OpenJoint> joints;    // by first, then second batch
  // The present wet edge must be met by then, and by which batch; the earliest of its joints.
  std::optional<Duration> meet_by;
  int meet_with = 0;
  std::optional<NextBatch> next;  // nothing: no more batch today
  std::optional<StopEnd> stop_end;
  std::string in_hand;  // what to do with mix that has its water but is not placed; may be empty
};

/// Plans the rest of a pour from what has happened so far.
///
/// A batch fills of the net volume the share the plan gave it, in proportion to its volume: bags x
/// yield at the water that really went in. What is left is as deep as measured: the mean difference
/// from the planned depth, over the area left. So many batches are still mixed as bring the whole
/// up to the plan's waste on top; up to a twentieth of a batch more or less changes nothing. They
/// share what is left equally, on the course the slab is already poured by.
///
/// The next water goes in as soon as the crew can, the rest by the timetable with the shortest
/// waits that ends first, each as late as that allows. Working time: as tested; else the plan's,
/// for the temperature measured.
[[nodiscard]] Resume resume(const Job& job, const Catalogue& catalogue, const PourLog& log);

/// True when something is at `stop`.
[[nodiscard]] bool has_stop(const Resume& resume);

}  // namespace strikeoff
