// SPDX-License-Identifier: MIT
#include "render/text_sections.h"
#include "strikeoff/render.h"

namespace strikeoff {

std::string render_text(const Plan& plan, const TextPage& page) {
  const text::Text all = text::headline(plan) + text::shop(plan) + text::cut(plan) +
                         text::mix_card(plan) + text::pour(plan) + text::air_and_water(plan) +
                         text::the_day(plan) + text::hardening(plan) + text::weights(plan) +
                         text::checks(plan) + text::assumptions(plan);
  return all.str(page);
}

}  // namespace strikeoff
