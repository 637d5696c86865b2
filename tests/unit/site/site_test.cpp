// SPDX-License-Identifier: MIT
#include "site/site.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "core/weather.h"
#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "site/evaporation.h"
#include "site/humidity.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// A job in the air of the nomograph's example: 27 C, 50 %, 19 km/h.
Job nomograph_job() {
  Job job = potting_bench_job();
  job.site.air = Temperature::celsius(27);
  job.site.humidity = 0.5;
  job.site.wind = kilometres_per_hour(19);
  return job;
}

Plan with_mix_at(double c) {
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(c);
  return plan;
}

double rate(EvaporationRate evaporation) {
  return in_kilograms_per_m2_h(evaporation);
}

HourWeather hour(int time, double air, double humidity, double km_h) {
  return {std::chrono::hours(time), Temperature::celsius(air), humidity, kilometres_per_hour(km_h)};
}

std::optional<int> best_of(const SitePlan& site) {
  if (!site.best_start) return std::nullopt;
  return static_cast<int>(site.best_start->count() / 60);
}

/// A hot day; bags of their own temperature, so that the mix is the same all day.
Job hot_day() {
  Job job = potting_bench_job();
  job.site.hours = {hour(6, 16, 0.8, 2), hour(9, 24, 0.6, 8), hour(13, 34, 0.25, 14),
                    hour(16, 33, 0.3, 22), hour(20, 24, 0.5, 5)};
  job.site.bag_temperature = Temperature::celsius(24);
  return job;
}

}  // namespace

// Tc 31 C, Ta 27 C, 50 %, 19 km/h: 1.151719 kg/m2/h (Uno 1998, from memory).
TEST_CASE("the fresh top dries by the mix and the job's air", "[site]") {
  const SitePlan site = plan_site(nomograph_job(), with_mix_at(31), minutes(60));
  CHECK(rate(site.evaporation) == Approx(1.151719).epsilon(1e-6));
  CHECK(rate(site.evaporation_least) == Approx(0.6 * 1.151719));
  CHECK(rate(site.evaporation_most) == Approx(1.4 * 1.151719));
  CHECK(rate(site.evaporation_menzel) == Approx(1.190137).margin(0.005));
  CHECK(site.concrete == Temperature::celsius(31));
  CHECK_FALSE(site.worst_at);
  CHECK_FALSE(site.best_start);
  CHECK(site.hours.empty());
  // 0.1 mm at 1.4 x 1.151719 kg/m2/h: 3.72 min.
  CHECK(in_minutes(*site.skin) == Approx(60 * 0.1 / (1.4 * 1.151719)));
}

TEST_CASE("humidity that nobody gave is judged by the driest that is likely", "[site]") {
  Job job = nomograph_job();
  job.site.humidity_assumed = true;
  const SitePlan site = plan_site(job, with_mix_at(31), minutes(60));
  CHECK(site.humidity == 0.30);
  CHECK(site.humidity_assumed);
  // 5 (16807 - 0.3 x 13584.1) 23 / 10^6.
  CHECK(rate(site.evaporation) == Approx(1.46414).epsilon(1e-5));
  // The dew point is that of the usual air.
  CHECK(site.dew_point.in_c() == Approx(dew_point(Temperature::celsius(27), 0.5).in_c()));
  job.site.humidity = 0.2;
  CHECK(plan_site(job, with_mix_at(31), minutes(60)).humidity == 0.2);
}

TEST_CASE("a top that saturated air does not dry needs no wetting again", "[site]") {
  Job job = nomograph_job();
  job.site.humidity = 1;
  job.mix.strip_after = hours(24);
  const SitePlan site = plan_site(job, with_mix_at(20), minutes(60));
  CHECK(site.evaporation == EvaporationRate{});
  CHECK_FALSE(site.skin);
  CHECK_FALSE(site.water_at_most);
  for (const Wetting& wetting : site.wettings) CHECK_FALSE(wetting.every);
  CHECK(site.cure_water > Volume{});
}

TEST_CASE("the water that is said brings the rate just under the next limit", "[site]") {
  Job job = nomograph_job();
  job.site.bag_temperature = Temperature::celsius(31);
  for (const auto& [mix, limit] : {std::pair{30.0, 1.0}, std::pair{27.0, 0.5}}) {
    const Plan plan = with_mix_at(mix);
    const SitePlan site = plan_site(job, plan, minutes(60));
    CAPTURE(rate(site.evaporation));
    REQUIRE(site.water_at_most);
    const Mass water = plan.mix.water_per_bag * water_density;
    const Temperature cooled = fresh_mix_temperature(
        job.mix.bag, job.site.bag_temperature, water - site.ice, *site.water_at_most, site.ice);
    const double then = rate(evaporation_uno(cooled, site.air, site.humidity, site.wind));
    CHECK(then == Approx(limit).epsilon(1e-4));
    CHECK(then < limit);
  }
}

TEST_CASE("a mix colder than the air is also judged once it is as warm", "[site]") {
  // 45^2.5 = 13584.1: 5 (13584.1 - 6792.05) 23 / 10^6.
  const SitePlan cold = plan_site(nomograph_job(), with_mix_at(18), minutes(60));
  CHECK(rate(*cold.evaporation_warmed) == Approx(0.781086).epsilon(1e-5));
  CHECK(cold.evaporation < *cold.evaporation_warmed);
  CHECK_FALSE(plan_site(nomograph_job(), with_mix_at(27), minutes(60)).evaporation_warmed);
}

TEST_CASE("where neither water nor ice is enough none is said", "[site]") {
  Job job = nomograph_job();
  job.site.bag_temperature = Temperature::celsius(55);
  job.site.wind = kilometres_per_hour(60);
  CHECK_FALSE(plan_site(job, with_mix_at(33), minutes(60)).water_at_most);
  // Nor where there is no need.
  job.site.wind = {};
  CHECK_FALSE(plan_site(job, with_mix_at(28), minutes(60)).water_at_most);
}

TEST_CASE("the worst of the hours is that of every minute the top lies bare", "[site]") {
  Job job = hot_day();
  job.date = StartDate{std::chrono::year{2026} / 7 / 18, std::chrono::hours(11)};
  const Plan plan = with_mix_at(24);
  const SitePlan site = plan_site(job, plan, hours(3.5));
  double worst = 0;
  for (int minute = 0; minute <= 210; ++minute) {
    const HourWeather at = weather_at(job.site.hours, hours(11) + minutes(minute));
    worst = std::max(worst,
                     rate(evaporation_uno(Temperature::celsius(24), at.air, at.humidity, at.wind)));
  }
  CHECK(rate(site.evaporation) == Approx(worst).epsilon(2e-3));
  CHECK(rate(site.evaporation) <= worst + 1e-12);
  CHECK(site.worst_at >= std::chrono::hours(11));
  CHECK(*site.worst_at <= std::chrono::minutes(14 * 60 + 30));
  CHECK(site.warmest.in_c() == Approx(34));
}

TEST_CASE("without a known end the rest of the hours counts and no hour is best", "[site]") {
  Job job = hot_day();
  job.date = StartDate{std::chrono::year{2026} / 7 / 18, std::chrono::hours(7)};
  const SitePlan site = plan_site(job, with_mix_at(24), std::nullopt);
  CHECK(site.warmest.in_c() == Approx(34));
  CHECK_FALSE(site.best_start);
  CHECK(site.hours.size() == 15);  // 6 to 20
  CHECK_FALSE(site.hours.front().worst);
  CHECK_FALSE(site.hours.front().against.empty());
  // A start after the last hour still has that hour's air.
  job.date->time = std::chrono::hours(23);
  CHECK(plan_site(job, with_mix_at(24), std::nullopt).air.in_c() == Approx(24));
}

TEST_CASE("the best hour to begin has the least worst rate", "[site]") {
  const Job job = hot_day();
  const Plan plan = with_mix_at(24);
  const SitePlan site = plan_site(job, plan, hours(3));
  const Temperature mix =
      fresh_mix_temperature(job.mix.bag, job.site.bag_temperature,
                            plan.mix.water_per_bag * water_density, job.site.water_temperature);
  double best = 1e9;
  int best_hour = 0;
  for (int start = 6; start <= 17; ++start) {
    double worst = 0;
    for (int minute = 0; minute <= 180; ++minute) {
      const HourWeather at = weather_at(job.site.hours, hours(start) + minutes(minute));
      worst = std::max(worst,
                       rate(evaporation_uno(std::max(mix, at.air), at.air, at.humidity, at.wind)));
    }
    CHECK(rate(*site.hours.at(static_cast<std::size_t>(start - 6)).worst) ==
          Approx(worst).epsilon(2e-3));
    if (worst < best - 1e-9) {
      best = worst;
      best_hour = start;
    }
  }
  CHECK(best_of(site) == best_hour);
  CHECK_FALSE(site.hours.back().worst);
  CHECK(site.hours.back().against == "the hours end before the top is covered");
}

TEST_CASE("of equal hours the earliest is best", "[site]") {
  Job job = hot_day();
  job.site.hours = {hour(7, 20, 0.5, 5), hour(15, 20, 0.5, 5)};
  CHECK(best_of(plan_site(job, with_mix_at(24), hours(2))) == 7);
}

TEST_CASE("no hour of frost or of great heat is best", "[site]") {
  Job job = hot_day();
  const auto best = [&](double first, double last) {
    // The first hours are moist, so the drying alone would choose them.
    job.site.hours = {hour(6, first, 0.95, 0), hour(8, first, 0.95, 0), hour(10, last, 0.4, 5),
                      hour(14, last, 0.4, 5)};
    return best_of(plan_site(job, with_mix_at(24), hours(2)));
  };
  CHECK(best(5, 20) == 6);
  CHECK(best(4.9, 20) > 8);
  CHECK(best(35, 20) == 6);
  CHECK(best(35.1, 20) > 8);
  job.site.hours = {hour(6, 2, 0.5, 0), hour(12, 3, 0.5, 0)};
  const SitePlan cold = plan_site(job, with_mix_at(24), hours(2));
  CHECK_FALSE(cold.best_start);
  CHECK(cold.hours.front().against == "air under 41 F");
}

TEST_CASE("bags that lie in the air warm the mix of every hour with it", "[site]") {
  Job job = hot_day();
  const auto mix_at = [&](std::size_t i) {
    return plan_site(job, with_mix_at(24), hours(2)).hours.at(i).concrete.in_c();
  };
  CHECK(mix_at(0) == mix_at(7));
  job.site.bags_as_air = true;
  CHECK(mix_at(0) < mix_at(7));
  // 48 lb of bags at 34 C and 3.7 qt of water at 68 F: (0.22 x 21.77 x 34 + 3.502 x 20) /
  // (0.22 x 21.77 + 3.502) = 28.09 C.
  CHECK(mix_at(7) == Approx(28.09).margin(0.01));
}

TEST_CASE("a rapid mix cures an hour and warmer than the air and another a week", "[site]") {
  Job job = nomograph_job();
  job.mix.strip_after = hours(1);
  const SitePlan rapid = plan_site(job, with_mix_at(21), minutes(60));
  CHECK(rapid.wet_cure == hours(1));
  CHECK(rapid.cure_concrete.in_c() == Approx(37));
  CHECK(rapid.cure_cover == "sheet over the wet top");
  job.mix.strip_after = hours(24);
  const SitePlan slow = plan_site(job, with_mix_at(21), minutes(60));
  CHECK(slow.wet_cure == days(7));
  CHECK(slow.cure_concrete.in_c() == Approx(27));
  CHECK(slow.cure_cover == "sheet over damp cloth");
  CHECK(slow.cure_evaporation < rapid.cure_evaporation);
  // 78.25 x 26.25 in = 1.3252 m2; 5 (45^2.5 - 0.5 x 45^2.5) 23 / 10^6 = 0.781086; under the sheet
  // a tenth, at most 0.109352 kg/m2/h: 1.3252 (0.6 + 0.109352 x 168) = 25.14 L.
  CHECK(in_litres(slow.cure_water) == Approx(25.14).margin(0.02));
}

TEST_CASE("a cure is wetted as its cover asks, a rapid one where it lies bare", "[site]") {
  Job job = nomograph_job();
  job.mix.strip_after = hours(24);
  const auto plan = [&] { return plan_site(job, with_mix_at(21), minutes(60)); };
  // As above: 0.6 mm at 0.109352 kg/m2/h.
  CHECK(in_hours(plan().wet_every) == Approx(0.6 / 0.109352).epsilon(1e-4));
  job.site.wind = Speed{};
  job.site.humidity = 0.95;
  CHECK(plan().wettings.back().every > Duration{hours(24)});
  CHECK(plan().wet_every == hours(24));  // once a day whatever the air
  job = nomograph_job();
  job.mix.strip_after = hours(1);
  CHECK(plan().wet_every == plan().wettings.front().every);
  CHECK(plan().wet_every < hours(1));
}

TEST_CASE("the cure's water is counted in the crew's buckets or in usual ones", "[site]") {
  Job job = nomograph_job();
  const auto plan = [&] { return plan_site(job, with_mix_at(21), minutes(60)); };
  CHECK(plan().bucket == gallons(2.5));
  job.units = Units::metric;
  CHECK(in_litres(plan().bucket) == Approx(10));
  // A straight bucket of 200 mm, 300 mm high: 9.4248 L.
  job.crew.bucket = Bucket{Length::mm(200), Length::mm(200), Length::mm(300)};
  CHECK(in_litres(plan().bucket) == Approx(9.42478));
  // Tapered, 200 to 260 mm: pi 300/3 (100^2 + 100 x 130 + 130^2) = 12.535 L.
  job.crew.bucket->top = Length::mm(260);
  CHECK(in_litres(plan().bucket) == Approx(12.535).margin(0.001));
  CHECK(plan().cure_buckets == Approx(plan().cure_water / plan().bucket));
}
