// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {

std::span<const BasisEntry> mix_basis() {
  return {};
}

}  // namespace strikeoff
