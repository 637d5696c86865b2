// SPDX-License-Identifier: MIT
#include "render/text.h"
#include "render/text_sections.h"

namespace strikeoff::text {

Text assumptions(const Plan& plan) {
  if (plan.assumptions.empty()) return "";
  Table table({{"In the job file"}, {"Taken as"}, {"Why"}});
  for (const Assumption& assumption : plan.assumptions) {
    table.add({assumption.path, assumption.value, assumption.reason});
  }
  return heading("ASSUMPTIONS") +
         paragraph(
             "  ",
             "The job file does not say these, so they were assumed; the ones that change the "
             "plan most come first. Write what you know at the place named.") +
         placed(table);
}

}  // namespace strikeoff::text
