// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff {

/// Edits (insert, delete, replace, swap of neighbours) that turn one word into the other: optimal
/// string alignment, after Damerau, CACM 7 (1964). Counts bytes.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word nearest to `word`: at most 3 edits, and at most a third of its letters (but
/// one edit is always allowed from 3 letters on); empty when none is that near. Ties: the first.
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& known);

/// "a", "b" and "c".
[[nodiscard]] std::string quoted_list(const std::vector<std::string>& words,
                                      std::string_view last = "and");

/// The known word meant: the nearest, or one of the same meaning ("width" for "depth"); empty
/// when there is neither.
[[nodiscard]] std::string meant_by(std::string_view word, const std::vector<std::string>& known);

/// `did you mean "x"?` when a known word is meant, else `otherwise`.
[[nodiscard]] std::string did_you_mean(std::string_view word, const std::vector<std::string>& known,
                                       const std::string& otherwise);

}  // namespace strikeoff
