// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

/// Whatever the formulas say, it is looked at once a day (common practice, no source).
std::string how_often(const SitePlan& site, const std::string& cover) {
  const auto found = std::find_if(site.wettings.begin(), site.wettings.end(),
                                  [&](const Wetting& one) { return one.cover == cover; });
  if (found == site.wettings.end()) return "";
  return show(std::min(found->every.value_or(hours(24)), Duration{hours(24)}));
}

std::string water(const SitePlan& site, Units units) {
  const std::string buckets = show_number(site.cure_buckets, 1);
  return fmt::format("about {} of water in all, {} {} of {}", show_roughly(site.cure_water, units),
                     buckets, buckets == "1" ? "bucket" : "buckets",
                     show_roughly(site.bucket, units));
}

}  // namespace

std::string add_wet_cure(const Job& job, const Plan& plan, const std::string& after,
                         const Moment& start, TaskList& tasks) {
  tasks.begin_phase("wet cure");
  const SitePlan& site = plan.site;
  const std::string task =
      is_ordinary(job.mix)
          ? fmt::format(
                "Keep the top wet for {}: damp cloth under the sheet, at 50 F (10 C) or "
                "warmer; wet the cloth every {} at the latest; {}",
                show(site.wet_cure), how_often(site, "sheet over damp cloth"),
                water(site, job.units))
          : fmt::format(
                "Keep the top wet for {}, or as long as the bag's data sheet says: sprinkle "
                "when the surface is hard, sheet over it; where it lies bare, again every "
                "{} at the latest; {}",
                show(site.wet_cure), how_often(site, "bare"), water(site, job.units));
  Moment end;
  if (start) end = *start + wet_cure(job.mix);
  return tasks.add_after({after}, task, who_has(job.crew, Role::finish), start, end);
}

}  // namespace strikeoff
