// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {

std::span<const BasisEntry> hardening_basis() {
  return {};
}

}  // namespace strikeoff
