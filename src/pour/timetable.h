// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// Two batches whose zones meet; first < second, numbers from 1.
struct Touch {
  int first = 0, second = 0;
};

/// When one batch goes through the hands, from the first water contact of the pour.
struct BatchTimes {
  Duration load;       // filling the mixer begins
  Duration contact;    // water meets cement
  Duration discharge;  // the mixer is emptied
  Duration place_start, place_end;
  int mixer = 1;
};

struct Timetable {
  std::vector<BatchTimes> batches;
  Duration worst_wait;    // of all touches; 0 without any
  Duration takt;          // between contacts, on average; lead for one batch
  Duration own_age;       // of the oldest batch when it is placed
  bool is_exact = false;  // no timetable of this crew has a shorter worst wait
  std::string chain;      // what holds it back: "mix 4 + carry 2 + place 7 + next batch 8 = 21 min"
};

/// The timetable with the least worst edge wait, and of those with it the one that ends first,
/// each water contact as late as that end allows.
/// Rules, each a difference x_v >= x_u + c: load, mix, discharge and carry follow one another;
/// a mixer takes its next batch when it has been discharged and reset; a person does one thing at
/// a time, the batches in order; a joint (i, j) waits from contact_i to place_end_j. Whether a
/// longest wait can be kept is whether the graph has no positive cycle (Bellman 1958, Ford 1956,
/// from memory); the cycle that is left at the least wait is the chain.
/// `last_share`: the size of the last batch over the others', in (0, 1].
/// Precondition: someone mixes, carries and places; batches >= 1.
[[nodiscard]] Timetable least_wait_timetable(const Crew& crew, int batches,
                                             const std::vector<Touch>& touches,
                                             double last_share = 1);

}  // namespace strikeoff
