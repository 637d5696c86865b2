// SPDX-License-Identifier: MIT
#include "support/source_dir.h"

namespace strikeoff::test {

std::filesystem::path source_dir() {
  return STRIKEOFF_SOURCE_DIR;
}

}  // namespace strikeoff::test
