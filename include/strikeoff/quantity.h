// SPDX-License-Identifier: MIT
#pragma once

#include <compare>

namespace strikeoff {

/// A length. It is held in nanometres, in a double: every fraction of an inch a tape shows and
/// every decimal of a millimetre is a whole number of nanometres, so sums and comparisons of
/// measured lengths are exact (up to 9000 km), and lengths from trigonometry keep full precision.
class Length {
 public:
  constexpr Length() = default;
  [[nodiscard]] static constexpr Length nm(double value) { return Length(value); }
  [[nodiscard]] static constexpr Length mm(double value) { return Length(value * 1e6); }
  [[nodiscard]] static constexpr Length m(double value) { return Length(value * 1e9); }
  /// The inch is 25.4 mm exactly (NIST Handbook 44, appendix C).
  [[nodiscard]] static constexpr Length inches(double value) { return Length(value * 25.4e6); }

  [[nodiscard]] constexpr double in_nm() const { return nm_; }
  [[nodiscard]] constexpr double in_mm() const { return nm_ / 1e6; }
  [[nodiscard]] constexpr double in_m() const { return nm_ / 1e9; }
  [[nodiscard]] constexpr double in_in() const { return nm_ / 25.4e6; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.nm_ + b.nm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.nm_ - b.nm_); }
  friend constexpr Length operator-(Length a) { return Length(-a.nm_); }
  friend constexpr Length operator*(Length a, double k) { return Length(a.nm_ * k); }
  friend constexpr Length operator*(double k, Length a) { return Length(a.nm_ * k); }
  friend constexpr Length operator/(Length a, double k) { return Length(a.nm_ / k); }
  friend constexpr double operator/(Length a, Length b) { return a.nm_ / b.nm_; }
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }

 private:
  constexpr explicit Length(double nm) : nm_(nm) {}
  double nm_ = 0;
};

/// Any other quantity, one type per dimension, held in its SI unit. Quantities of one dimension
/// add and compare; two dimensions meet only in the products written below.
template <class Dimension>
class Quantity {
 public:
  constexpr Quantity() = default;
  [[nodiscard]] static constexpr Quantity from_si(double value) { return Quantity(value); }
  /// The value in the SI unit, for use inside one formula.
  [[nodiscard]] constexpr double si() const { return si_; }

  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.si_ + b.si_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.si_ - b.si_); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.si_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.si_ * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.si_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }
  constexpr Quantity& operator+=(Quantity b) { return *this = *this + b; }
  constexpr Quantity& operator-=(Quantity b) { return *this = *this - b; }

 private:
  constexpr explicit Quantity(double si) : si_(si) {}
  double si_ = 0;
};

using Area = Quantity<struct AreaDimension>;                    // m2
using Volume = Quantity<struct VolumeDimension>;                // m3
using Mass = Quantity<struct MassDimension>;                    // kg
using Duration = Quantity<struct DurationDimension>;            // s
using Density = Quantity<struct DensityDimension>;              // kg/m3
using Pressure = Quantity<struct PressureDimension>;            // Pa
using Force = Quantity<struct ForceDimension>;                  // N
using Speed = Quantity<struct SpeedDimension>;                  // m/s
using MolarEnergy = Quantity<struct MolarEnergyDimension>;      // J/mol
using Money = Quantity<struct MoneyDimension>;                  // the job's currency
using EvaporationRate = Quantity<struct EvaporationDimension>;  // kg/(m2 s)

/// A temperature: a point on a scale, so two of them do not add.
class Temperature {
 public:
  constexpr Temperature() = default;
  [[nodiscard]] static constexpr Temperature celsius(double value) { return Temperature(value); }
  [[nodiscard]] static constexpr Temperature fahrenheit(double value) {
    return Temperature((value - 32.0) / 1.8);
  }
  [[nodiscard]] constexpr double in_c() const { return celsius_; }
  [[nodiscard]] constexpr double in_f() const { return celsius_ * 1.8 + 32.0; }
  [[nodiscard]] constexpr double in_k() const { return celsius_ + 273.15; }
  friend constexpr auto operator<=>(Temperature, Temperature) = default;

 private:
  constexpr explicit Temperature(double celsius) : celsius_(celsius) {}
  double celsius_ = 0;
};

constexpr Area operator*(Length a, Length b) {
  return Area::from_si(a.in_m() * b.in_m());
}
constexpr Volume operator*(Area a, Length b) {
  return Volume::from_si(a.si() * b.in_m());
}
constexpr Length operator/(Volume v, Area a) {
  return Length::m(v.si() / a.si());
}
constexpr Mass operator*(Volume v, Density d) {
  return Mass::from_si(v.si() * d.si());
}
constexpr Density operator/(Mass m, Volume v) {
  return Density::from_si(m.si() / v.si());
}

// Units of the trade, at the edges only. Exact definitions: NIST Handbook 44, appendix C.
constexpr Area square_feet(double v) {
  return Area::from_si(v * 0.09290304);
}
constexpr double in_square_feet(Area a) {
  return a.si() / 0.09290304;
}
constexpr Volume litres(double v) {
  return Volume::from_si(v / 1000);
}
constexpr double in_litres(Volume v) {
  return v.si() * 1000;
}
constexpr Volume cubic_feet(double v) {
  return litres(v * 28.316846592);
}
constexpr double in_cubic_feet(Volume v) {
  return in_litres(v) / 28.316846592;
}
constexpr Volume cubic_yards(double v) {
  return litres(v * 764.554857984);
}
constexpr Volume gallons(double v) {
  return litres(v * 3.785411784);
}
constexpr Volume quarts(double v) {
  return litres(v * 0.946352946);
}
constexpr double in_quarts(Volume v) {
  return in_litres(v) / 0.946352946;
}
constexpr Volume fluid_ounces(double v) {
  return litres(v * 0.0295735295625);
}
constexpr double in_fluid_ounces(Volume v) {
  return in_litres(v) / 0.0295735295625;
}
constexpr Mass kilograms(double v) {
  return Mass::from_si(v);
}
constexpr Mass pounds(double v) {
  return Mass::from_si(v * 0.45359237);
}
constexpr double in_pounds(Mass m) {
  return m.si() / 0.45359237;
}
constexpr Mass ounces(double v) {
  return Mass::from_si(v * 0.028349523125);
}
constexpr double in_ounces(Mass m) {
  return m.si() / 0.028349523125;
}
constexpr Duration seconds(double v) {
  return Duration::from_si(v);
}
constexpr Duration minutes(double v) {
  return Duration::from_si(v * 60);
}
constexpr Duration hours(double v) {
  return Duration::from_si(v * 3600);
}
constexpr Duration days(double v) {
  return Duration::from_si(v * 86400);
}
constexpr double in_minutes(Duration d) {
  return d.si() / 60;
}
constexpr double in_hours(Duration d) {
  return d.si() / 3600;
}
constexpr double in_days(Duration d) {
  return d.si() / 86400;
}
constexpr Density kilograms_per_m3(double v) {
  return Density::from_si(v);
}
constexpr Density pounds_per_ft3(double v) {
  return Density::from_si(v * 0.45359237 / 0.028316846592);
}
constexpr double in_pounds_per_ft3(Density d) {
  return d.si() * 0.028316846592 / 0.45359237;
}
constexpr Pressure kilopascals(double v) {
  return Pressure::from_si(v * 1000);
}
constexpr double in_kilopascals(Pressure p) {
  return p.si() / 1000;
}
constexpr Pressure megapascals(double v) {
  return Pressure::from_si(v * 1e6);
}
constexpr double in_megapascals(Pressure p) {
  return p.si() / 1e6;
}
/// One pound-force is 0.45359237 kg x 9.80665 m/s2.
constexpr Pressure psi(double v) {
  return Pressure::from_si(v * 0.45359237 * 9.80665 / (0.0254 * 0.0254));
}
constexpr double in_psi(Pressure p) {
  return p / psi(1);
}
constexpr Pressure psf(double v) {
  return psi(v / 144);
}
constexpr double in_psf(Pressure p) {
  return in_psi(p) * 144;
}
constexpr Speed metres_per_second(double v) {
  return Speed::from_si(v);
}
constexpr Speed kilometres_per_hour(double v) {
  return Speed::from_si(v / 3.6);
}
constexpr Speed miles_per_hour(double v) {
  return Speed::from_si(v * 0.44704);
}
constexpr double in_miles_per_hour(Speed s) {
  return s.si() / 0.44704;
}
constexpr EvaporationRate kilograms_per_m2_h(double v) {
  return EvaporationRate::from_si(v / 3600);
}
constexpr double in_kilograms_per_m2_h(EvaporationRate rate) {
  return rate.si() * 3600;
}
constexpr MolarEnergy kilojoules_per_mole(double v) {
  return MolarEnergy::from_si(v * 1000);
}

/// Standard acceleration of gravity, m/s2 (CGPM 1901).
inline constexpr double standard_gravity = 9.80665;

}  // namespace strikeoff
