// SPDX-License-Identifier: MIT
#include "hardening/maturity.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace strikeoff {
namespace {

constexpr Duration an_hour = hours(1), a_day = days(1);
constexpr std::size_t slots = 24;

}  // namespace

double nurse_saul_rate(Temperature temperature, Temperature reference, Temperature datum) {
  if (reference <= datum) {
    throw std::invalid_argument("the reference temperature is not over the datum");
  }
  return std::max(0.0, (temperature.in_c() - datum.in_c()) / (reference.in_c() - datum.in_c()));
}

double hardening_rate(Temperature air, Temperature label, MolarEnergy activation_energy) {
  if (air <= datum_temperature) return 0;
  const double rate = std::min(1.0, arrhenius_rate(air, label, activation_energy));
  // A mix whose label holds in frost has no such datum.
  if (label <= datum_temperature) return rate;
  return std::min(rate, nurse_saul_rate(air, label, datum_temperature));
}

Duration equivalent_age(const std::vector<AirSpell>& spells, Temperature reference,
                        MolarEnergy activation_energy) {
  Duration age;
  for (const AirSpell& spell : spells) {
    age += spell.time * arrhenius_rate(spell.temperature, reference, activation_energy);
  }
  return age;
}

AgeClock::AgeClock(const AirCycle& air, Duration start, Temperature label,
                   MolarEnergy activation_energy) {
  for (std::size_t hour = 0; hour < slots; ++hour) {
    rate_[hour] = hardening_rate(air.at[hour], label, activation_energy);
    a_day_ += an_hour * rate_[hour];
  }
  // The slot of an hour begins half an hour before it.
  start_ = seconds(std::fmod((start + an_hour * 0.5).si(), a_day.si()));
  if (start_ < Duration{}) start_ += a_day;
}

Duration AgeClock::equivalent(Duration age) const {
  if (age <= Duration{}) return {};
  const double whole = std::floor(age / a_day);
  Duration left = age - a_day * whole;
  Duration result = a_day_ * whole;
  double slot = std::floor(start_ / an_hour);
  Duration in_slot = an_hour * (slot + 1) - start_;
  while (left > Duration{}) {
    const Duration time = std::min(left, in_slot);
    result += time * rate_[static_cast<std::size_t>(slot) % slots];
    left -= time;
    slot += 1;
    in_slot = an_hour;
  }
  return result;
}

std::optional<Duration> AgeClock::reached(Duration equivalent) const {
  if (equivalent <= Duration{}) return Duration{};
  if (a_day_ <= Duration{} || equivalent > longest) return std::nullopt;
  const double whole = std::ceil(equivalent / a_day_) - 1;
  Duration result = a_day * whole;
  Duration left = equivalent - a_day_ * whole;
  double slot = std::floor(start_ / an_hour);
  Duration in_slot = an_hour * (slot + 1) - start_;
  // One slot more than a day has, for the day may begin within one.
  for (std::size_t i = 0; i <= slots; ++i) {
    const double rate = rate_[static_cast<std::size_t>(slot) % slots];
    if (in_slot * rate >= left) {
      result += left / rate;
      break;
    }
    left -= in_slot * rate;
    result += in_slot;
    slot += 1;
    in_slot = an_hour;
  }
  if (result > longest) return std::nullopt;
  return result;
}

std::optional<double> AgeClock::slowing() const {
  if (a_day_ <= Duration{}) return std::nullopt;
  return a_day / a_day_;
}

}  // namespace strikeoff
