// SPDX-License-Identifier: MIT
#include <algorithm>

#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
namespace {

double people(const Job& job, Role role) {
  return static_cast<double>(std::count_if(
      job.crew.people.begin(), job.crew.people.end(), [&](const std::vector<Role>& person) {
        return std::find(person.begin(), person.end(), role) != person.end();
      }));
}

}  // namespace

std::span<const JobFact> crew_facts() {
  static const JobFact facts[] = {
      {"/crew/mixers", "", [](const Job& job, Indices) { return plain(job.crew.mixers); }},
      {"/crew/bags_per_batch", "",
       [](const Job& job, Indices) { return plain(job.crew.bags_per_batch); }},
      {"/crew/mixer_capacity", "L",
       [](const Job& job, Indices) { return plain(job.crew.mixer_capacity); }},
      {"/crew/usable", "", [](const Job& job, Indices) { return plain(job.crew.usable); }},
      {"/crew/pour_within", "min",
       [](const Job& job, Indices) { return plain(job.crew.pour_within); }},
      {"/crew/mixing", "", [](const Job& job, Indices) { return people(job, Role::mix); }},
      {"/crew/carrying", "", [](const Job& job, Indices) { return people(job, Role::carry); }},
      {"/crew/placing", "", [](const Job& job, Indices) { return people(job, Role::place); }},
      {"/crew/finishing", "", [](const Job& job, Indices) { return people(job, Role::finish); }},
      {"/crew/times/load", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.load.usual); }},
      {"/crew/times/mix", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.mix.usual); }},
      {"/crew/times/discharge", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.discharge.usual); }},
      {"/crew/times/reset", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.reset.usual); }},
      {"/crew/times/carry", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.carry.usual); }},
      {"/crew/times/return", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.back.usual); }},
      {"/crew/times/place", "min",
       [](const Job& job, Indices) { return plain(job.crew.times.place.usual); }},
      {"/crew/bucket/bottom", "mm",
       [](const Job& job, Indices) {
         return job.crew.bucket ? plain(job.crew.bucket->bottom) : not_given;
       }},
      {"/crew/bucket/top", "mm",
       [](const Job& job, Indices) {
         return job.crew.bucket ? plain(job.crew.bucket->top) : not_given;
       }},
      {"/crew/bucket/height", "mm",
       [](const Job& job, Indices) {
         return job.crew.bucket ? plain(job.crew.bucket->height) : not_given;
       }},
  };
  return facts;
}

}  // namespace strikeoff
