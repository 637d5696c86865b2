// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "strikeoff/quantity.h"

namespace strikeoff {

/// Why a text could not be read, in words for its author.
struct TextError {
  std::string code;     // "not-a-length", "no-unit"
  std::string message;  // lower case, one sentence, no full stop
  std::string help;     // how to write it right; may be empty
};

template <class T>
using Parsed = std::variant<T, TextError>;

/// A share written as a percent; 10 % is 0.10.
struct Percent {
  double fraction = 0;
};

enum class Dimension {
  length,
  area,
  volume,
  mass,
  temperature,
  duration,
  pressure,
  speed,
  density,
  energy,
  percent
};

template <class T>
inline constexpr Dimension dimension_of = Dimension::percent;
template <>
inline constexpr Dimension dimension_of<Length> = Dimension::length;
template <>
inline constexpr Dimension dimension_of<Area> = Dimension::area;
template <>
inline constexpr Dimension dimension_of<Volume> = Dimension::volume;
template <>
inline constexpr Dimension dimension_of<Mass> = Dimension::mass;
template <>
inline constexpr Dimension dimension_of<Temperature> = Dimension::temperature;
template <>
inline constexpr Dimension dimension_of<Duration> = Dimension::duration;
template <>
inline constexpr Dimension dimension_of<Pressure> = Dimension::pressure;
template <>
inline constexpr Dimension dimension_of<Speed> = Dimension::speed;
template <>
inline constexpr Dimension dimension_of<Density> = Dimension::density;
template <>
inline constexpr Dimension dimension_of<MolarEnergy> = Dimension::energy;

/// A quantity as a person writes it: "7 ft 10 1/2 in", "7' 10½\"", "1 h 30 min", "68 °F", "10 %".
/// T is a strong type or Percent. Lengths come out exact to 1/1024 nm. Any sign and size is
/// read; the caller knows the limits.
template <class T>
[[nodiscard]] Parsed<T> parse_quantity(std::string_view text);

/// The dimension with its article: "a length".
[[nodiscard]] std::string a_quantity(Dimension dimension);
/// The word code of a value that is no such quantity: "not-a-length".
[[nodiscard]] std::string not_a_quantity(Dimension dimension);
/// The error of a plain number where a quantity is needed; shows it with units.
[[nodiscard]] TextError bare_number(Dimension dimension, double number);
/// How such a quantity is written, with an example.
[[nodiscard]] std::string how_to_write(Dimension dimension);

/// The text in double quotes for a message: control characters blanked, cut after 60 characters.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace strikeoff
