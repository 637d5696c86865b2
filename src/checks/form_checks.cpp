// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "cutting/stocks.h"
#include "cutting/verify.h"

namespace strikeoff {
namespace {

constexpr Length narrowest_rip = Length::mm(50);    // safe by hand; common practice, no source
constexpr Length narrowest_strip = Length::mm(15);  // ripped at all (assumption)

/// The cut list replayed by code that knows only the rules of the saw.
Check cut_list(const Job& job, const Plan& plan) {
  const auto wrong =
      cut_violations(plan.cut_list, boards_of(job), sheets_of(job), job.on_hand, saw_of(job));
  Check check;
  check.code = "cut-list";
  check.title = "The cut list can be cut as it stands";
  check.basis = basis("cut-list");
  if (wrong.empty()) return check;
  check.level = Level::stop;
  check.title = "The cut list cannot be cut as it stands: " + wrong.front();
  check.advice = "This is a bug in strikeoff. Do not cut by it; report it with the job file.";
  return check;
}

std::optional<Check> splice(const Plan& plan) {
  int number = 0;
  for (const SlabPlan& slab : plan.slabs) number += slab.forms.splices;
  if (number == 0) return std::nullopt;
  Check check;
  check.code = "splice";
  check.level = Level::caution;
  check.title = "Some strips are longer than any board and are joined";
  check.value = number;
  check.unit = number == 1 ? "joint" : "joints";
  check.advice =
      "Back each joint with a cleat, butt it tight, seal and tape it, and keep the joints "
      "of soffit and edge strip apart; a straightedge along the outside shows a kink.";
  check.basis = basis("splice");
  return check;
}

/// True when the part could be cut from a stock of the job, were there enough of it.
bool fits_a_stock(const Job& job, const Part& part) {
  const auto holds = [&](Length length, Length width) {
    return part.length <= length && part.width <= width;
  };
  if (part.role == "backer panel") {
    return std::any_of(job.slabs.begin(), job.slabs.end(), [&](const Slab& slab) {
      return slab.panel && slab.panel->id == part.stock &&
             (holds(slab.panel->length, slab.panel->width) ||
              holds(slab.panel->width, slab.panel->length));
    });
  }
  return std::any_of(job.forms.strip_stock.begin(), job.forms.strip_stock.end(),
                     [&](const Stock& board) {
                       return holds(board.length - job.forms.end_trim * 2, board.width);
                     });
}

Check short_board(const Job& job, const Plan& plan) {
  Check check;
  check.code = "short-board";
  check.title = "Every part can be cut from the stock";
  check.basis = basis("short-board");
  if (const std::size_t left = plan.cut_list.unplaced.size(); left > 0) {
    check.value = static_cast<double>(left);
    check.unit = left == 1 ? "part left over" : "parts left over";
  }
  std::string too_narrow, too_large, too_few;
  for (const Part& part : plan.cut_list.parts) {
    const auto& unplaced = plan.cut_list.unplaced;
    if (std::find(unplaced.begin(), unplaced.end(), part.mark) == unplaced.end()) continue;
    // An edge strip without a stock has no room between the strips beside it.
    std::string& marks = part.stock.empty()        ? too_narrow
                         : fits_a_stock(job, part) ? too_few
                                                   : too_large;
    marks += (marks.empty() ? "" : ", ") + part.mark;
  }
  const auto report = [&](const std::string& marks, const char* what, const char* mend) {
    if (marks.empty()) return;
    const bool first = check.level != Level::stop;
    check.title = first ? what + marks : check.title + ". " + what + marks;
    check.advice += (first ? "" : " ") + std::string(mend);
    check.level = Level::stop;
  };
  report(too_large, "Parts that fit no board or sheet: ",
         "Add a larger stock to the job, or have these cut for you.");
  report(too_few, "Not enough stock to be had for ",
         "Find more of the stock, or add another one to the job.");
  report(too_narrow, "A recess leaves no room for its strip: ",
         "Widen the recess to more than two strips, or block it out with stacked sheet.");
  return check;
}

/// The narrowest strip ripped from a board, or nothing without boards.
std::optional<Length> narrowest(const CutList& cut_list) {
  std::optional<Length> least;
  for (const Board& board : cut_list.boards) {
    for (const Strip& strip : board.strips) {
      if (!least || strip.width < *least) least = strip.width;
    }
  }
  return least;
}

std::optional<Check> narrow_rip(const Job& job, const Plan& plan) {
  const auto least = narrowest(plan.cut_list);
  if (!least) return std::nullopt;
  Check check;
  check.code = "narrow-rip";
  check.title = "No strip is too narrow to rip by hand";
  check.value = least->in_mm();
  check.limit = narrowest_rip.in_mm();
  check.unit = "mm";
  check.basis = basis("narrow-rip");
  if (*least >= narrowest_rip) return check;
  check.level = Level::caution;
  check.title = "Narrow strips are ripped from a long board";
  check.advice = fmt::format(
      "Down to {}: keep hands away, use a guide, a push stick and a helper "
      "at the far end, or have the shop rip them.",
      show(*least, job.units));
  if (*least < narrowest_strip) {
    check.advice =
        fmt::format("{} is too narrow to rip safely: buy a batten of that width instead.",
                    show(*least, job.units));
  }
  return check;
}

}  // namespace

std::vector<Check> form_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks{cut_list(job, plan), short_board(job, plan)};
  for (const auto& check : {splice(plan), narrow_rip(job, plan)}) {
    if (check) checks.push_back(*check);
  }
  return checks;
}

}  // namespace strikeoff
