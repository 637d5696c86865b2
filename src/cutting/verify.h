// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "cutting/cut_list.h"

namespace strikeoff {

/// What is wrong with a cut list, one sentence each; empty when it can be cut as it stands. Written
/// from the rules of the saw, not from the code that plans: every part is cut as often as it is
/// needed (fewer only when its mark is under `unplaced`); strips and pieces with a kerf between
/// neighbours lie inside their board; sheets can be cut by saw cuts from side to side into pieces
/// and left-overs; boards exist and are of the kind the part needs; what is named to keep is there;
/// totals count the boards; no plan beats its bound.
[[nodiscard]] std::vector<std::string> cut_violations(const CutList& list,
                                                      const std::vector<Stock>& boards,
                                                      const std::vector<Stock>& sheets,
                                                      const std::vector<OnHand>& on_hand,
                                                      const Saw& saw);

}  // namespace strikeoff
