// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/cut_list.h"

namespace strikeoff {

// What a job has to cut from, and with.

/// Boards for strips, and the thin one for rounded edges.
[[nodiscard]] std::vector<Stock> boards_of(const Job& job);
/// The sheets the slabs are laid with, each once, in the order of the slabs.
[[nodiscard]] std::vector<Stock> sheets_of(const Job& job);
[[nodiscard]] Saw saw_of(const Job& job);

}  // namespace strikeoff
