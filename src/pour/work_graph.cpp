// SPDX-License-Identifier: MIT
#include "pour/work_graph.h"

#include <algorithm>

#include "pour/crew.h"

namespace strikeoff {
namespace {

/// One piece of one person's work.
struct WorkPiece {
  std::size_t node = 0;
  double takes = 0;
  unsigned work = 0;
  double back = 0;        // the walk back it makes necessary
  bool at_mixer = false;  // after the walk back
};

/// A person's work but placing, in the order of the batches; `until[i]` is how much of it belongs
/// to the batches up to i.
std::vector<WorkPiece> other_work(const PourWork& work, const Sharing& sharing, std::size_t person,
                                  std::vector<std::size_t>& until) {
  std::vector<WorkPiece> pieces;
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    const BatchWork& b = work.batches[i];
    const bool his_mix = whose(sharing.mix, i) == person;
    const bool his_carry = whose(sharing.carry, i) == person;
    if (his_mix) {
      pieces.push_back({node(i, Step::reset), b.reset, 0, 0, true});
      pieces.push_back({node(i, Step::load), b.load, 0, 0, true});
      pieces.push_back({node(i, Step::mix), b.mix, mixes, 0, true});
    }
    if (his_carry) {
      pieces.push_back(
          {node(i, Step::discharge), b.discharge + b.carry, tips_out | carries, b.back, true});
    } else if (his_mix) {
      pieces.push_back({node(i, Step::discharge), b.discharge, tips_out, 0, true});
    }
    until.push_back(pieces.size());
  }
  return pieces;
}

std::vector<WorkPiece> day_of(const PourWork& work, const Sharing& sharing, std::size_t person) {
  std::vector<std::size_t> until;
  const std::vector<WorkPiece> others = other_work(work, sharing, person, until);
  std::vector<WorkPiece> day;
  std::size_t done = 0;
  for (std::size_t i = 0; i < work.batches.size(); ++i) {
    if (whose(sharing.place, i) != person) continue;
    const std::size_t upto = std::min(others.size(), until[i] + sharing.placed_after);
    while (done < upto) day.push_back(others[done++]);
    day.push_back({node(i, Step::place), work.batches[i].place, places, 0, false});
  }
  day.insert(day.end(), others.begin() + static_cast<std::ptrdiff_t>(done), others.end());
  return day;
}

}  // namespace

std::size_t whose(const Rota& turn, std::size_t batch) {
  return turn[batch % turn.size()];
}

PourWork work_of(const Crew& crew, int batches, double last_share) {
  const Times& t = crew.times;
  const BatchWork full{t.reset.usual.si(),     t.load.usual.si(),  t.mix.usual.si(),
                       t.discharge.usual.si(), t.carry.usual.si(), t.back.usual.si(),
                       t.place.usual.si()};
  PourWork work;
  work.batches.assign(static_cast<std::size_t>(batches), full);
  BatchWork& last = work.batches.back();
  last.load *= last_share;
  last.discharge *= last_share;
  last.place *= last_share;
  work.mixers =
      static_cast<std::size_t>(std::max(1, std::min(crew.mixers, holders(crew.people, Role::mix))));
  return work;
}

DifferenceGraph process_graph(const PourWork& work) {
  const std::size_t n = work.batches.size();
  DifferenceGraph graph(n * steps_of_batch);
  for (std::size_t i = 0; i < n; ++i) {
    const BatchWork& b = work.batches[i];
    graph.add({node(i, Step::reset), node(i, Step::load), b.reset});
    graph.add({node(i, Step::load), node(i, Step::mix), b.load});
    graph.add({node(i, Step::mix), node(i, Step::discharge), b.mix, 0, mixes});
    graph.add({node(i, Step::discharge), node(i, Step::place), b.discharge + b.carry, 0,
               tips_out | carries});
    if (i + work.mixers < n) {
      graph.add(
          {node(i, Step::discharge), node(i + work.mixers, Step::reset), b.discharge, 0, tips_out});
    }
    if (i + 1 < n) {
      graph.add({node(i, Step::mix), node(i + 1, Step::mix), 0});
      graph.add({node(i, Step::place), node(i + 1, Step::place), 0});
    }
  }
  return graph;
}

void add_people(DifferenceGraph& graph, const PourWork& work, const Sharing& sharing) {
  std::vector<std::size_t> people;
  for (const Rota* turn : {&sharing.mix, &sharing.carry, &sharing.place}) {
    people.insert(people.end(), turn->begin(), turn->end());
  }
  std::sort(people.begin(), people.end());
  people.erase(std::unique(people.begin(), people.end()), people.end());
  for (const std::size_t person : people) {
    const std::vector<WorkPiece> day = day_of(work, sharing, person);
    double back = 0;
    for (std::size_t k = 0; k + 1 < day.size(); ++k) {
      back = std::max(back, day[k].back);
      double takes = day[k].takes;
      if (day[k + 1].at_mixer) {
        takes += back;
        back = 0;
      }
      graph.add({day[k].node, day[k + 1].node, takes, 0, day[k].work});
    }
  }
}

void add_joints(DifferenceGraph& graph, const PourWork& work, const std::vector<Touch>& touches) {
  for (const Touch& touch : touches) {
    const auto first = static_cast<std::size_t>(touch.first - 1);
    const auto second = static_cast<std::size_t>(touch.second - 1);
    graph.add(
        {node(second, Step::place), node(first, Step::mix), work.batches[second].place, 1, places});
  }
}

}  // namespace strikeoff
