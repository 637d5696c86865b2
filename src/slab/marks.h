// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>

namespace strikeoff {

/// Hands out the marks written on parts: E1, E2 for edge strips, S1 for soffits, K knock-outs,
/// P panels, C cleats, I isolation strips, R props; numbered through all slabs of a job.
class MarkCounter {
 public:
  [[nodiscard]] std::string next(char letter) { return letter + std::to_string(++last_[letter]); }

 private:
  std::map<char, int> last_;
};

}  // namespace strikeoff
