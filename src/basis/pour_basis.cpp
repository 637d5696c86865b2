// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {

std::span<const BasisEntry> pour_basis() {
  return {};
}

}  // namespace strikeoff
