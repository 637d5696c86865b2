// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>

namespace strikeoff::test {

/// The top of the source tree.
[[nodiscard]] std::filesystem::path source_dir();

}  // namespace strikeoff::test
