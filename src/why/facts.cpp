// SPDX-License-Identifier: MIT
#include "why/facts.h"

#include <algorithm>
#include <map>

namespace strikeoff {
namespace {

std::string nameless(const Job& /*job*/, Indices /*at*/, std::size_t /*i*/) {
  return "";
}

}  // namespace

std::vector<const JobFact*> job_facts() {
  std::vector<const JobFact*> facts;
  for (const auto& table : {slab_facts(), mix_facts(), crew_facts(), site_facts(), other_facts()}) {
    for (const JobFact& fact : table) facts.push_back(&fact);
  }
  return facts;
}

std::span<const JobList> job_lists() {
  static const JobList lists[] = {
      {"/slabs", [](const Job& job, Indices) { return job.slabs.size(); },
       [](const Job& job, Indices, std::size_t i) { return job.slabs[i].name; }},
      {"/slabs/*/overhang",
       [](const Job& job, Indices at) { return job.slabs[at[0]].sides.size(); },
       [](const Job& job, Indices at, std::size_t i) { return job.slabs[at[0]].sides[i].name; }},
      {"/slabs/*/openings",
       [](const Job& job, Indices at) { return job.slabs[at[0]].openings.size(); },
       [](const Job& job, Indices at, std::size_t i) { return job.slabs[at[0]].openings[i].name; }},
      {"/slabs/*/levels", [](const Job& job, Indices at) { return job.slabs[at[0]].levels.size(); },
       nameless},
      {"/additives", [](const Job& job, Indices) { return job.additives.size(); },
       [](const Job& job, Indices, std::size_t i) { return job.additives[i].name; }},
      {"/mix/strength", [](const Job& job, Indices) { return job.mix.strength.size(); }, nameless},
      {"/mix/price_breaks", [](const Job& job, Indices) { return job.mix.price_breaks.size(); },
       nameless},
      {"/forms/strip_stock", [](const Job& job, Indices) { return job.forms.strip_stock.size(); },
       [](const Job& job, Indices, std::size_t i) { return job.forms.strip_stock[i].id; }},
      {"/site/hours", [](const Job& job, Indices) { return job.site.hours.size(); }, nameless},
  };
  return lists;
}

const JobFact* job_fact(std::string_view pattern) {
  static const std::map<std::string_view, const JobFact*> by_pattern = [] {
    std::map<std::string_view, const JobFact*> facts;
    for (const JobFact* fact : job_facts()) facts.emplace(fact->pattern, fact);
    return facts;
  }();
  const auto found = by_pattern.find(pattern);
  return found == by_pattern.end() ? nullptr : found->second;
}

const JobList* job_list(std::string_view pattern) {
  const auto lists = job_lists();
  const auto found = std::find_if(lists.begin(), lists.end(),
                                  [&](const JobList& list) { return list.pattern == pattern; });
  return found == lists.end() ? nullptr : &*found;
}

}  // namespace strikeoff
