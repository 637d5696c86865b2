// SPDX-License-Identifier: MIT
#include "cutting/choice_code.h"

#include <bit>

namespace strikeoff {

std::optional<ChoiceCode> ChoiceCode::for_demands(const std::vector<int>& demands) {
  ChoiceCode code;
  int shift = 0;
  for (const int demand : demands) {
    const int bits = static_cast<int>(std::bit_width(static_cast<unsigned>(demand)));
    if (shift + bits + 1 > 64) return std::nullopt;
    code.shifts_.push_back(shift);
    code.guard_of_.push_back(Choice{1} << (shift + bits));
    code.guards_ |= code.guard_of_.back();
    code.ones_ |= Choice{1} << shift;
    code.all_ |= static_cast<Choice>(demand) << shift;
    shift += bits + 1;
  }
  return code;
}

std::size_t ChoiceCode::top(Choice choice) const {
  std::size_t item = shifts_.size() - 1;
  while (item > 0 && (choice >> shifts_[item]) == 0) --item;
  return item;
}

}  // namespace strikeoff
