// SPDX-License-Identifier: MIT
#include "pour/difference_graph.h"

#include <algorithm>
#include <limits>

namespace strikeoff {
namespace {

constexpr double rounding = 1e-9;  // s
constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

/// A cycle among the arcs that last raised each node: it must be positive. Empty without one.
std::vector<DifferenceArc> cycle_of(const std::vector<DifferenceArc>& arcs,
                                    const std::vector<std::size_t>& raised_by, Towards towards) {
  const auto before = [&](std::size_t node) {
    const DifferenceArc& arc = arcs[raised_by[node]];
    return towards == Towards::end ? arc.from : arc.to;
  };
  std::vector<std::size_t> walk(raised_by.size(), none);  // the walk that came by
  for (std::size_t start = 0; start < raised_by.size(); ++start) {
    std::size_t node = start;
    while (walk[node] == none && raised_by[node] != none) {
      walk[node] = start;
      node = before(node);
    }
    if (raised_by[node] == none || walk[node] != start) continue;
    std::vector<DifferenceArc> cycle;
    std::size_t at = node;
    do {
      cycle.push_back(arcs[raised_by[at]]);
      at = before(at);
    } while (at != node);
    return cycle;
  }
  return {};
}

struct Search {
  DifferenceGraph& graph;
  const std::vector<EitherOrder>& pairs;
  double wait;
  int& steps;

  /// The pair that clashes first; null when none does.
  [[nodiscard]] const EitherOrder* clash(const std::vector<double>& x) const {
    const EitherOrder* first = nullptr;
    double when = 0;
    for (const EitherOrder& pair : pairs) {
      const double a = x[pair.a], b = x[pair.b];
      if (a + pair.a_takes <= b + rounding || b + pair.b_takes <= a + rounding) continue;
      if (first && std::max(a, b) >= when) continue;
      first = &pair;
      when = std::max(a, b);
    }
    return first;
  }

  Ordering descend(std::vector<double>& x) {
    if (steps-- <= 0) return Ordering::gave_up;
    if (!graph.raise(x, wait).empty()) return Ordering::none;
    const EitherOrder* pair = clash(x);
    if (!pair) return Ordering::found;
    DifferenceArc orders[] = {{pair->a, pair->b, pair->a_takes}, {pair->b, pair->a, pair->b_takes}};
    if (x[pair->b] < x[pair->a]) std::swap(orders[0], orders[1]);
    for (const DifferenceArc& arc : orders) {
      graph.add(arc);
      std::vector<double> further = x;
      const Ordering result = descend(further);
      if (result == Ordering::found) x = std::move(further);
      if (result != Ordering::none) return result;
      graph.remove_last();
    }
    return Ordering::none;
  }
};

}  // namespace

void DifferenceGraph::sort() {
  std::stable_sort(arcs_.begin(), arcs_.end(),
                   [](const DifferenceArc& a, const DifferenceArc& b) { return a.from < b.from; });
}

std::vector<DifferenceArc> DifferenceGraph::raise(std::vector<double>& x, double wait,
                                                  Towards towards) const {
  std::vector<std::size_t> raised_by(nodes_, none);
  for (;;) {
    bool raised = false;
    for (std::size_t k = 0; k < arcs_.size(); ++k) {
      const std::size_t at = towards == Towards::end ? k : arcs_.size() - 1 - k;
      const DifferenceArc& arc = arcs_[at];
      const auto [from, to] =
          towards == Towards::end ? std::pair{arc.from, arc.to} : std::pair{arc.to, arc.from};
      const double least = x[from] + arc.least - arc.waits * wait;
      if (least <= x[to] + rounding) continue;
      x[to] = least;
      raised_by[to] = at;
      raised = true;
    }
    if (!raised) return {};
    std::vector<DifferenceArc> cycle = cycle_of(arcs_, raised_by, towards);
    if (!cycle.empty()) return cycle;
  }
}

std::optional<LeastWait> least_wait(const DifferenceGraph& graph, double from) {
  LeastWait found{from, {}};
  for (;;) {
    std::vector<double> x(graph.nodes(), 0);
    std::vector<DifferenceArc> cycle = graph.raise(x, found.wait);
    if (cycle.empty()) return found;
    double least = 0;
    int waits = 0;
    for (const DifferenceArc& arc : cycle) {
      least += arc.least;
      waits += arc.waits;
    }
    if (waits == 0) return std::nullopt;
    found = {std::max(found.wait + rounding / 8, least / waits), std::move(cycle)};
  }
}

Ordering put_in_order(DifferenceGraph& graph, const std::vector<EitherOrder>& pairs, double wait,
                      int& steps, std::vector<double>& x) {
  const std::size_t arcs = graph.arcs().size();
  x.assign(graph.nodes(), 0);
  const Ordering result = Search{graph, pairs, wait, steps}.descend(x);
  if (result == Ordering::gave_up) {
    while (graph.arcs().size() > arcs) graph.remove_last();
  }
  return result;
}

}  // namespace strikeoff
