// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
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
  Duration discharge;  // tipping out begins
  Duration emptied;    // the mixer is empty
  Duration carried;    // the batch is where it is placed
  Duration place_start, place_end;
  int mixer = 1;
  std::size_t mixed_by = 0, carried_by = 0, placed_by = 0;  // of Crew::people
};

struct Timetable {
  std::vector<BatchTimes> batches;
  Duration worst_wait;    // of all touches; 0 without any
  Duration takt;          // between contacts, on average; the lead for one batch
  Duration own_age;       // of the oldest batch when it is placed
  bool is_exact = false;  // no timetable of this crew has a shorter worst wait
  /// What holds it back: "mix 3 + tip out 0.5 + carry 0.5 + place 3 + next batch 5 = 12 min".
  std::string chain;
};

/// The timetable with the least worst edge wait, and of those with it the one that ends first,
/// each water contact as late as that end allows and each batch placed as soon as it can be.
/// Rules, each a difference x_v >= x_u + c: reset, load, mix, discharge, carry and place follow one
/// another; a mixer is cleaned and filled for its next batch once it is empty, by who mixes that
/// one; a person does one thing at a time; who has carried walks back before the next work at the
/// mixer; batches come in order everywhere; a joint (i, j) waits from contact_i to place_end_j.
/// A role several people have goes round among them. Where the crew takes turns (`takes_turns`) and
/// nobody who shares a role has another, this is exact; where those who share have several roles
/// they take whole batches in turn; else who does what in which order is searched, within bounds.
/// More than 60 batches: a steady beat for a crew that takes turns, exact where no shorter wait can
/// be (see `steady_is_exact` in the source); for others every batch as soon as it can be.
/// `last_share`: the size of the last batch over the others', in (0, 1]; it scales load, discharge
/// and place. Precondition: someone mixes, carries and places; batches >= 1.
[[nodiscard]] Timetable least_wait_timetable(const Crew& crew, int batches,
                                             const std::vector<Touch>& touches,
                                             double last_share = 1);

/// The worst edge wait when nobody holds back: water goes into every batch as soon as its mixer is
/// filled, and buckets queue where they are placed. Same precondition.
[[nodiscard]] Duration unpaced_wait(const Crew& crew, int batches,
                                    const std::vector<Touch>& touches, double last_share = 1);

}  // namespace strikeoff
