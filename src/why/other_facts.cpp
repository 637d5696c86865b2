// SPDX-License-Identifier: MIT
#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
std::span<const JobFact> site_facts() {
  static const JobFact facts[] = {
      {"/site/air", "C", [](const Job& job, Indices) { return plain(job.site.air); }},
      {"/site/bag_temperature", "C",
       [](const Job& job, Indices) { return plain(job.site.bag_temperature); }},
      {"/site/water_temperature", "C",
       [](const Job& job, Indices) { return plain(job.site.water_temperature); }},
      {"/site/humidity", "", [](const Job& job, Indices) { return plain(job.site.humidity); }},
      {"/site/wind", "km/h", [](const Job& job, Indices) { return plain(job.site.wind); }},
      {"/site/ice", "kg", [](const Job& job, Indices) { return plain(job.site.ice); }},
      {"/site/night", "C", [](const Job& job, Indices) { return plain(job.site.night); }},
      {"/site/rain", "", [](const Job& job, Indices) { return plain(job.site.rain); }},
      {"/site/sun", "", [](const Job& job, Indices) { return job.site.sun ? 1.0 : 0.0; }},
      {"/site/hours/*/air", "C",
       [](const Job& job, Indices at) { return plain(job.site.hours[at[0]].air); }},
      {"/site/hours/*/humidity", "",
       [](const Job& job, Indices at) { return plain(job.site.hours[at[0]].humidity); }},
      {"/site/hours/*/wind", "km/h",
       [](const Job& job, Indices at) { return plain(job.site.hours[at[0]].wind); }},
      {"/site/hours/*/time", "min",
       [](const Job& job, Indices at) {
         return static_cast<double>(job.site.hours[at[0]].time.count());
       }},
  };
  return facts;
}

std::span<const JobFact> other_facts() {
  static const JobFact facts[] = {
      {"/waste", "", [](const Job& job, Indices) { return plain(job.waste); }},
      {"/spare_bags", "", [](const Job& job, Indices) { return plain(job.spare_bags); }},
      {"/tax", "", [](const Job& job, Indices) { return plain(job.tax); }},
      {"/limits/base_load", "kPa",
       [](const Job& job, Indices) {
         return job.limits.base_load ? in_kilopascals(*job.limits.base_load) : not_given;
       }},
      {"/limits/lift", "kg", [](const Job& job, Indices) { return plain(job.limits.lift); }},
      {"/limits/margin", "min", [](const Job& job, Indices) { return plain(job.limits.margin); }},
      {"/finish/sealer/coats", "",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->coats) : not_given;
       }},
      {"/finish/sealer/covers", "m2",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->covers) : not_given;
       }},
      {"/finish/sealer/pack", "L",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->pack) : not_given;
       }},
      {"/finish/sealer/recoat", "min",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->recoat) : not_given;
       }},
      {"/forms/oversize", "mm", [](const Job& job, Indices) { return plain(job.forms.oversize); }},
      {"/forms/kerf", "mm", [](const Job& job, Indices) { return plain(job.forms.kerf); }},
      {"/forms/end_trim", "mm", [](const Job& job, Indices) { return plain(job.forms.end_trim); }},
      {"/forms/screw_spacing", "mm",
       [](const Job& job, Indices) { return plain(job.forms.screw_spacing); }},
      {"/forms/reusable/length", "mm",
       [](const Job& job, Indices) { return plain(job.forms.reusable.length); }},
      {"/forms/reusable/width", "mm",
       [](const Job& job, Indices) { return plain(job.forms.reusable.width); }},
      {"/forms/strip_stock/*/length", "mm",
       [](const Job& job, Indices at) { return plain(job.forms.strip_stock[at[0]].length); }},
      {"/forms/strip_stock/*/width", "mm",
       [](const Job& job, Indices at) { return plain(job.forms.strip_stock[at[0]].width); }},
      {"/forms/strip_stock/*/thickness", "mm",
       [](const Job& job, Indices at) { return plain(job.forms.strip_stock[at[0]].thickness); }},
      {"/finish/sealer/coats", "",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->coats) : not_given;
       }},
      {"/finish/sealer/covers", "m2",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->covers) : not_given;
       }},
      {"/finish/sealer/pack", "L",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->pack) : not_given;
       }},
      {"/finish/sealer/recoat", "min",
       [](const Job& job, Indices) {
         return job.finish.sealer ? plain(job.finish.sealer->recoat) : not_given;
       }},
  };
  return facts;
}

}  // namespace strikeoff
