// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "job/reader.h"
#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"

namespace strikeoff {

// The parts of `read_job`. Each reads one part of the file and returns it as well as it can; what
// is wrong goes to the reader, and the job is thrown away when anything did.

struct Context {
  Reader& reader;
  const Catalogue& catalogue;
  Units units;  // how assumed values are shown
  /// Of the form and the mix, which are read before the slabs; nothing when it is not known.
  std::optional<Length> strip_thickness = std::nullopt, aggregate = std::nullopt;
};

/// How heavy a default weighs: how much of the plan turns on it. The order is a judgement.
enum Weight : int {
  weight_unit_slip = 110,
  weight_panel = 100,
  weight_overhang = 96,
  weight_panel_overhang = 95,
  weight_mix = 90,
  weight_yield_water = 89,
  weight_mix_temperature = 88,
  weight_water = 85,
  weight_dose = 84,
  weight_waste = 80,
  weight_crew = 75,
  weight_bags_per_batch = 74,
  weight_times = 72,
  weight_usable = 70,
  weight_least_advance = 69,
  weight_air = 65,
  weight_wind = 64,
  weight_humidity = 63,
  weight_bag_temperature = 62,
  weight_water_temperature = 61,
  weight_activation_energy = 60,
  weight_margin = 58,
  weight_sun = 57,
  weight_strip_stock = 55,
  weight_bend_stock = 54,
  weight_kerf = 50,
  weight_opening = 48,
  weight_panel_gap = 46,
  weight_oversize = 44,
  weight_corner = 43,
  weight_end_trim = 42,
  weight_screws = 41,
  weight_reusable = 40,
  weight_spare_bags = 35,
  weight_sealer = 34,
  weight_sanding = 33,
  weight_prices = 30,
  weight_tax = 25,
  weight_currency = 20,
  weight_units = 10,
};

// --- goods: the same readers for the job and for the catalogue. The caller calls `finish`.

[[nodiscard]] Mix read_mix_facts(Object& mix);
[[nodiscard]] Stock read_stock_facts(Object& stock);
[[nodiscard]] Sealer read_sealer_facts(Object& sealer);
/// `basis` gives the values the job does not (a catalogue additive of that name).
[[nodiscard]] Additive read_additive_facts(Object& additive, const Additive& basis);

/// "us" or "metric".
[[nodiscard]] std::optional<Units> read_units_word(Reader& reader, const Node& node);
/// The first stiff entry marked for these units, or else the first. Precondition: there is an
/// entry.
[[nodiscard]] const Stock& default_stock(const std::vector<CatalogueEntry<Stock>>& entries,
                                         Units units);
/// The first entry that bends marked for these units, or else the first that bends, or nothing.
[[nodiscard]] const Stock* default_bend_stock(const std::vector<CatalogueEntry<Stock>>& entries,
                                              Units units);
/// "the catalogue's first sheet for metric jobs".
[[nodiscard]] std::string default_stock_reason(std::string_view what, Units units);

[[nodiscard]] Mix read_mix(Context& context, const Node& node);
/// Needs the mix (binder) already read.
[[nodiscard]] std::vector<Additive> read_additives(Context& context, const Node& node,
                                                   const Mix& mix);
/// Lists the water the program will choose where neither label nor job says so.
void assume_water(Context& context, const Mix& mix, const std::vector<Additive>& additives);

// --- slabs

struct Base {
  Polygon polygon;  // anticlockwise; empty when it could not be read
  std::vector<Side> sides;
  bool rectangle = false;
  std::optional<Misfit> closing, diagonal;  // as in `Slab`
  std::vector<Partition> partitions;
  std::vector<Point> legs;
  std::vector<Rectangle> gaps;
};

/// A length for each side, where the job gives one.
struct SideLength {
  std::optional<Length> length;
  bool named = false;   // given for this very side
  std::string pointer;  // of the value
};

/// One entry of a list of sides.
struct ListedSide {
  std::size_t index = 0;  // 0-based, of the base
  std::string pointer;    // of the entry
};

/// Needs `Context::strip_thickness` and `aggregate` for aprons.
[[nodiscard]] std::vector<Slab> read_slabs(Context& context, const Node& node);
[[nodiscard]] Base read_base(Context& context, const Node& node);
[[nodiscard]] std::vector<SideLength> read_side_lengths(Context& context, const Node& node,
                                                        const Base& base,
                                                        const Range<Length>& range);
/// Index of the side a list entry names ("back", "edge 3", 3), after reporting a wrong one.
[[nodiscard]] std::optional<std::size_t> read_side(Context& context, const Node& node,
                                                   const Base& base);
/// Each side once; wrong and repeated ones are reported and left out.
[[nodiscard]] std::vector<ListedSide> read_side_list(Context& context, const Node& node,
                                                     const Base& base);
/// What to say of a side that has no overhang, where something needs one; nothing when it has.
[[nodiscard]] std::optional<TextError> without_overhang(const Side& side, const char* code,
                                                        const char* why);
/// Need the base's outline.
void read_partitions(Reader& reader, const Node& node, Base& base);
void read_legs(Reader& reader, const Node& node, Base& base);
void read_gaps(Reader& reader, const Node& node, Base& base);
/// Sets `Side::apron` and the depth; needs the overhangs.
void read_apron(Context& context, const Node& node, const Base& base, Slab& slab);
/// Reports aprons that do not go together with the slab's shape; needs outline and corner cuts.
void check_apron(Context& context, const std::string& at, const Slab& slab);
/// How far a panel may run past the base where the inner strip of an apron ends it.
[[nodiscard]] std::optional<Length> most_panel_overhang(const Context& context, const Side& side);
/// Reads `panel` into the slab, whose sides, overhangs and support are known.
void read_panel(Context& context, Object& slab_object, const Base& base, Slab& slab,
                bool shape_is_good);
/// Reads `corner_treatment` into the slab, whose outline and panel are known.
void read_corner_cuts(Context& context, const Node& node, const Base& base, Slab& slab,
                      bool shape_is_good);
/// Needs everything else of the slab's shape.
void read_openings(Context& context, const Node& node, Slab& slab, bool shape_is_good);
/// Length and depth of a rectangle; `example` shows it.
[[nodiscard]] std::optional<std::pair<Length, Length>> read_rectangle_size(
    Reader& reader, const Node& node, const std::string& example);
void read_levels(Context& context, const Node& node, Slab& slab);
void read_fall(Context& context, const Node& node, const Base& base, Slab& slab);
/// Sets `Slab::reinforcement` and `Side::bracket`; needs the overhangs.
void read_reinforcement(Context& context, const Node& node, const Base& base, Slab& slab);
void read_brackets(Context& context, const Node& node, const Base& base, Slab& slab);
[[nodiscard]] std::optional<Point> read_point(Reader& reader, const Node& node);

// --- the rest

[[nodiscard]] Forms read_forms(Context& context, const Node& node);
/// The catalogue's bendable board where the job names none; needs the slabs.
void set_bend_stock(Context& context, Job& job);
/// These two note in `open` what is "auto".
[[nodiscard]] Crew read_crew(Context& context, const Node& node, Open& open);
[[nodiscard]] Site read_site(Context& context, const Node& node, const Mix& mix,
                             const std::optional<StartDate>& date, Open& open);
/// Air, humidity, wind, hours, sun, night, rain and protection. What only the hours say is taken
/// at the start.
void read_weather(Context& context, Object& site_object, Temperature usual_air,
                  const std::optional<StartDate>& date, Site& site);
/// Needs the slabs: what lies on the ground is not sealed unless the job says so.
[[nodiscard]] Finish read_finish(Context& context, const Node& node,
                                 const std::vector<Slab>& slabs);
[[nodiscard]] Limits read_limits(Context& context, const Node& node);
[[nodiscard]] std::optional<StartDate> read_date(Reader& reader, const Node& node);
/// "08:30" or "08:30:00", to the end; after midnight.
[[nodiscard]] std::optional<std::chrono::minutes> clock_time(std::string_view text);
void read_prices(Context& context, const Node& prices, Job& job);
void read_on_hand(Context& context, const Node& node, Job& job);

/// The entry with this id, or nothing after reporting it. `what` is "mix"; `command` the word after
/// `strikeoff list` that shows them.
template <class Item>
[[nodiscard]] const Item* find_in_catalogue(Reader& reader, const Node& node,
                                            const std::vector<CatalogueEntry<Item>>& entries,
                                            const std::string& what, const std::string& command);

inline constexpr Range<Length> any_length{Length::mm(1), Length::m(100),
                                          "1 mm (1/16 in) and 100 m (328 ft)"};
inline constexpr Range<Length> any_position{Length::m(-100), Length::m(100),
                                            "-100 m and 100 m (328 ft)"};
inline constexpr Range<Temperature> any_temperature{
    Temperature::celsius(-30), Temperature::celsius(60), "-30 C (-22 F) and 60 C (140 F)"};
inline constexpr Range<Percent> any_percent{{0}, {1}, "0 % and 100 %"};
inline constexpr Range<double> any_price{0, 1e6, "0 and 1000000"};
inline constexpr Range<Duration> short_time{Duration{}, hours(24), "0 min and 24 h"};
inline constexpr Range<Duration> long_time{seconds(1), days(1000), "1 s and 1000 d"};

}  // namespace strikeoff
