// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "checks/checks.h"
#include "core/format.h"

namespace strikeoff {
namespace {

constexpr Length narrowest_rip = Length::mm(50);    // safe by hand; common practice, no source
constexpr Length narrowest_strip = Length::mm(15);  // ripped at all (assumption)

std::optional<Check> soffit_span(const Job& job, const Plan& plan) {
  const Part* widest = nullptr;
  for (const Part& part : plan.cut_list.parts) {
    const bool soffit = part.role == "soffit strip" || part.role == "soffit panel";
    if (soffit && (widest == nullptr || part.width > widest->width)) widest = &part;
  }
  if (widest == nullptr) return std::nullopt;
  Check check;
  check.code = "soffit-span";
  check.title = "The soffit strips carry the fresh mix from the base's face";
  check.value = widest->width.in_mm();
  check.limit = widest_free_soffit.in_mm();
  check.unit = "mm";
  check.basis = "over 3 in (75 mm) on props (assumption)";
  if (widest->width > widest_free_soffit) {
    check.level = Level::caution;
    check.title = "A soffit is too wide to hang on the base's face: " + widest->mark;
    check.advice = fmt::format(
        "It is {} wide: set props under its outer edge, and leave them until "
        "the forms are stripped.",
        show(widest->width, job.units));
  }
  return check;
}

/// Every joint of a strip has a cleat of its own, and cleats are nowhere else.
std::optional<Check> splice(const Plan& plan) {
  int number = 0;
  for (const Part& part : plan.cut_list.parts) {
    if (part.role == "cleat") number += part.quantity;
  }
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
  check.basis = "one cleat a joint in the cut list";
  return check;
}

/// "strip-board: 2 more than can be had"
std::string shortage(const Job& job, const Plan& plan) {
  std::string text;
  std::vector<Stock> stocks = job.forms.strip_stock;
  for (const Slab& slab : job.slabs) {
    if (slab.panel && std::find(stocks.begin(), stocks.end(), *slab.panel) == stocks.end()) {
      stocks.push_back(*slab.panel);
    }
  }
  for (const StockTotal& total : plan.cut_list.totals) {
    const auto stock = std::find_if(stocks.begin(), stocks.end(),
                                    [&](const Stock& s) { return s.id == total.stock; });
    if (stock == stocks.end() || !stock->quantity || total.buy <= *stock->quantity) continue;
    text += fmt::format("{}{}: {} to buy, {} to be had", text.empty() ? "" : "; ", stock->name,
                        total.buy, *stock->quantity);
  }
  return text;
}

Check short_board(const Job& job, const Plan& plan) {
  Check check;
  check.code = "short-board";
  check.title = "Every part can be cut from the stock";
  check.basis = "the cut list";
  std::string unplaced;
  for (const std::string& mark : plan.cut_list.unplaced) {
    unplaced += (unplaced.empty() ? "" : ", ") + mark;
  }
  const std::string missing = shortage(job, plan);
  if (!unplaced.empty()) {
    check.level = Level::stop;
    check.value = static_cast<double>(plan.cut_list.unplaced.size());
    check.unit = plan.cut_list.unplaced.size() == 1 ? "part left over" : "parts left over";
    check.title = "Parts that fit no board or sheet: " + unplaced;
    check.advice = "Add a larger stock to the job, or have these cut for you.";
  } else if (!missing.empty()) {
    check.level = Level::stop;
    check.title = "Not enough stock to be had: " + missing;
    check.advice = "Find more of it, or add another stock to the job.";
  }
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
  check.basis = "under 2 in (50 mm): common practice, no source; buy under 15 mm (assumption)";
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
  std::vector<Check> checks{short_board(job, plan)};
  for (const auto& check : {soffit_span(job, plan), splice(plan), narrow_rip(job, plan)}) {
    if (check) checks.push_back(*check);
  }
  return checks;
}

}  // namespace strikeoff
