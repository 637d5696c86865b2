// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {

std::span<const BasisEntry> slab_basis() {
  return {};
}

}  // namespace strikeoff
