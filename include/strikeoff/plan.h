// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

// The finished plan: everything a renderer prints stands here; renderers compute nothing.
// Fields are named as the keys of the plan file; units are in the types.

/// A cut-out of the slab: its edge in the base frame, and the rectangle it fits in.
struct OpeningPlan {
  Outline edge;
  Rectangle box;
  std::string name = {};
};

/// A backer panel in its place, in the base frame.
struct PanelPiece {
  std::string mark;
  Rectangle at;                      // as cut from the sheet
  std::vector<Rectangle> cuts = {};  // cut out for openings, from the piece's lower left corner
  Polygon outline = {};              // where the piece is then cut to the line; else empty
};

/// How thick the slab is somewhere, and where (base frame).
struct ThicknessAt {
  Length thickness;
  Point at;
};

/// How much of each kind of form work one slab needs.
struct FormQuantities {
  Length soffit;       // length of soffit strips
  Length edge;         // length of edge strips
  Length knock_out;    // length of knock-out strips
  Length isolation;    // length of walls the slab meets
  Area foam;           // of the inner faces of aprons
  Length seams;        // between panels
  Length loose_seams;  // of these, over no partition, where the job names partitions
  Length split_seams;  // lengths that through openings cut out of seams
  Length ledger;       // battens fixed to the base under soffits whose panel rim is too narrow
  std::vector<Length> ledger_pieces;  // the battens of `ledger`, one entry each
  Area panel;                         // of the panels, openings cut out
  Area formed;                        // of form faces the mix touches
  int splices = 0;                    // joints of spliced strips
  Length screw_spacing;               // of strips, at most
  int stakes = 0;                     // ground slabs
  Length stakes_apart;                // at most; 0 without stakes
  int props = 0;                      // under soffit panels
  Length props_apart;                 // at most; 0 without props
  int brackets = 0;                   // under overhangs that the job says are carried
};

/// What one leg or partition under the base carries.
struct Bearing {
  std::string on;  // "partition 2", "leg 1"
  Area area;       // of the slab that is nearest to it, openings left out
  Mass mass;       // of that part of the slab, hardened
  Mass pour_day;   // of it fresh, with the heaviest batch and the people who place it
};

/// An overhang as it bends down at the base's face.
struct Cantilever {
  std::string side;
  Length reach, depth;  // past the base's face; of the concrete there
  Length length;        // of the slab's edge along it
  Length width;         // of the slab that holds a person who leans on the edge
  bool corner = false;  // the side next to it hangs out too: their corner bends both ways
  Pressure own, apron;  // bending stress from its own weight; from an apron that hangs on it
  Pressure leaning;     // from a person who leans on the edge
  std::optional<Pressure> strength;   // in bending, of the hardened mix; nothing: not known
  std::optional<Duration> lean_from;  // from the first water; nothing: not known
  [[nodiscard]] Pressure stress() const { return own + apron + leaning; }
};

/// What the slab weighs on what is under it.
struct SlabLoads {
  Mass fresh;                       // as placed
  Mass batch;                       // the heaviest, still in its bucket
  int people = 0;                   // who place it
  Mass people_mass;                 // all of them
  Mass pour_day;                    // these three together
  Pressure pour_day_load;           // that on the base's area
  std::vector<Bearing> bearings;    // where the job names legs or partitions
  std::optional<Cantilever> worst;  // of the overhangs that no brackets carry
};

/// One side of the slab as it is formed; side k runs from corner k of `SlabPlan::base` to the next.
struct SidePlan {
  std::string name;
  bool wall = false, apron = false, bracket = false;
  Length thickness;                      // of the slab where it is thickest, without an apron
  Length overhang, panel_overhang;       // past the base's face
  Length edge_strip, soffit_strip;       // their height and width; 0 where there is none
  Length edge_drop;                      // of the edge strip's foot below the base's top
  std::string edge_marks, soffit_marks;  // of their pieces from the left: "E1", "E1, E3"
};

/// Bars of one length.
struct BarCut {
  std::string place;  // "from left to right", "beside sink"
  Length length;
  int number = 0;
};

/// What to cut of the steel that the job asks for.
struct SteelPlan {
  Length cover;              // asked, or assumed
  std::vector<BarCut> bars;  // of bars: both ways, then at openings
  Length bar_length;         // all of them
  Area mesh;                 // of a mesh, with its laps
  [[nodiscard]] bool none() const { return bars.empty() && mesh <= Area{}; }
};

/// Where to saw or tool joints in a slab on the ground.
struct ControlJoints {
  Length apart;                    // at most
  Length depth;                    // of the cut
  std::vector<Length> from_left;   // of the slab's box: joints from front to back
  std::vector<Length> from_front;  // joints from left to right
  [[nodiscard]] bool none() const { return from_left.empty() && from_front.empty(); }
};

struct SlabPlan {
  std::string name;
  Area area;      // outline
  Area top_area;  // outline less openings
  Length perimeter;
  Length edge_thickness;
  Length least_thickness;  // over the panel, where there is one, at its thinnest place
  Volume concrete;
  Volume panel_displacement;
  Volume level_correction;  // what a base out of level adds
  Volume fall_wedge;        // what a sloping top adds
  Volume apron;             // below the base's top
  Length base_low;    // the lowest place of the base under the slab, below its highest reading
  Point base_low_at;  // that place (base frame); the first corner on a level base
  ThicknessAt thinnest, thickest;
  Mass mass;           // hardened, from the fresh density
  Pressure base_load;  // slab weight on the base's area
  SlabLoads loads;
  bool on_ground = false;
  Polygon base;   // base frame, anticlockwise, from base point 1
  Polygon sharp;  // the outline before its corners are rounded or cut, side by side
  std::vector<SidePlan> sides;
  Length panel_thickness;  // 0 without a panel
  Length strip_thickness;  // of the form
  Length apron_depth;      // of the sides that have one
  SteelPlan steel;
  std::optional<ControlJoints> control_joints;  // on the ground
  Outline edge;     // base frame, anticlockwise, from the corner of base point 1
  Polygon outline;  // the same, arcs drawn by chords within 0.05 mm
  Polygon panel;    // area to cover; empty without a panel
  std::vector<OpeningPlan> openings;
  std::vector<PanelPiece> panels;
  FormQuantities forms;
};

struct DoseTotal {
  std::string name;
  AdditiveKind kind = AdditiveKind::retarder;
  double per_bag = 0;  // doses; of a tapered retarder the first batch's, the most
  double total = 0;    // doses, whole pour
  std::variant<std::monostate, Mass, Volume> amount_per_bag;
  bool falls = false;  // from batch to batch
};

struct MixPlan {
  std::string name;
  Volume concrete;  // net
  Volume waste;
  Volume yield;  // of one bag, at the water in use
  double bags_exact = 0;
  int bags = 0;        // opened
  int spare_bags = 0;  // bought beside, kept closed
  Volume surplus;
  Volume water_per_bag;
  Volume water_total;
  Mass ice_per_bag;  // part of the water
  std::optional<Temperature> water_temperature;  // asked or chosen; nothing: as it comes
  Density fresh_density;
  std::vector<DoseTotal> doses;
};

struct BatchDose {
  std::string name;
  double doses = 0;
  std::variant<std::monostate, Mass, Volume> amount;
};

/// Part of one slab that one batch fills.
struct Zone {
  std::string slab;
  Polygon outline;  // base frame, anticlockwise, no corner twice
  int lift = 1;     // from the bottom; thick slabs are filled in several
};

/// Where a joint ends, for a tape: "on the front, 230 mm from the left", or so far in from there.
struct JointEnd {
  std::string on, from;  // "the front", "edge 3", "sink's left"
  Length away;           // along `on`, from its corner with `from`
  Length inward;         // square to `on`, into the slab; 0 on its edge
};

/// Where two batches meet.
struct Joint {
  int first = 0, second = 0;  // batch numbers, first < second
  Length length;
  std::string slab;
  Polygon line;                     // from end to end (base frame); empty between lifts
  std::vector<JointEnd> ends = {};  // both, of the line
  Duration wait;                    // from the first one's contact until the second is placed
};

/// At how many places a slab grows: at one front; at two, batches going to them in turn; at two
/// that share each batch.
enum class Fronts { one, in_turn, shared };

/// How the pour crosses one slab.
struct Sweep {
  std::string slab;
  std::string from;  // "the left side", "edge 3"
  std::string towards;
  int lifts = 1;
  Fronts fronts = Fronts::one;
  int cells = 1;  // side by side in a row of the front, at most
};

struct Batch {
  int number = 1;
  double bags = 1;
  Mass dry;
  Volume water;                       // poured in, without the ice
  Mass water_mass;                    // the same on a scale
  Mass ice;                           // crushed, part of the batch's water
  std::optional<Length> bucket_mark;  // above the bucket's inside bottom
  int bucket_fills = 1;
  std::vector<BatchDose> doses;
  Volume volume;  // bags x yield
  Volume zone;    // its share of the net volume
  int mixer = 1;
  Duration loading, emptied;  // the mixer is taken from the one until the other
  Duration contact, place_start, place_end;
  std::vector<int> neighbours;
  Duration edge_wait;  // contact until its last neighbour is placed; 0 for the last batch
  std::optional<Duration> meet_by;  // its later neighbours must be placed by then: contact + usable
  Duration longer;  // it stays workable so much longer than PourPlan::working_time: tapered doses
  std::vector<Zone> zones;
  Length front;    // the wet edge once this batch is placed
  Length advance;  // how far the front moves, on average
};

/// What one person does with one batch: mixing from the first bag into the mixer until another
/// takes the batch over, carrying from tipping out until it is where it is placed, or placing.
struct PersonWork {
  int person = 1;  // in the order of the job
  Role role = Role::mix;
  int batch = 1;
  Duration start, end;
};

/// A value the job left open, and what the plan took.
struct SettledValue {
  std::string path;    // JSON Pointer of the value
  std::string value;   // as a person reads it
  std::string reason;  // one sentence
};

/// One change to the pour and what comes of it.
struct Remedy {
  std::string what;                // one sentence
  bool works = false;              // with this change alone the pour works
  std::optional<Duration> margin;  // then: usable less the longest wait
  std::optional<Money> cost;       // more than today; negative: less
};

struct PourPlan {
  int batches = 0;
  Duration takt;
  std::string bottleneck;
  Duration lead;
  int gap = 0;
  Duration edge_wait_max;
  bool wait_is_least = false;  // no timetable of this crew has a shorter one
  Temperature mix_temperature;
  double temperature_factor = 1;
  /// Of the last batch, where doses are tapered; nothing: the bag does not say.
  std::optional<Duration> working_time;
  std::optional<Duration> usable;
  std::optional<Duration> margin;
  Duration end;  // last batch placed
  Length wet_edge_max;
  Length joint_length;
  bool feasible = false;
  std::vector<Joint> joints;
  std::vector<Joint> too_short;  // contacts too short to be joints: nobody need wait for them
  bool in_cells = false;         // some front is filled cell by cell, not in ribbons across it
  std::optional<Length> narrowest;  // of the ribbons and rows, what batches leave over included
  std::vector<PersonWork> work;       // batch by batch; none where someone is missing
  std::vector<Sweep> sweeps;          // of each slab
  std::string chain;                  // what makes the worst joint wait as long as it does
  double retarder_per_bag = 0;        // doses in use, all retarders
  std::string retarder_reason;        // why that dose; empty without a retarder
  std::string water_rule;             // when water goes in, as one sentence
  std::string smallest_crew;          // the fewest people that work, as one sentence
  std::vector<SettledValue> choices;  // for what the job left open
  std::vector<Remedy> remedies;       // for a pour that does not work: the easiest first, at most 6
  std::vector<Remedy> changes;        // of one that does: what one more person or mixer would bring
};

/// The fresh top in the air of one full hour.
struct HourPlan {
  HourWeather weather;   // on a straight line between the hours of the job; humidity as judged
  Temperature concrete;  // of fresh mix of that hour
  EvaporationRate evaporation;  // from it
  /// Of a pour begun then, the top as warm as the air where that is warmer; nothing: not known.
  std::optional<EvaporationRate> worst;
  std::string against;  // why not to begin then; empty: it can be
};

/// How long a wet top stays wet under what covers it.
struct Wetting {
  std::string cover;
  Length film;                    // of water that it holds
  EvaporationRate evaporation;    // through it
  std::optional<Duration> every;  // nothing: the air takes no water
};

/// The air over the fresh slab, and the water that curing takes.
struct SitePlan {
  Temperature concrete;  // of the fresh top: the mix's
  Temperature air;       // this and the next two where the rate below is at its worst
  double humidity = 0;   // where the job does not say: the driest that is likely
  Speed wind;
  bool humidity_assumed = false;
  std::optional<std::chrono::minutes> worst_at;  // after midnight; with hours of the job only
  std::optional<Duration> covered;  // the top lies bare from the first water until then, if known
  Temperature dew_point;            // while it does, the highest, at the humidity of the job
  Temperature warmest;              // air while it does
  EvaporationRate evaporation;      // while it does, at its worst
  EvaporationRate evaporation_least, evaporation_most;  // the estimate's band
  EvaporationRate evaporation_menzel;                   // the same by another formula
  /// Its worst once the top is as warm as the air; nothing where that is not warmer than the mix.
  std::optional<EvaporationRate> evaporation_warmed;
  std::optional<Duration> skin;  // a bare edge skins over so soon; nothing: it does not dry
  /// Mixing water no warmer than this brings the rate under the next lower limit, with `ice` in
  /// each bag's water where that is not nothing; nothing: no need, or not by water and ice alone.
  std::optional<Temperature> water_at_most;
  Mass ice;
  Temperature cure_concrete;         // of the top while it is kept wet
  EvaporationRate cure_evaporation;  // from it, bare and wet
  std::vector<Wetting> wettings;
  std::string cure_cover;  // of these, the one that the schedule asks for
  Duration wet_cure;       // how long the top is kept wet
  Duration wet_every;      // and looked at so often at least: as the cover asks, and once a day
  Volume cure_water;       // that takes so much under this cover
  Volume bucket;           // what one holds
  double cure_buckets = 0;
  std::vector<HourPlan> hours;
  std::optional<std::chrono::minutes> best_start;  // after midnight
};

/// Strength at one age since the end of the pour; `equivalent` is the age at the label's
/// temperature.
struct StrengthPoint {
  Duration age, equivalent;
  Pressure strength;
};

/// The strength to expect when something begins, or after some days.
struct ExpectedStrength {
  std::string when;  // "strip", "3 d"
  StrengthPoint point;
};

/// When a step of the later work may begin: the later of what the bag says and of a strength. All
/// times are from the first water.
struct Milestone {
  std::string step;                  // "strip", "props", "sand", "seal", "light use", "full use"
  std::optional<Duration> label;     // by the bag
  std::optional<Pressure> strength;  // that is needed
  std::optional<Duration> strong;    // when it is reached, where a curve tells
  std::optional<Duration> from;      // the later of the two; nothing: not known
  std::string reason;                // one sentence without a full stop
};

/// How the slab hardens in the air it lies in.
struct HardeningPlan {
  Temperature coldest, warmest, mean;  // air of a day and a night
  /// A day and a night are so many times less than at the label's temperature, at least 1; nothing:
  /// it never hardens in this air.
  std::optional<double> slowing;
  std::string curve;  // "hyperbolic" or "exponential" in the age, "steps"; empty: none is known
  std::optional<Pressure> ultimate;        // of that curve
  std::vector<StrengthPoint> strength;     // rising ages; of steps the bag's points
  std::vector<ExpectedStrength> expected;  // where a curve tells
  std::vector<Milestone> milestones;
  /// The latest start that lets the first full use begin by the job's `ready_by`, local ISO 8601.
  std::optional<std::string> start_by;
};

/// The milestone of that step; nothing where the plan has none.
[[nodiscard]] const Milestone* milestone(const HardeningPlan& plan, std::string_view step);

/// One kind of lift, done again and again through the pour, by the NIOSH equation.
struct LiftPlan {
  std::string name;       // "bag", "batch"
  Mass mass;              // a person
  int sharing = 1;        // people between whom all of them are shared
  Length out;             // hands before the ankles
  Length from;            // height of the hands as the lift begins
  Length by;              // the hands move so far up
  double per_minute = 0;  // a person
  Duration lasting;
  // The equation's multipliers, 0 to 1.
  double horizontal = 1, vertical = 1, distance = 1, frequency = 1, coupling = 1;
  Mass recommended;             // weight limit
  std::optional<double> index;  // mass over that; nothing: too often for any load
  /// The fewest equal parts, lifted one after the other, that keep each below the limit (the job's
  /// own, where stricter); nothing: no number does.
  std::optional<int> parts;
};

/// What one person lifts over the day, each thing once.
struct PersonLoad {
  std::string name;
  Mass bags_in;   // from where they were unloaded: shared by all
  Mass to_mixer;  // bags; and the water
  Mass water;
  Mass batches;  // from the mixer to the form
  Mass mass;     // in all
};

struct HandlingPlan {
  std::vector<LiftPlan> lifts;
  std::vector<PersonLoad> people;
};

/// One grit, over top and visible edges once.
struct SandingPass {
  int grit = 0;
  Area area;
  Duration work;  // an estimate, one person
  int discs = 0;
};

/// What is done to the slab once it is hard.
struct FinishPlan {
  Area top, edges;  // that are sanded and sealed; edges: the visible ones
  std::vector<SandingPass> sanding;
  bool fill_pits = false;
  std::string sealer;  // its name; empty: none
  int coats = 0;
  Area sealed;                     // by each coat
  std::optional<Duration> recoat;  // least wait between two; nothing: the label is silent
  Duration coating;                // work on one, an estimate, one person
  Volume sealer_volume;            // in all, with what is lost
};

struct Part {
  std::string mark;
  std::string slab;
  std::string role;      // contract's words: "soffit strip", "edge strip", …
  std::string stock;     // Stock::id it is cut from; empty: bought by length or made on site
  Length width, length;  // 0 where they are found on site
  int quantity = 1;
  double left_cut_deg = 0, right_cut_deg = 0;
  std::string place;  // where it goes: "front, back", "front (piece 1 of 2 from the left)"
  std::optional<Length> height = std::nullopt;  // of a block
};

struct Piece {
  std::string mark;
  Length length;
  /// Where it is narrower than its strip: ripped to this after the crosscut.
  std::optional<Length> width = std::nullopt;
};

struct Strip {
  Length width;
  std::vector<Piece> pieces;
  Length left_over;
};

/// What is left of a board and can be used again; the length is along the grain.
struct LeftOver {
  Length length, width;
  bool operator==(const LeftOver&) const = default;
};

struct Board {
  std::string stock;
  bool on_hand = false;
  Length length, width;
  std::vector<Strip> strips;
  Length left_over_width;                // of the board, full length
  std::vector<LeftOver> left_over = {};  // re-usable ones, largest first
};

struct SheetPiece {
  std::string mark;
  Rectangle at;  // on the sheet, from its lower left corner
};

/// One pass of the saw, from side to side of the sheet or of a part of it. Parts are strips of
/// several pieces ("strip 2"), or pieces by their mark, which may still be too large.
struct SheetCut {
  int stage = 1;               // the direction changes from stage to stage
  bool along_length = true;    // the blade runs along the sheet's length, else along its width
  std::string from;            // the part that is cut; empty: the sheet
  Length fence;                // width of what is cut off
  std::string off, rest = "";  // that; and what remains, if it is used without a further cut
};

struct Sheet {
  std::string stock;
  bool on_hand = false;
  Length length, width;
  std::vector<SheetPiece> pieces;
  std::vector<Rectangle> left_over = {};  // re-usable ones, largest first
  std::vector<SheetCut> cuts = {};        // in the order of the saw
  int stages = 0;                         // of the cuts: 1 strips, 2 and crosscuts, 3 and rips
};

struct StockTotal {
  std::string stock;
  int used = 0;     // boards of that stock in the plan
  int on_hand = 0;  // of these, on hand
  int buy = 0;
  int bound = 0;        // no plan uses fewer
  bool proven = false;  // used meets the bound
  int buy_bound = 0;    // no plan buys fewer of it; 0 where not known
};

struct CutList {
  std::vector<Part> parts;
  std::vector<Board> boards;
  std::vector<Sheet> sheets;
  std::vector<StockTotal> totals;
  std::vector<std::string> unplaced;  // marks of parts that fit no stock or have no room
  /// No plan buys the placed parts for less; nothing when no stock that must be bought has a price.
  std::optional<Money> cost_bound;
  std::optional<Money> cost;       // of the stock to buy; nothing when some has no price
  std::optional<double> cost_gap;  // what cost is over the bound, as a share of it, if known
  Length kerf;                     // of the saw
  Length end_trim;                 // squared off both ends of every board first
  Reusable reusable;               // the least left-over listed
};

struct Material {
  std::string item;
  std::string stock;  // catalogue id or inline name
  double needed = 0;  // in `unit`
  std::string unit;
  double on_hand = 0;          // in `unit`
  int packs = 0;               // to buy
  std::string pack;            // "box of 100 screws"
  std::optional<Money> price;  // per pack at the number bought
  std::optional<Money> cost;
  std::string basis;  // how `needed` came about
  std::string note;   // "10 cost less than 9"
};

struct CostLine {
  std::string item;
  int packs = 0;
  Money price, total;
};

struct Cost {
  std::vector<CostLine> lines;
  Money subtotal, tax, total;
  std::string currency;
  std::vector<std::string> unpriced;  // items without a price
};

struct Task {
  std::string phase;
  std::string task;
  std::string who;
  // From the first water contact, negative before it; nothing where the label is silent.
  std::optional<Duration> start, end;
  std::optional<std::string> start_local, end_local;  // ISO 8601, where the job has a start time
  std::vector<std::string> after;                     // tasks that must be done first
  int batch = 0;                                      // that it is all about; 0: none, or several
};

enum class Level { ok, caution, stop };

struct Check {
  std::string code;
  Level level = Level::ok;
  std::string title;
  std::optional<double> value, limit;
  std::string unit;
  std::string advice;
  std::string basis;
  std::string about = {};  // the slab, additive or lift it is about; empty: the whole job
};

struct Plan {
  std::string name;
  std::optional<StartDate> date;
  Units units = Units::metric;
  std::string currency;
  std::vector<Assumption> assumptions;
  std::vector<SlabPlan> slabs;
  MixPlan mix;
  std::vector<Batch> batches;
  PourPlan pour;
  SitePlan site;
  HardeningPlan hardening;
  HandlingPlan handling;
  FinishPlan finish;
  CutList cut_list;
  std::vector<Material> materials;
  std::vector<std::string> also_ready;  // tools and clothes, not counted or priced
  Cost cost;
  std::vector<Task> schedule;  // the last one is the first full use
  std::vector<Check> checks;
};

/// True when something is at `stop`: the plan as given would fail or hurt someone.
[[nodiscard]] bool has_stop(const Plan& plan);

}  // namespace strikeoff
