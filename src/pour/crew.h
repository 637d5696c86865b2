// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// The beat of the pour: how often a batch can be started, and how long one takes from water
/// contact to being placed.
struct Pace {
  Duration takt;              // 0 when nobody has a needed role: see `missing`
  std::string bottleneck;     // in words: "the mixer", "person 2 (carry, place)"
  Duration lead;              // mix + discharge + carry + place
  std::vector<Role> missing;  // roles of mix, carry, place that nobody has
};

using Roles = std::vector<Role>;
using People = std::vector<Roles>;

[[nodiscard]] bool has(const Roles& roles, Role role);
/// How many people have this role.
[[nodiscard]] int holders(const People& people, Role role);
/// Roles held in all: fewer means people stay at one thing.
[[nodiscard]] std::size_t roles_held(const People& people);

/// takt = the largest of cycle/units over mixers and people:
///   mixer   load + mix + discharge + reset, units = min(mixers, people mixing)
///   carrier discharge + carry + back
///   placer  place
/// A person with several roles owns the sum of them, the shared discharge once; a role held by
/// several people is shared evenly. Usual times; finishing comes later and sets no beat. Source:
/// the longest cycle bounds a paced line from below, and a steady beat meets it (elementary).
[[nodiscard]] Pace pace(const Crew& crew);

/// True when everyone's roles follow one another and those who share a role share all they do.
/// Such a crew keeps the beat above, the batches taken in turn; others may not.
[[nodiscard]] bool takes_turns(const People& people);

/// What a person of this crew with these roles does for each batch on average: their operations,
/// a shared role divided by who shares it; 0 for one who only finishes.
[[nodiscard]] Duration cycle(const Crew& crew, const Roles& roles);

/// The crew with batches of so many bags: filling, tipping out and placing take longer in
/// proportion, the rest as long as before.
[[nodiscard]] Crew with_bags(Crew crew, double bags);

/// "mix", "carry", "place", "finish".
[[nodiscard]] const char* name_of(Role role);

/// "person 1 mixes; person 2 carries and places"
[[nodiscard]] std::string describe(const People& people);

/// All ways to share mix, carry and place among `people` with consecutive roles only, everyone
/// of one group holding the same roles; in a fixed order.
[[nodiscard]] std::vector<People> consecutive_crews(int people);

}  // namespace strikeoff
