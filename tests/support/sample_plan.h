// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff::test {

/// An invented greenhouse potting bench: base 76 x 24 in, 1 1/8 in overhang all round, 1 3/4 in
/// edge, 7/16 in panel, four batches of one rapid bag, everything at the label's 68 F.
[[nodiscard]] Job potting_bench_job();

/// Its plan, worked out by hand, without materials, cost, schedule and checks.
[[nodiscard]] Plan potting_bench_plan();

/// Gives the plan `count` batches of one bag, `takt` apart, each placed `lead` after contact.
void set_batches(Plan& plan, int count, Duration takt, Duration lead);

/// One invented supply for each id the materials list may ask for.
[[nodiscard]] Catalogue sample_supplies();

/// The first with this code or id; a default one when there is none.
[[nodiscard]] Check find_check(const std::vector<Check>& checks, const std::string& code);
[[nodiscard]] Material find_material(const std::vector<Material>& materials,
                                     const std::string& stock);
/// The first task whose text begins so; a default one when there is none.
[[nodiscard]] Task find_task(const std::vector<Task>& tasks, const std::string& beginning);

}  // namespace strikeoff::test
