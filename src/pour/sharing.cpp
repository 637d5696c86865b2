// SPDX-License-Identifier: MIT
#include "pour/sharing.h"

#include <algorithm>
#include <map>
#include <utility>

#include "pour/crew.h"

namespace strikeoff {
namespace {

Rota holders_of(const Crew& crew, Role role) {
  Rota found;
  for (std::size_t i = 0; i < crew.people.size(); ++i) {
    if (has(crew.people[i], role)) found.push_back(i);
  }
  return found;
}

/// Stretches of who holds the role, those with the fewest other roles first.
std::vector<Rota> turns(const Crew& crew, Role role) {
  constexpr std::size_t most = 6;  // people for whom all stretches are tried
  Rota all = holders_of(crew, role);
  std::stable_sort(all.begin(), all.end(), [&](std::size_t a, std::size_t b) {
    return crew.people[a].size() < crew.people[b].size();
  });
  if (all.size() > most) return {all};
  std::vector<Rota> found;
  for (std::size_t from = 0; from < all.size(); ++from) {
    for (std::size_t to = from + 1; to <= all.size(); ++to) {
      found.emplace_back(all.begin() + static_cast<std::ptrdiff_t>(from),
                         all.begin() + static_cast<std::ptrdiff_t>(to));
    }
  }
  return found;
}

/// How long the busiest person works for each batch on average.
double busiest(const BatchWork& work, const Sharing& sharing) {
  std::map<std::size_t, double> busy;
  const auto share = [](const Rota& turn) { return 1 / static_cast<double>(turn.size()); };
  for (const std::size_t person : sharing.mix) {
    busy[person] += (work.reset + work.load + work.mix + work.discharge) * share(sharing.mix);
  }
  for (const std::size_t person : sharing.carry) {
    const bool mixes_too =
        std::find(sharing.mix.begin(), sharing.mix.end(), person) != sharing.mix.end();
    const double discharge = mixes_too && sharing.mix == sharing.carry ? 0 : work.discharge;
    busy[person] += (discharge + work.carry + work.back) * share(sharing.carry);
  }
  for (const std::size_t person : sharing.place) busy[person] += work.place * share(sharing.place);
  double most = 0;
  for (const auto& [person, time] : busy) most = std::max(most, time);
  return most;
}

}  // namespace

std::vector<Sharing> sharings(const Crew& crew, std::size_t most) {
  if (takes_turns(crew.people)) {
    return {{holders_of(crew, Role::mix), holders_of(crew, Role::carry),
             holders_of(crew, Role::place)}};
  }
  const BatchWork one = work_of(crew, 1, 1).batches.front();
  std::vector<std::pair<double, Sharing>> ways;
  for (const Rota& mix : turns(crew, Role::mix)) {
    for (const Rota& carry : turns(crew, Role::carry)) {
      for (const Rota& place : turns(crew, Role::place)) {
        const Sharing way{mix, carry, place};
        // Too few mixing may leave mixers idle.
        const auto units =
            std::min(static_cast<double>(mix.size()), static_cast<double>(crew.mixers));
        const double mixer = (one.reset + one.load + one.mix + one.discharge) / units;
        ways.emplace_back(std::max(mixer, busiest(one, way)), way);
      }
    }
  }
  std::stable_sort(ways.begin(), ways.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Sharing> best;
  for (std::size_t i = 0; i < std::min(most, ways.size()); ++i) best.push_back(ways[i].second);
  return best;
}

bool share_several_roles(const Crew& crew) {
  const auto shared = [&](Role role) {
    const Rota who = holders_of(crew, role);
    const bool with_others = std::any_of(who.begin(), who.end(), [&](std::size_t i) {
      const auto& roles = crew.people[i];
      return std::count_if(roles.begin(), roles.end(),
                           [](Role own) { return own != Role::finish; }) > 1;
    });
    return who.size() > 1 && with_others;
  };
  return shared(Role::mix) || shared(Role::carry) || shared(Role::place);
}

Sharing hands_apart(const Crew& crew) {
  std::size_t next = 0;
  const auto own = [&](Role role) {
    Rota turn;
    for (int i = holders(crew.people, role); i > 0; --i) turn.push_back(next++);
    return turn;
  };
  Sharing apart;
  apart.mix = own(Role::mix);
  apart.carry = own(Role::carry);
  apart.place = own(Role::place);
  return apart;
}

bool only_order_is_open(const Crew& crew) {
  const Rota mix = holders_of(crew, Role::mix), carry = holders_of(crew, Role::carry),
             place = holders_of(crew, Role::place);
  return mix.size() == 1 && place == mix && carry.size() == 1 && carry != mix;
}

}  // namespace strikeoff
