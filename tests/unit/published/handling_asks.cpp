// SPDX-License-Identifier: MIT
#include "support/published.h"

namespace strikeoff::test {

Asks handling_asks() {
  return {};
}

}  // namespace strikeoff::test
