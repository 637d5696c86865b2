// SPDX-License-Identifier: MIT
#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
std::span<const JobFact> slab_facts() {
  static const JobFact facts[] = {
      {"/slabs/*/thickness", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].thickness); }},
      {"/slabs/*/base", "m2",
       [](const Job& job, Indices at) { return plain(signed_area(job.slabs[at[0]].base)); }},
      {"/slabs/*/density", "kg/m3",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].density); }},
      {"/slabs/*/panel/stock/length", "mm",
       [](const Job& job, Indices at) {
         return job.slabs[at[0]].panel ? plain(job.slabs[at[0]].panel->length) : not_given;
       }},
      {"/slabs/*/panel/stock/width", "mm",
       [](const Job& job, Indices at) {
         return job.slabs[at[0]].panel ? plain(job.slabs[at[0]].panel->width) : not_given;
       }},
      {"/slabs/*/panel/stock/thickness", "mm",
       [](const Job& job, Indices at) {
         return job.slabs[at[0]].panel ? plain(job.slabs[at[0]].panel->thickness) : not_given;
       }},
      {"/slabs/*/panel/stock/gap", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].panel_gap); }},
      {"/slabs/*/apron/depth", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].apron_depth); }},
      {"/slabs/*/fall/percent", "",
       [](const Job& job, Indices at) {
         return job.slabs[at[0]].fall ? job.slabs[at[0]].fall->slope : not_given;
       }},
      {"/slabs/*/reinforcement/diameter", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].reinforcement.diameter); }},
      {"/slabs/*/reinforcement/spacing", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].reinforcement.spacing); }},
      {"/slabs/*/reinforcement/cover", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].reinforcement.cover); }},
      {"/slabs/*/overhang/*", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].sides[at[1]].overhang); }},
      {"/slabs/*/openings/*/rectangle/length", "mm",
       [](const Job& job, Indices at) {
         return plain(job.slabs[at[0]].openings[at[1]].at.length);
       }},
      {"/slabs/*/openings/*/rectangle/depth", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].openings[at[1]].at.depth); }},
      {"/slabs/*/levels/*/low", "mm",
       [](const Job& job, Indices at) { return plain(job.slabs[at[0]].levels[at[1]].low); }},
  };
  return facts;
}

}  // namespace strikeoff
