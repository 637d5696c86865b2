// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace strikeoff {

// Times that must lie at least so far apart, as a graph: x_to >= x_from + least - waits x wait.
// Whether such times exist is whether the graph has no positive cycle (Bellman 1958, Ford 1956,
// from memory).

struct DifferenceArc {
  std::size_t from = 0, to = 0;
  double least = 0;   // s
  int waits = 0;      // 1 on the arcs that keep a joint's wait within the wait asked for
  unsigned work = 0;  // what `least` is made of, for whoever reads a cycle
};

enum class Towards { end, start };

class DifferenceGraph {
 public:
  explicit DifferenceGraph(std::size_t nodes) : nodes_(nodes) {}
  void add(const DifferenceArc& arc) { arcs_.push_back(arc); }
  void remove_last() { arcs_.pop_back(); }
  /// Puts the arcs in the order of the node they start from, in which they settle fastest.
  void sort();
  [[nodiscard]] std::size_t nodes() const { return nodes_; }
  [[nodiscard]] const std::vector<DifferenceArc>& arcs() const { return arcs_; }

  /// Raises the times x (s, -infinity where nothing is known) until every arc holds, no further
  /// than it must; towards the start x counts backwards from the end. The positive cycle that
  /// prevents it; empty when there is none. Tolerance 1e-9 s.
  [[nodiscard]] std::vector<DifferenceArc> raise(std::vector<double>& x, double wait,
                                                 Towards towards = Towards::end) const;

 private:
  std::size_t nodes_;
  std::vector<DifferenceArc> arcs_;
};

struct LeastWait {
  double wait = 0;                   // s
  std::vector<DifferenceArc> cycle;  // what holds it there; empty when `from` is enough
};

/// The least wait, not below `from`, for which times exist: the largest ratio of least to waits
/// over all cycles. Each cycle found raises it to that cycle's ratio, so the result is exact
/// (Dinkelbach 1967, from memory). Nothing when a cycle without a wait is positive.
[[nodiscard]] std::optional<LeastWait> least_wait(const DifferenceGraph& graph, double from);

/// Two pieces of work of the same hands, either of which may come first.
struct EitherOrder {
  std::size_t a = 0, b = 0;         // nodes: when they start
  double a_takes = 0, b_takes = 0;  // s
};

enum class Ordering { found, none, gave_up };

/// Looks for an order of every pair with which times exist at this wait: depth first, the pair that
/// clashes first in the earliest times, first in the order those suggest (the earlier one first); a
/// positive cycle ends a branch, and no clash ends the search. When found, the arcs of the order
/// stay in the graph and x holds the times. `steps` is used up; none left: gave_up.
[[nodiscard]] Ordering put_in_order(DifferenceGraph& graph, const std::vector<EitherOrder>& pairs,
                                    double wait, int& steps, std::vector<double>& x);

}  // namespace strikeoff
