// SPDX-License-Identifier: MIT
#include "pour/timetable.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>

#include "core/format.h"
#include "pour/crew.h"
#include "pour/sharing.h"
#include "pour/work_graph.h"

namespace strikeoff {
namespace {

constexpr double unknown = -std::numeric_limits<double>::infinity();
constexpr double finest = 1e-6;           // s: shorter waits by less than this are not looked for
constexpr std::size_t most_exact = 60;    // batches
constexpr std::size_t most_ordered = 16;  // batches whose every order is tried
constexpr int most_steps = 3000;          // of that search
constexpr std::size_t most_sharings = 12;

using Joints = std::vector<Touch>;

/// A way to work, and how long its joints wait.
struct Way {
  DifferenceGraph graph{0};
  LeastWait least;
  Sharing sharing;
};

double lead_of(const BatchWork& b) {
  return b.mix + b.discharge + b.carry + b.place;
}

/// No wait is shorter than the shortest lead.
double shortest_lead(const PourWork& work) {
  return std::min(lead_of(work.batches.front()), lead_of(work.batches.back()));
}

DifferenceGraph graph_of(const PourWork& work, const Sharing& sharing, const Joints& touches) {
  DifferenceGraph graph = process_graph(work);
  add_people(graph, work, sharing);
  add_joints(graph, work, touches);
  graph.sort();
  return graph;
}

bool can_wait(const DifferenceGraph& graph, double wait) {
  std::vector<double> x(graph.nodes(), 0);
  return graph.raise(x, wait).empty();
}

/// Tries a way of sharing; keeps it when it beats the best so far.
void keep_shorter(const PourWork& work, const Sharing& sharing, const Joints& touches, double from,
                  std::optional<Way>& best) {
  DifferenceGraph graph = graph_of(work, sharing, touches);
  if (best && !can_wait(graph, best->least.wait - finest)) return;
  const auto least = least_wait(graph, from);
  if (least) best = Way{std::move(graph), *least, sharing};
}

/// Every order of placing among the other work of the one who does both. True when none is shorter
/// than what is found, false when the search ran out of steps.
bool try_orders(const Crew& crew, const PourWork& work, const Joints& touches, double from,
                Way& best) {
  const DifferenceGraph free = graph_of(work, hands_apart(crew), touches);
  std::vector<EitherOrder> pairs;
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    for (std::size_t j = i + 1; j < work.batches.size(); ++j) {
      const BatchWork& b = work.batches[j];
      const double place = work.batches[i].place;
      for (const auto& [step, takes] :
           {std::pair{Step::reset, b.reset}, std::pair{Step::load, b.load},
            std::pair{Step::mix, b.mix}, std::pair{Step::discharge, b.discharge}}) {
        pairs.push_back({node(i, Step::place), node(j, step), place, takes});
      }
    }
  }
  int steps = most_steps;
  for (;;) {
    if (best.least.wait <= from + finest) return true;
    DifferenceGraph graph = free;
    std::vector<double> x;
    const Ordering found = put_in_order(graph, pairs, best.least.wait - finest, steps, x);
    if (found != Ordering::found) return found == Ordering::none;
    const auto least = least_wait(graph, from);
    if (!least) return false;
    best = {std::move(graph), *least, best.sharing};  // only the order is another
  }
}

/// The best way found, and whether none is better.
std::pair<Way, bool> best_way(const Crew& crew, const PourWork& work, const Joints& touches) {
  const double lead = shortest_lead(work);
  std::optional<Way> best;
  if (takes_turns(crew.people)) {
    keep_shorter(work, sharings(crew, 1).front(), touches, lead, best);
    if (!share_several_roles(crew)) return {*best, true};
  }
  const double bound = least_wait(graph_of(work, hands_apart(crew), touches), lead)->wait;
  if (takes_turns(crew.people)) return {*best, best->least.wait <= bound + finest};
  constexpr std::size_t pieces_of_two_batches = 8;  // reset, load, mix, discharge of each
  for (Sharing way : sharings(crew, most_sharings)) {
    for (way.placed_after = 0; way.placed_after <= pieces_of_two_batches; ++way.placed_after) {
      if (best && best->least.wait <= bound + finest) break;
      PourWork with = work;
      with.mixers = std::min(with.mixers, way.mix.size());
      keep_shorter(with, way, touches, lead, best);
    }
  }
  bool is_best = best->least.wait <= bound + finest;
  if (!is_best && only_order_is_open(crew) && work.batches.size() <= most_ordered) {
    is_best = try_orders(crew, work, touches, bound, *best);
  }
  return {*best, is_best};
}

/// Times (s) by node: the pour that ends first, water as late as that allows, the rest as early as
/// the water allows.
std::vector<double> times_of(const DifferenceGraph& graph, const PourWork& work, double wait) {
  const std::size_t n = work.batches.size();
  std::vector<double> x(graph.nodes(), unknown);
  x[node(0, Step::mix)] = 0;
  static_cast<void>(graph.raise(x, wait));
  double end = 0;
  for (std::size_t i = 0; i < n; ++i) {
    end = std::max(end, x[node(i, Step::place)] + work.batches[i].place);
  }
  std::vector<double> before_end(graph.nodes(), unknown);
  for (std::size_t i = 0; i < n; ++i) before_end[node(i, Step::place)] = work.batches[i].place;
  static_cast<void>(graph.raise(before_end, wait, Towards::start));
  x.assign(graph.nodes(), unknown);
  for (std::size_t i = 0; i < n; ++i) x[node(i, Step::mix)] = end - before_end[node(i, Step::mix)];
  static_cast<void>(graph.raise(x, wait));
  // What nothing comes before stays open: as late as what follows allows.
  for (std::size_t k = 0; k < x.size(); ++k) before_end[k] = x[k] == unknown ? unknown : end - x[k];
  static_cast<void>(graph.raise(before_end, wait, Towards::start));
  for (std::size_t k = 0; k < x.size(); ++k) x[k] = end - before_end[k];
  return x;
}

/// Sums in another order differ in their last digits: to the nanosecond.
Duration seconds_of(double s) {
  return Duration::from_si(std::round(s * 1e9) / 1e9);
}

void sum_up(const Joints& touches, Timetable& table) {
  for (const Touch& touch : touches) {
    const BatchTimes& first = table.batches[static_cast<std::size_t>(touch.first - 1)];
    const BatchTimes& second = table.batches[static_cast<std::size_t>(touch.second - 1)];
    table.worst_wait = std::max(table.worst_wait, second.place_end - first.contact);
  }
  for (const BatchTimes& batch : table.batches) {
    table.own_age = std::max(table.own_age, batch.place_end - batch.contact);
  }
  const BatchTimes &first = table.batches.front(), &last = table.batches.back();
  const std::size_t n = table.batches.size();
  table.takt = n == 1 ? last.place_end - last.contact
                      : (last.contact - first.contact) / static_cast<double>(n - 1);
}

Timetable table_of(const std::vector<double>& x, const PourWork& work, const Sharing& sharing,
                   const Joints& touches) {
  Timetable table;
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    const BatchWork& takes = work.batches[i];
    BatchTimes batch;
    batch.load = seconds_of(x[node(i, Step::load)]);
    batch.contact = seconds_of(x[node(i, Step::mix)]);
    batch.discharge = seconds_of(x[node(i, Step::discharge)]);
    batch.emptied = batch.discharge + seconds_of(takes.discharge);
    batch.carried = batch.emptied + seconds_of(takes.carry);
    batch.place_start = seconds_of(x[node(i, Step::place)]);
    batch.place_end = batch.place_start + seconds_of(takes.place);
    batch.mixer = static_cast<int>(i % work.mixers) + 1;
    batch.mixed_by = whose(sharing.mix, i);
    batch.carried_by = whose(sharing.carry, i);
    batch.placed_by = whose(sharing.place, i);
    table.batches.push_back(batch);
  }
  sum_up(touches, table);
  return table;
}

/// "mix 3 + tip out 0.5 + carry 0.5 + place 3 + next batch 5 = 12 min": the way from one batch's
/// water until the batch that meets it is placed, averaged where several joints hang together. What
/// is not the work of one batch is what the next has to wait for.
std::string chain_of(const std::vector<DifferenceArc>& cycle, const BatchWork& usual, double wait) {
  int joints = 0, batches = 0;
  for (const DifferenceArc& arc : cycle) {
    if (arc.waits == 0) continue;
    ++joints;
    batches +=
        static_cast<int>(arc.from / steps_of_batch) - static_cast<int>(arc.to / steps_of_batch);
  }
  const std::tuple<unsigned, const char*, double> parts[] = {{mixes, "mix", usual.mix},
                                                             {tips_out, "tip out", usual.discharge},
                                                             {carries, "carry", usual.carry},
                                                             {places, "place", usual.place}};
  const auto minutes_of = [](double s) { return show_number(s / 60, 2); };
  std::string text;
  double rest = wait;
  for (const auto& [work, name, takes] : parts) {
    const unsigned kind = work;
    const auto times = std::count_if(cycle.begin(), cycle.end(), [&](const DifferenceArc& arc) {
      return (arc.work & kind) != 0;
    });
    if (takes <= 0 || takes > rest + finest || times < joints) continue;
    text += fmt::format("{}{} {}", text.empty() ? "" : " + ", name, minutes_of(takes));
    rest -= takes;
  }
  if (rest > finest) {
    const bool one = batches <= joints;
    text += fmt::format(
        "{}{} {}", text.empty() ? "" : " + ",
        one ? "next batch"
            : fmt::format("next {} batches", show_number(static_cast<double>(batches) / joints, 1)),
        minutes_of(rest));
  }
  return fmt::format("{} = {} min", text, minutes_of(wait));
}

/// Batches a takt apart; a smaller last one starts being placed when a full one would.
Timetable steady(const Crew& crew, const PourWork& work, const Joints& touches) {
  const double takt = pace(crew).takt.si();
  std::vector<double> x(work.batches.size() * steps_of_batch);
  const BatchWork& full = work.batches.front();
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    const double contact = takt * static_cast<double>(i);
    x[node(i, Step::reset)] = contact - full.load - full.reset;
    x[node(i, Step::load)] = contact - full.load;
    x[node(i, Step::mix)] = contact;
    x[node(i, Step::discharge)] = contact + full.mix;
    x[node(i, Step::place)] = contact + full.mix + full.discharge + full.carry;
  }
  return table_of(x, work, sharings(crew, 1).front(), touches);
}

/// The waits of joints at one gap that follow one another add up to at least a cycle of the
/// bottleneck's units and as many leads when there are as many joints as units, so one of them is
/// at least gap x takt + lead (elementary). Equal batches, and nobody who shares has other work.
bool steady_is_exact(const Crew& crew, const Joints& touches, const PourWork& work) {
  if (lead_of(work.batches.back()) < lead_of(work.batches.front())) return false;
  if (share_several_roles(crew)) return false;
  int gap = 0;
  for (const Touch& touch : touches) gap = std::max(gap, touch.second - touch.first);
  std::set<int> firsts;
  for (const Touch& touch : touches) {
    if (touch.second - touch.first == gap) firsts.insert(touch.first);
  }
  const std::size_t units = std::max(work.mixers, crew.people.size());
  std::size_t run = 0;
  int last = -1;
  for (const int first : firsts) {
    run = first == last + 1 ? run + 1 : 1;
    last = first;
    if (run >= units) return true;
  }
  return false;
}

std::string steady_chain(const PourWork& work, const Timetable& table) {
  const BatchWork& usual = work.batches.front();
  const double wait = table.worst_wait.si();
  if (wait <= 0) return "";
  const auto gap = static_cast<std::size_t>(
      std::max(1.0, std::round((wait - lead_of(usual)) / std::max(table.takt.si(), finest))));
  DifferenceArc joint{node(gap, Step::place), node(0, Step::mix), 0, 1, 0};
  return chain_of({{0, 0, 0, 0, mixes | tips_out | carries | places}, joint}, usual, wait);
}

/// Every batch as soon as it can be, water as late as that allows.
Timetable as_soon_as_can_be(const Crew& crew, PourWork work, const Joints& touches) {
  const Sharing way = sharings(crew, 1).front();
  work.mixers = std::min(work.mixers, way.mix.size());
  const DifferenceGraph graph = graph_of(work, way, {});
  return table_of(times_of(graph, work, 0), work, way, touches);
}

}  // namespace

Timetable least_wait_timetable(const Crew& crew, int batches, const std::vector<Touch>& touches,
                               double last_share) {
  PourWork work = work_of(crew, batches, last_share);
  if (work.batches.size() > most_exact) {
    if (!takes_turns(crew.people)) return as_soon_as_can_be(crew, work, touches);
    Timetable table = steady(crew, work, touches);
    table.is_exact = steady_is_exact(crew, touches, work);
    table.chain = steady_chain(work, table);
    return table;
  }
  const auto [way, is_best] = best_way(crew, work, touches);
  Timetable table = table_of(times_of(way.graph, work, way.least.wait), work, way.sharing, touches);
  table.is_exact = is_best;
  if (!touches.empty())
    table.chain = chain_of(way.least.cycle, work.batches.front(), way.least.wait);
  return table;
}

Duration unpaced_wait(const Crew& crew, int batches, const std::vector<Touch>& touches,
                      double last_share) {
  const PourWork work = work_of(crew, batches, last_share);
  const Sharing way = sharings(crew, 1).front();
  const DifferenceGraph graph = graph_of(work, way, {});
  std::vector<double> x(graph.nodes(), 0);
  static_cast<void>(graph.raise(x, 0));
  return table_of(x, work, way, touches).worst_wait;
}

}  // namespace strikeoff
