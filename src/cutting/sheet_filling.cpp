// SPDX-License-Identifier: MIT
#include "cutting/sheet_filling.h"

#include <optional>

namespace strikeoff {
namespace {

/// Of the boxes that the sheet holds the one that leaves the largest rectangle to cut off first.
std::optional<SheetFilling> seat(const ChoiceBoxes& boxes, const SheetStock& sheet) {
  std::optional<SheetFilling> best;
  for (const std::size_t first : {0U, 1U}) {
    const std::vector<Box>& front = boxes.fronts[2][first];
    for (std::size_t b = 0; b < front.size(); ++b) {
      const auto [length, width] = front[b].size;
      if (length > sheet.length || width > sheet.width) continue;
      const double rest =
          first == 0 ? static_cast<double>(sheet.length - length) * static_cast<double>(sheet.width)
                     : static_cast<double>(sheet.width - width) * static_cast<double>(sheet.length);
      if (best && best->rest >= rest) continue;
      best = SheetFilling{boxes.counts, 0, 0, 0, first, static_cast<int>(b), rest};
    }
  }
  return best;
}

}  // namespace

std::vector<SheetFilling> fillings_of(const BoxTable& table, const SheetStock& sheet,
                                      std::size_t stock) {
  std::vector<SheetFilling> fillings;
  std::vector<std::size_t> place(table.choices.size());  // in fillings, from 1
  for (std::size_t c = 0; c < table.choices.size(); ++c) {
    auto filling = seat(table.choices[c], sheet);
    if (!filling) continue;
    filling->stock = stock;
    filling->choice = static_cast<int>(c);
    fillings.push_back(*filling);
    place[c] = fillings.size();
    for (std::size_t i = 0; i < table.code.items(); ++i) {
      if (table.code.count(filling->counts, i) == 0) continue;
      const Choice less = filling->counts - table.code.one(i);
      if (less == 0) continue;
      const auto at = place[static_cast<std::size_t>(table.index.at(less))];
      fillings[at - 1].more |= table.code.guard(i);
    }
  }
  return fillings;
}

}  // namespace strikeoff
