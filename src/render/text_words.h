// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "strikeoff/geometry.h"
#include "strikeoff/plan.h"

namespace strikeoff::text {

// Words the sections share.

/// A mark on the wet slab needs no tenths of a millimetre.
[[nodiscard]] Length on_tape(Length length, Units units);
/// "78 x 26 in", "1981 x 660 mm": the unit once.
[[nodiscard]] std::string size(Length a, Length b, Units units);
/// "78 x 26 in"; an outline that is no upright rectangle is given by the box around it:
/// "94 x 60 in over all".
[[nodiscard]] std::string size(const Polygon& outline, Units units);
/// "0 to 23 1/2 in".
[[nodiscard]] std::string range(Length from, Length to, Units units);
/// "1 bag", "2.5 bags".
[[nodiscard]] std::string bags(double number);
/// "1 dose (25 g)", "0.5 dose".
[[nodiscard]] std::string doses(double number,
                                const std::variant<std::monostate, Mass, Volume>& amount,
                                Units units);
/// Hours and minutes after the first water, and seconds when wanted: "+0:07:30". From two days on
/// in days: "+28 d".
[[nodiscard]] std::string stopwatch(Duration from_contact, bool with_seconds);
/// True when the time is not whole minutes, to the second.
[[nodiscard]] bool has_seconds(Duration from_contact);
/// The time of day that long after the start: "09:07:30"; empty when the job gives no time.
[[nodiscard]] std::string time_of_day(const std::optional<StartDate>& start, Duration from_contact,
                                      bool with_seconds);
/// "15.5 min, limit 12"; empty without a value, and for lengths, masses and other quantities
/// with a unit of one country: titles give those in the units of the plan.
[[nodiscard]] std::string found(const Check& check);
/// How the worst edge wait compares with what is usable.
[[nodiscard]] std::string edge_verdict(const PourPlan& pour);

}  // namespace strikeoff::text
