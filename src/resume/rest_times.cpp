// SPDX-License-Identifier: MIT
#include "resume/rest_times.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

#include "pour/crew.h"
#include "pour/sharing.h"
#include "pour/work_graph.h"

namespace strikeoff {
namespace {

constexpr double unknown = -std::numeric_limits<double>::infinity();
constexpr std::size_t most_exact = 60;  // batches
constexpr std::size_t most_sharings = 12;
constexpr std::size_t pieces_of_two_batches = 8;

/// The work of a pour some of which has been done: times that are known stand at a fixed distance
/// from one more node, the start of the stopwatch.
class RestGraph {
 public:
  RestGraph(const PourWork& work, const Underway& pour)
      : work_(work), pour_(pour), start_(work.batches.size() * steps_of_batch) {
    known_.assign(start_ + 1, unknown);
    known_[start_] = 0;
    for (std::size_t i = 0; i < pour.begun.size(); ++i) set_known(i);
  }

  [[nodiscard]] std::size_t begun() const { return pour_.begun.size(); }
  [[nodiscard]] bool is_known(std::size_t at) const { return known_[at] != unknown; }
  [[nodiscard]] std::vector<double> known() const { return known_; }

  /// The rules of the work. What has been done keeps none of them and binds the rest.
  [[nodiscard]] DifferenceGraph graph(const Sharing& sharing) const {
    DifferenceGraph rules = process_graph(work_);
    add_people(rules, work_, sharing);
    DifferenceGraph graph(start_ + 1);
    for (const DifferenceArc& arc : rules.arcs()) {
      if (!is_known(arc.to)) graph.add(arc);
    }
    for (std::size_t at = 0; at < start_; ++at) {
      if (!is_known(at)) continue;
      graph.add({start_, at, known_[at]});
      graph.add({at, start_, -known_[at]});
    }
    const double now = pour_.now.si();
    for (std::size_t i = 0; i < work_.batches.size(); ++i) {
      const std::size_t place = node(i, Step::place);
      if (i >= begun()) {
        graph.add({start_, node(i, Step::mix), now});
      } else if (!is_known(place)) {
        graph.add({start_, place, now - work_.batches[i].place});
      }
    }
    return graph;
  }

 private:
  void set_known(std::size_t i) {
    const LoggedBatch& batch = pour_.begun[i];
    const BatchWork& takes = work_.batches[i];
    const double contact = batch.contact.si();
    known_[node(i, Step::mix)] = contact;
    known_[node(i, Step::load)] = contact - takes.load;
    known_[node(i, Step::reset)] = contact - takes.load - takes.reset;
    if (!batch.placed) return;
    const double place = batch.placed->si() - takes.place;
    known_[node(i, Step::place)] = place;
    // Whoever was faster than usual has tipped it out earlier too.
    known_[node(i, Step::discharge)] =
        std::max(contact, std::min(contact + takes.mix, place - takes.discharge - takes.carry));
  }

  const PourWork& work_;
  const Underway& pour_;
  std::size_t start_;
  std::vector<double> known_;
};

struct Way {
  DifferenceGraph graph{0};
  double within = 0, edge = 0;  // waits: within the rest, at the present wet edge
};

/// The shortest waits that this way of sharing the work allows.
std::optional<Way> shortest(const RestGraph& rest, const PourWork& work, const Sharing& sharing,
                            const std::vector<Touch>& touches, double least) {
  std::vector<Touch> within, edge;
  for (const Touch& touch : touches) {
    if (touch.second <= static_cast<int>(rest.begun())) continue;
    (touch.first > static_cast<int>(rest.begun()) ? within : edge).push_back(touch);
  }
  Way way{rest.graph(sharing), least, least};
  DifferenceGraph graph = way.graph;
  add_joints(graph, work, within);
  graph.sort();
  const auto inner = least_wait(graph, least);
  if (!inner) return std::nullopt;
  way.within = inner->wait;
  for (const Touch& touch : within) {
    const std::size_t first = static_cast<std::size_t>(touch.first - 1);
    const std::size_t second = static_cast<std::size_t>(touch.second - 1);
    way.graph.add({node(second, Step::place), node(first, Step::mix),
                   work.batches[second].place - way.within});
  }
  add_joints(way.graph, work, edge);
  way.graph.sort();
  const auto outer = least_wait(way.graph, least);
  if (!outer) return std::nullopt;
  way.edge = outer->wait;
  return way;
}

/// Times (s) by node: the pour ends first, water as late as that allows, the rest early.
std::vector<double> times_of(const Way& way, const RestGraph& rest, const PourWork& work) {
  std::vector<double> x = rest.known();
  static_cast<void>(way.graph.raise(x, way.edge));
  double end = 0;
  std::vector<double> before_end(x.size(), unknown);
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    const std::size_t place = node(i, Step::place);
    end = std::max(end, x[place] + work.batches[i].place);
    before_end[place] = work.batches[i].place;
  }
  static_cast<void>(way.graph.raise(before_end, way.edge, Towards::start));
  x = rest.known();
  for (std::size_t i = rest.begun(); i < work.batches.size(); ++i) {
    x[node(i, Step::mix)] = end - before_end[node(i, Step::mix)];
  }
  static_cast<void>(way.graph.raise(x, way.edge));
  return x;
}

std::vector<BatchTimes> table_of(const std::vector<double>& x, const PourWork& work) {
  std::vector<BatchTimes> table;
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    BatchTimes batch;
    const auto at = [&](Step step) { return seconds(x[node(i, step)]); };
    batch.contact = at(Step::mix);
    // Nothing may come before filling a mixer that stands idle.
    batch.load = std::max(at(Step::load), batch.contact - seconds(work.batches[i].load));
    batch.discharge = at(Step::discharge);
    batch.place_start = at(Step::place);
    batch.place_end = batch.place_start + seconds(work.batches[i].place);
    batch.mixer = static_cast<int>(i % work.mixers) + 1;
    table.push_back(batch);
  }
  return table;
}

/// A beat apart from the next batch on.
std::vector<BatchTimes> steady(const Crew& crew, const RestGraph& rest, const PourWork& work,
                               const Sharing& sharing) {
  DifferenceGraph graph = rest.graph(sharing);
  const double takt = pace(crew).takt.si();
  for (std::size_t i = rest.begun(); i + 1 < work.batches.size(); ++i) {
    graph.add({node(i, Step::mix), node(i + 1, Step::mix), takt});
  }
  graph.sort();
  std::vector<double> x = rest.known();
  static_cast<void>(graph.raise(x, 0));
  return table_of(x, work);
}

}  // namespace

std::vector<BatchTimes> rest_times(const Crew& crew, const Underway& pour, int batches,
                                   const std::vector<Touch>& touches, Duration least) {
  PourWork work = work_of(crew, batches, 1);
  const bool in_turn = takes_turns(crew.people);
  const std::vector<Sharing> ways = sharings(crew, in_turn ? 1 : most_sharings);
  if (work.batches.size() > most_exact) {
    work.mixers = std::min(work.mixers, ways.front().mix.size());
    return steady(crew, RestGraph(work, pour), work, ways.front());
  }
  std::optional<Way> best;
  std::vector<BatchTimes> table;
  for (Sharing sharing : ways) {
    PourWork with = work;
    with.mixers = std::min(work.mixers, sharing.mix.size());
    const RestGraph rest(with, pour);
    const std::size_t most_after = in_turn ? 0 : pieces_of_two_batches;
    for (sharing.placed_after = 0; sharing.placed_after <= most_after; ++sharing.placed_after) {
      auto way = shortest(rest, with, sharing, touches, least.si());
      if (!way) continue;
      if (best && std::pair(best->within, best->edge) <= std::pair(way->within, way->edge)) {
        continue;
      }
      table = table_of(times_of(*way, rest, with), with);
      best = std::move(way);
    }
  }
  return table;
}

}  // namespace strikeoff
