// SPDX-License-Identifier: MIT
#include "render/text_sections.h"
#include "render/text_table.h"

namespace strikeoff::text {

std::string assumptions(const Plan& plan) {
  if (plan.assumptions.empty()) return "";
  Table table({{"Taken as"}, {"Why"}, {"Change it in the job file at"}});
  for (const Assumption& assumption : plan.assumptions) {
    table.add({assumption.value, assumption.reason, assumption.path});
  }
  return heading("ASSUMPTIONS") +
         paragraph("  ",
                   "The job file does not say these; the ones that change the plan most come "
                   "first.") +
         table.str();
}

}  // namespace strikeoff::text
