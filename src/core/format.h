// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/quantity.h"

namespace strikeoff {

// Quantities as people read them, in the units of the plan. One place, so that every text,
// assumption and advice shows a value the same way.

/// "78 in", "2 1/2 in", "0 in": to the nearest 1/16 in, ties to even (NIST SP 811 B.7, from
/// memory), reduced. Metric: whole millimetres, one decimal where it is not whole to 0.05 mm.
[[nodiscard]] std::string show(Length length, Units units);
/// Inches as a fraction of `denominator`, without the unit: "7 5/16".
[[nodiscard]] std::string inch_fraction(Length length, int denominator);
[[nodiscard]] std::string show(Area area, Units units);               // "18.3 ft2", "1.70 m2"
[[nodiscard]] std::string show_concrete(Volume volume, Units units);  // "1.58 ft3", "44.6 L"
[[nodiscard]] std::string show_water(Volume volume,
                                     Units units);       // "3 1/2 qt", "2 qt 5 fl oz", "3.79 L"
[[nodiscard]] std::string show(Mass mass, Units units);  // "48 lb", "21.8 kg"
[[nodiscard]] std::string show(Temperature temperature, Units units);  // "70 F", "21 C"
/// The same, never rounded up; and never rounded down.
[[nodiscard]] std::string show_at_most(Temperature temperature, Units units);
[[nodiscard]] std::string show_at_least(Temperature temperature, Units units);
[[nodiscard]] std::string show(Pressure pressure, Units units);  // "20 psf", "0.96 kPa"
[[nodiscard]] std::string show(Speed speed, Units units);        // "5 mph", "8 km/h"
[[nodiscard]] std::string show(EvaporationRate rate,
                               Units units);  // "0.06 lb/ft2/h", "0.31 kg/m2/h"
/// Rough amounts of water: "12 L", "3.2 gal".
[[nodiscard]] std::string show_roughly(Volume volume, Units units);
/// Water by the bucket: "4.3 buckets of 10 L", "less than a bucket of 10 L".
[[nodiscard]] std::string show_buckets(double buckets, Volume each, Units units);
/// An estimate on its short side: whole minutes, from 10 min on 5 min, from 2 h on half hours.
[[nodiscard]] std::string show_at_most(Duration duration);
/// "45 s", "12 min", "7.5 min", "1 h 30 min", "28 d": units do not depend on the country.
[[nodiscard]] std::string show(Duration duration);
[[nodiscard]] std::string show_strength(Pressure strength, Units units);  // "2000 psi", "0.9 MPa"
/// "+1:05" h:min after the first water contact, "-0:45" before it, "+0:02:30" where it is not a
/// whole minute.
[[nodiscard]] std::string show_clock(Duration from_contact);
/// The same for what must be done by then: rounded down to the minute, the safe side.
[[nodiscard]] std::string show_deadline(Duration from_contact);
/// A plain number with at most `decimals`, trailing zeros dropped, never "-0".
[[nodiscard]] std::string show_number(double value, int decimals);
[[nodiscard]] std::string show_percent(double fraction);  // "10 %"
/// A side's name in a sentence: "the front", "edge 3".
[[nodiscard]] std::string the_side(const std::string& name);
/// Money with two decimals and the currency after it: "12.50 USD".
[[nodiscard]] std::string show_money(Money money, const std::string& currency);
/// "1 batch", "2 batches".
[[nodiscard]] std::string count(int n, const std::string& one, const std::string& many);
/// With its first letter a capital.
[[nodiscard]] std::string capital(std::string text);
/// The parts with `between` between two of them.
[[nodiscard]] std::string joined(const std::vector<std::string>& parts, std::string_view between);
/// "2026-05-09T09:00" (ISO 8601), or the day alone.
[[nodiscard]] std::string iso(const StartDate& start);
/// "2026-05-09 09:00" from the ISO form; seconds only where they are not 0.
[[nodiscard]] std::string readable(std::string_view iso);

}  // namespace strikeoff
