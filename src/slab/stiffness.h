// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "slab/heights.h"
#include "strikeoff/job.h"

namespace strikeoff {

// How closely strips are screwed or staked and wide soffits are propped. Mix that is being poured
// and worked presses like a liquid of its own density, whatever its stiffness: p = w h, the cap of
// ACI 347's formwork pressures, from memory. Estimates, meant to err on the safe side.

// Assumptions.
inline constexpr Length strip_lap = Length::mm(50);  // of an edge strip over the base's face
inline constexpr Length most_bow = Length::mm(1);    // of a strip between what holds it, of soffits
inline constexpr Force screw_holds = Force::from_si(250);  // pulled out of a board's edge
inline constexpr double tall_for_thickness = 5;            // a strip taller than this needs kickers
inline constexpr Length widest_free_soffit = Length::mm(75);  // a wider one is a panel on props
inline constexpr Length least_props_apart = Length::mm(150);
inline constexpr Length brackets_apart = Length::mm(600);  // common practice, no source

/// What an edge strip of this thickness hangs below the base's top to be screwed: the soffit
/// strip's edge, or its lap on the base's face; nothing on the ground.
[[nodiscard]] Length strip_grip(const Slab& slab, const Side& side, Length thickness);

/// What the depth h of fresh mix presses at its foot: w h.
[[nodiscard]] Pressure liquid_pressure(Density fresh, Length depth);
/// The push on a metre of an upright face: w h2/2. It acts at a third of the depth, so that it tips
/// the face about its foot with w h3/6.
[[nodiscard]] Force side_push(Density fresh, Length depth);

/// An edge strip as the fresh mix loads it.
struct LoadedStrip {
  std::string side;
  Length head;          // greatest depth of fresh mix against it
  Length height;        // of the strip
  Length thickness;     // of the strip
  Length grip;          // height of what its foot is screwed to, just below the mix
  bool staked = false;  // on the ground: stakes hold it over its whole height
};

/// The strips of every side but walls, with the base's hollow, the top's rise and aprons in their
/// heads. Strips of cut corners are no taller than these and shorter, or held by their own curve.
[[nodiscard]] std::vector<LoadedStrip> loaded_strips(const Slab& slab, const Forms& forms,
                                                     const Heights& heights);

/// How far the strip bows outwards between two screws or stakes: 5 q a4/(384 E I) with q = w h2/2
/// and I = height x thickness3/12, the simply supported beam. A strip goes on over its screws,
/// which makes this cautious; but it takes the load as spread over the whole height, which it is
/// not where a strip held by its foot is tall.
[[nodiscard]] Length bow(const LoadedStrip& strip, Density fresh, Length spacing);

/// The pull on each screw of a strip held by its foot; 0 for a staked one. The push w h2/2
/// acts h/3 above the grip; the strip turns about the lower edge of the grip, and the screws pull
/// half the grip above that edge.
[[nodiscard]] Force screw_pull(const LoadedStrip& strip, Density fresh, Length spacing);

/// True when screws along its foot cannot be trusted to keep the strip upright: it is taller than
/// five times its thickness (assumption) and not staked.
[[nodiscard]] bool needs_kickers(const LoadedStrip& strip);

/// A soffit too wide to hang on the base's face, propped under its outer edge.
struct WideSoffit {
  std::string side;
  Length width, thickness;
  Length depth;  // greatest depth of fresh mix over it
};

[[nodiscard]] std::vector<WideSoffit> wide_soffits(const Slab& slab, const Forms& forms,
                                                   const Heights& heights);

/// Fresh mix, 2.4 kPa (50 psf) for people and tools during the pour (US Navy Builder training
/// manual; ACI 347, from memory), and the board.
[[nodiscard]] Pressure soffit_load(const WideSoffit& soffit, Density fresh);
/// Greatest distance between its props, not rounded: the props' line carries half the width, and
/// the whole width bends with it, as a simply supported beam to 3 MPa (wet board, assumption) and
/// 1 mm.
[[nodiscard]] Length prop_span(const WideSoffit& soffit, Density fresh);
/// How far it sags halfway from the base to the props: 5 p o4/(384 E s3/12).
[[nodiscard]] Length sag_across(const WideSoffit& soffit, Density fresh);

/// What holds the forms of one slab.
struct FormSpacing {
  Length screws;
  Length stakes;  // 0 without stakes
  Length props;   // 0 without props
};

/// Screws: the job's spacing, or where that is a default the least of it and what bow and pull
/// allow, down to a multiple of 5 mm, 50 mm or more. Stakes: 600 mm (assumption) or what the bow
/// allows, down to a multiple of 50 mm, 200 mm or more. Props: 600 mm at most (assumption), down
/// to a multiple of 50 mm, 50 mm or more.
[[nodiscard]] FormSpacing form_spacing(const Slab& slab, const Forms& forms, const Heights& heights,
                                       Density fresh);

/// One every `spacing` at most, and one at each end.
[[nodiscard]] int count_along(Length length, Length spacing);

/// Brackets under the overhangs that the job says are carried.
[[nodiscard]] int bracket_count(const Slab& slab);

}  // namespace strikeoff
