// SPDX-License-Identifier: MIT
#include "site/wet_cure.h"

namespace strikeoff {

bool is_ordinary(const Mix& mix) {
  return mix.strip_after.value_or(hours(12)) >= hours(12);
}

Duration wet_cure(const Mix& mix) {
  return is_ordinary(mix) ? days(7) : hours(1);
}

}  // namespace strikeoff
