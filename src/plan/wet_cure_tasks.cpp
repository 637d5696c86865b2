// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "core/format.h"
#include "plan/tasks.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

std::string water(const SitePlan& site, Units units) {
  return fmt::format("about {} of water in all, {}", show_roughly(site.cure_water, units),
                     show_buckets(site.cure_buckets, site.bucket, units));
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
                show(site.wet_cure), show_at_most(site.wet_every), water(site, job.units))
          : fmt::format(
                "Keep the top wet for {}, or as long as the bag's data sheet says: sprinkle "
                "when the surface is hard, sheet over it; where it lies bare, again every "
                "{} at the latest; {}",
                show(site.wet_cure), show_at_most(site.wet_every), water(site, job.units));
  Moment end;
  if (start) end = *start + wet_cure(job.mix);
  return tasks.add_after({after}, task, who_has(job.crew, Role::finish), start, end);
}

}  // namespace strikeoff
