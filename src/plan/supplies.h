// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// How much work one supply does. A need counted directly is `each`.
struct Need {
  std::string id;      // of its entry in the registry of bases; a catalogue supply's own id
  double amount = 0;   // m, m2, or pieces: what the supply's rate is per
  std::string worked;  // the numbers behind it
  std::string note;
  Length longest = {};  // piece of what is sold by the length; 0 where it does not matter
};

/// One row of the list: what is needed, on hand and to buy of this good.
[[nodiscard]] Material supply_row(const Job& job, const Supply& good, const Need& need);

/// Sanding discs and sealer.
[[nodiscard]] std::vector<Material> finish_supplies(const Job& job, const Catalogue& catalogue,
                                                    const FinishPlan& finish);

/// Screws, sealants, tapes, battens and what else is bought by the pack beside mix, boards and
/// sheets: only what the job needs.
[[nodiscard]] std::vector<Material> list_supplies(const Job& job, const Catalogue& catalogue,
                                                  const Plan& plan);

}  // namespace strikeoff
