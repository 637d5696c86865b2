// SPDX-License-Identifier: MIT
// Made-up jobs for the laws of joints, as a person might write them: worktops, L, U and T shapes,
// slabs with sinks, rings, pads; their mirror images and quarter turns; in mm or in inches. What a
// law needs to know of a job it finds here, not in what the program made of it.
#pragma once

#include <string>
#include <vector>

#include "support/slabs.h"

namespace strikeoff::test {

/// Lengths are whole sixteenths of an inch, 1.5875 mm, which both units write exactly.
using Sixteenths = int;
inline constexpr double metres_in_sixteenth = 0.0015875;

struct PourPoint {
  Sixteenths x = 0, y = 0;
};
struct PourBox {
  Sixteenths x = 0, y = 0, length = 0, depth = 0;
};
struct PourSide {
  Sixteenths overhang = 0;
  bool wall = false;
};
struct PourOpening {
  PourBox box;
  Sixteenths radius = 0;  // of its corners
};
enum class PourShape { rectangle, ring, ell, you, tee };

struct PourSlab {
  std::string name;
  PourShape shape = PourShape::rectangle;
  std::vector<PourPoint> corners;   // of the slab with its overhangs, anticlockwise, not rounded
  std::vector<PourSide> sides;      // from each corner to the next
  std::vector<Sixteenths> rounded;  // radius at each corner, 0: sharp
  std::vector<PourOpening> openings;
  std::vector<PourBox> arms;  // what the outline is the union of; they overlap where they meet
  Sixteenths thickness = 0, panel = 0;  // panel 0: none
  bool on_ground = false;
};

struct RandomPour {
  std::vector<PourSlab> slabs;
  double bag_kg = 0, yield_l = 0, water_l = 0;  // a bag
  int working_min = 0;
  Sixteenths grain = 0;
  int bags_per_batch = 1, mixers = 1;
  std::vector<std::vector<std::string>> roles;                           // consecutive ones only
  int load_s = 0, mix_s = 0, discharge_s = 0, reset_s = 0, carry_s = 0;  // a batch; usual
  int return_s = 0, place_s = 0;

  [[nodiscard]] bool is_plain() const;  // rectangles alone, without openings or rounded corners
};

enum class Writing { mm, inches };

[[nodiscard]] RandomPour random_pour(Draw& draw);
/// Two or three plain worktops.
[[nodiscard]] RandomPour random_worktops(Draw& draw);
/// Of the laws' jobs, the one with this number, below `jobs_for_laws`: every third is of plain
/// worktops.
inline constexpr int jobs_for_laws = 300;
[[nodiscard]] RandomPour numbered_pour(int number);

/// The job file.
[[nodiscard]] std::string text_of(const RandomPour& pour, Writing writing = Writing::mm);

/// x to -x, slab by slab.
[[nodiscard]] RandomPour mirrored(RandomPour pour);
/// A quarter turn to the left, slab by slab.
[[nodiscard]] RandomPour turned(RandomPour pour);
/// The last slab first.
[[nodiscard]] RandomPour backwards(RandomPour pour);
/// Only slab k.
[[nodiscard]] RandomPour alone(const RandomPour& pour, std::size_t k);

/// What the slab's outline measures each way.
[[nodiscard]] PourBox box_of(const PourSlab& slab);
/// The width of a slab's widest arm; of one without arms, its shorter side.
[[nodiscard]] Sixteenths widest(const PourSlab& slab);

/// The beat of the crew and what a batch ages until it is placed, in minutes: the longest cycle of
/// a mixer or a person, shared roles divided; mix + discharge + carry + place.
struct Beat {
  double takt_min = 0, lead_min = 0;
};
[[nodiscard]] Beat beat_of(const RandomPour& pour);

}  // namespace strikeoff::test
