// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "strikeoff/geometry.h"
#include "strikeoff/outline.h"
#include "strikeoff/quantity.h"

namespace strikeoff {

// A Job in hand is valid: `read_job` is the only door, fills in every default, and lists each
// default it used under `assumptions`. Ratios and percents are plain fractions (10 % is 0.10).

enum class Units { us, metric };
enum class Support { base, ground };
enum class CornerStyle { through, pinwheel, mitre };

/// A default that was used because the job does not say.
struct Assumption {
  std::string path;    // JSON Pointer of the value the job could give
  std::string value;   // as the plan prints it, with its unit
  std::string reason;  // why this value, and where it comes from
  int weight = 0;      // how much it can change the plan; the plan lists the heaviest first
  bool operator==(const Assumption&) const = default;
};

/// A board or a sheet as it is sold. Boards: strips run along the length.
struct Stock {
  std::string id;  // catalogue id, or the name of an inline stock
  std::string name;
  Length length, width, thickness;
  std::optional<double> price;               // per board or sheet, in the job's currency
  std::optional<int> quantity;               // how many can be had; nothing: as many as needed
  std::optional<Length> gap = std::nullopt;  // of a panel: left open to the next one
  /// Of a thin sheet for rounded edges: the least radius it bends to.
  std::optional<Length> bends_to = std::nullopt;
  bool operator==(const Stock&) const = default;
};

/// One side of the base. `sides[k]` of a slab runs from base corner k to k+1, anticlockwise.
struct Side {
  int number = 0;         // as the user counts: edge k from 1, in the order written
  std::string name;       // "front", "edge 3"
  Length overhang;        // of the slab past the base; 0 at a wall
  Length panel_overhang;  // of the panel past the base; negative: set back; 0 at a wall
  bool wall = false;      // meets a wall: no strips, an isolation strip
  int corner = 0;         // the corner it begins at, as the user counts
  bool apron = false;     // the slab's edge goes on down below the base's top
  bool bracket = false;   // brackets carry its overhang
  bool operator==(const Side&) const = default;
};

struct Opening {
  std::string name;
  Rectangle at;               // measured from the lower left of the slab outline's bounding box
  bool through = true;        // the panel is cut too
  Length corner_radius = {};  // a circle is a square with half its side
  bool operator==(const Opening&) const = default;
};

/// How far below any level line the base lies at one place (base frame).
struct LevelReading {
  Point at;
  Length low;
  bool operator==(const LevelReading&) const = default;
};

/// The top falls towards one side, where it is as thick as asked.
struct Fall {
  double slope = 0;      // rise over run
  std::size_t side = 0;  // 0-based, of `Slab::sides`
  bool operator==(const Fall&) const = default;
};

/// What stands under the base's top along a line, in the base frame.
struct Partition {
  Point from, to;
  bool operator==(const Partition&) const = default;
};

/// What a tape found that does not close: by how much, and how much was allowed.
struct Misfit {
  Length by, allowed;
  bool operator==(const Misfit&) const = default;
};

enum class ReinforcementKind { none, mesh, bar, fiber };

struct Reinforcement {
  ReinforcementKind kind = ReinforcementKind::none;
  std::optional<Length> diameter, spacing, cover;  // nothing: the job does not say
  bool operator==(const Reinforcement&) const = default;
};

struct Slab {
  std::string name;
  Support support = Support::base;
  Polygon base;  // anticlockwise, in the base frame, starting at the user's corner 1
  std::vector<Side> sides;
  Length thickness;            // of the visible edge, T
  std::optional<Stock> panel;  // the sheet laid over the base; nothing: no panel
  Length panel_gap;            // left open between neighbouring panels
  std::vector<Opening> openings;
  std::vector<CornerCut> corner_cuts;  // of the slab's outline; corner k is base corner k
  std::vector<LevelReading> levels;    // none, or three and more not in one line
  std::optional<Fall> fall;
  Length apron_depth;                 // below the base's top, of the sides with `apron`
  std::vector<Partition> partitions;  // seams are best laid over them
  std::vector<Point> legs;            // what the base stands on, where the job names it
  std::vector<Rectangle> gaps;        // of the base: it carries nothing there (base frame)
  std::optional<Misfit> closing;      // of a base walked in runs; the error is already spread
  std::optional<Misfit> diagonal;     // second diagonal of a rectangle against the first
  std::optional<Density> density;     // of the hardened slab, where the user knows it
  Reinforcement reinforcement;
  bool operator==(const Slab&) const = default;
};

struct PriceBreak {
  int from = 1;      // packs
  double price = 0;  // per pack from there on
  bool operator==(const PriceBreak&) const = default;
};

struct StrengthAt {
  Duration age;
  Pressure strength;
  bool operator==(const StrengthAt&) const = default;
};

/// A bagged mix as its label states it. Nothing where the label is silent.
struct Mix {
  std::string id, name;
  Mass bag;
  Volume yield;                       // of one bag, at `yield_water`
  std::optional<Volume> yield_water;  // nothing: the middle of least and most
  std::optional<Volume> water_least, water_most, water_use;  // per bag; least+most or use is there
  std::optional<Duration> working_time;
  Temperature at;  // the temperature the label's times hold at
  std::optional<MolarEnergy> activation_energy;
  std::optional<Duration> final_set, strip_after, sand_after, seal_after, full_service;
  std::vector<StrengthAt> strength;
  std::optional<Density> density;   // fresh
  std::optional<Length> aggregate;  // largest
  std::optional<Length> least_thickness;
  std::optional<double> binder;          // fraction of the bag's mass
  std::optional<double> price;           // per bag
  std::vector<PriceBreak> price_breaks;  // rising `from`
  bool operator==(const Mix&) const = default;
};

enum class AdditiveKind { retarder, plasticizer, fiber, pigment };

struct DoseFactor {
  double doses = 0;
  double factor = 1;  // of the working time
  bool operator==(const DoseFactor&) const = default;
};

struct Additive {
  std::string id, name;
  AdditiveKind kind = AdditiveKind::retarder;
  std::optional<double> per_bag;         // doses a bag; nothing: "auto" (retarder only)
  std::optional<double> binder_percent;  // fraction of binder, instead of doses (fiber, pigment)
  std::variant<std::monostate, Mass, Volume> dose_size;
  double step = 0.5;                // smallest part of a dose that can be measured
  std::optional<double> most;       // doses a bag
  std::optional<Duration> extends;  // of the working time, per dose
  std::vector<DoseFactor> factors;  // rising doses; used instead of `extends`
  std::optional<double> price;      // per dose
  /// Of an "auto" retarder: the dose falls from batch to batch, so that the whole top sets
  /// together.
  bool taper = false;
  bool operator==(const Additive&) const = default;
};

/// The least size of a left-over that is worth keeping: along the grain of a board, either way of a
/// sheet.
struct Reusable {
  Length length = Length::mm(300), width = Length::mm(40);  // assumption
  bool operator==(const Reusable&) const = default;
};

struct Forms {
  std::vector<Stock> strip_stock;   // one thickness; at least one
  std::optional<Stock> bend_stock;  // thin sheet for rounded edges; its `bends_to` is there
  Length oversize, kerf, end_trim;
  Length screw_spacing;             // of strips, at most
  bool screws_may_tighten = false;  // the job does not say: closer where the mix pushes harder
  CornerStyle corner = CornerStyle::through;
  Reusable reusable;
  bool operator==(const Forms&) const = default;
};

enum class Role { mix, carry, place, finish };

struct Bucket {
  Length bottom, top, height;  // inside diameters and inside height
  bool operator==(const Bucket&) const = default;
};

struct UsualBad {
  Duration usual, bad;
  bool operator==(const UsualBad&) const = default;
};

/// Minutes of one batch's operations, already scaled to the bags of one batch.
struct Times {
  UsualBad load, mix, discharge, reset, carry, back, place;
  bool operator==(const Times&) const = default;
};

struct Crew {
  int mixers = 1;
  std::vector<std::vector<Role>> people;  // the roles of each person, in the order of the work
  double bags_per_batch = 1;
  std::optional<Volume> mixer_capacity;
  std::optional<Bucket> bucket;
  Times times;
  double usable = 0.6;  // share of the working time a joint may use
  std::optional<Duration> pour_within;
  /// How far each batch should move the front, where time lets rows of cells do so; nothing: twice
  /// the slab's thickness, at least 150 mm (assumption).
  std::optional<Length> least_advance;
  bool operator==(const Crew&) const = default;
};

/// What the weather is or will be at one time of the day of the pour.
struct HourWeather {
  std::chrono::minutes time{};  // after local midnight, rising through the list
  Temperature air;
  double humidity = 0.5;  // relative
  Speed wind;
  bool operator==(const HourWeather&) const = default;
};

/// What is done about the weather.
enum class Protection { windbreak, shade, fog, sheet, film, tent, blanket, heater };

struct Site {
  Temperature air, bag_temperature, water_temperature;
  bool bags_as_air = false;        // the job does not say: they follow the air
  bool water_as_it_comes = false;  // the job does not say: from the mains
  double humidity = 0.5;           // relative
  bool humidity_assumed = false;   // the job does not say, or not at every hour: it can be drier
  Speed wind;
  bool sun = false;
  Mass ice;                          // part of the mixing water of one bag
  std::optional<Temperature> night;  // the coldest air of the night after
  std::optional<double> rain;        // the chance of it, from the first water until the set
  std::vector<Protection> protection;
  std::vector<HourWeather> hours;  // two or more, or none
  bool operator==(const Site&) const = default;
};

/// A sealer as its label states it.
struct Sealer {
  std::string id, name;
  int coats = 2;
  Area covers;                     // of one pack, one coat
  Volume pack;                     // what one pack holds
  std::optional<Duration> recoat;  // least wait between two coats; nothing: the label is silent
  std::optional<double> price;     // per pack
  bool operator==(const Sealer&) const = default;
};

/// What is done to the top and the visible edges once they are hard.
struct Finish {
  std::vector<int> grits;  // rising; empty: it is not sanded
  bool fill_pits = false;  // with a paste of the mix's own fines, before the second grit
  std::optional<Sealer> sealer;
  bool operator==(const Finish&) const = default;
};

/// What the job leaves to the plan with "auto". The value itself is then a stand-in until it is
/// chosen: one bag, one mixer, one person, tap water, no ice.
struct Open {
  bool bags_per_batch = false, mixers = false;
  std::vector<Role> counted;  // how many people do this
  bool sharing = false;       // how the people share the work
  bool water_temperature = false, ice = false;
  [[nodiscard]] bool any() const { return *this != Open{}; }
  bool operator==(const Open&) const = default;
};

/// What is already there. An offcut has its own length and width.
struct OnHand {
  std::string item;  // catalogue id, stock name, or item of the materials list
  double quantity = 0;
  std::optional<Length> length, width;
  bool operator==(const OnHand&) const = default;
};

struct Limits {
  std::optional<Pressure> base_load;
  std::optional<Mass> support_load;  // one leg or partition
  std::optional<Mass> lift;
  Duration margin;
  bool operator==(const Limits&) const = default;
};

struct StartDate {
  std::chrono::year_month_day day;
  std::optional<std::chrono::minutes> time;  // after local midnight
  bool operator==(const StartDate&) const = default;
};

struct Job {
  std::string name;
  std::optional<StartDate> date;
  std::optional<StartDate> ready_by;  // the first full use is wanted then
  Units units = Units::metric;
  std::string currency;
  std::vector<Slab> slabs;  // at least one
  Mix mix;
  std::vector<Additive> additives;
  double waste = 0.10;
  int spare_bags = 1;
  Forms forms;
  Crew crew;
  Site site;
  Finish finish;
  Open open;
  std::vector<OnHand> on_hand;
  std::map<std::string, double> prices;  // per pack, by item or stock
  double tax = 0;
  Limits limits;
  std::vector<Assumption> assumptions;  // heaviest first
  bool operator==(const Job&) const = default;
};

}  // namespace strikeoff
