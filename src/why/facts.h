// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

// The numbers of a job, by the JSON Pointer that the job file has them under. One slab given as
// "slabs": [...] is /slabs/0; a time given as {usual, bad} is its usual one.

using Indices = std::span<const std::size_t>;

/// One number of every job, or of every element of a list; `*` in the pattern is an index.
struct JobFact {
  std::string_view pattern;
  std::string_view unit;                        // "mm", "kg", "L", "C", "min"; empty: count, share
  double (*value)(const Job& job, Indices at);  // NaN: the job does not say
};

/// A list of a job that facts are in.
struct JobList {
  std::string_view pattern;
  std::size_t (*size)(const Job& job, Indices at);
  std::string (*name)(const Job& job, Indices at, std::size_t i);  // of an element
};

[[nodiscard]] std::span<const JobFact> slab_facts();
[[nodiscard]] std::span<const JobFact> mix_facts();
[[nodiscard]] std::span<const JobFact> crew_facts();
[[nodiscard]] std::span<const JobFact> site_facts();
[[nodiscard]] std::span<const JobFact> other_facts();

/// Every fact of the tables above.
[[nodiscard]] std::vector<const JobFact*> job_facts();
[[nodiscard]] std::span<const JobList> job_lists();

/// The fact, or the list, with this pattern; null where there is none.
[[nodiscard]] const JobFact* job_fact(std::string_view pattern);
[[nodiscard]] const JobList* job_list(std::string_view pattern);

}  // namespace strikeoff
