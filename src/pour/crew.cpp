// SPDX-License-Identifier: MIT
#include "pour/crew.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <utility>

namespace strikeoff {
namespace {

/// The roles that set the beat, in the order of the work.
constexpr std::array pouring_roles{Role::mix, Role::carry, Role::place};

bool same_work(const Roles& a, const Roles& b) {
  return std::all_of(pouring_roles.begin(), pouring_roles.end(),
                     [&](Role role) { return has(a, role) == has(b, role); });
}

bool share_a_role(const Roles& a, const Roles& b) {
  return std::any_of(pouring_roles.begin(), pouring_roles.end(),
                     [&](Role role) { return has(a, role) && has(b, role); });
}

struct Words {
  const char *plain, *one, *many;
};

Words words(Role role) {
  switch (role) {
    case Role::mix:
      return {"mix", "mixes", "mix"};
    case Role::carry:
      return {"carry", "carries", "carry"};
    case Role::place:
      return {"place", "places", "place"};
    case Role::finish:
      break;
  }
  return {"finish", "finishes", "finish"};
}

/// "a", "a and b", "a, b and c"; `last` stands before the last one.
std::string list(const std::vector<std::string>& items, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? last : ", ";
    text += items[i];
  }
  return text;
}

std::string persons(const std::vector<std::size_t>& numbers) {
  std::vector<std::string> items;
  for (const std::size_t number : numbers) items.push_back(std::to_string(number));
  return (numbers.size() == 1 ? "person " : "persons ") + list(items, " and ");
}

std::string nobody(const std::vector<Role>& missing) {
  std::vector<std::string> verbs;
  for (const Role role : missing) verbs.emplace_back(words(role).one);
  return "nobody " + list(verbs, " or ");
}

/// "persons 1 and 2 (mix)": everyone who does the same work as the slowest person.
std::string slowest(const People& people, const Roles& roles) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < people.size(); ++i) {
    if (same_work(people[i], roles)) numbers.push_back(i + 1);
  }
  std::vector<std::string> names;
  for (const Role role : pouring_roles) {
    if (has(roles, role)) names.emplace_back(words(role).plain);
  }
  return fmt::format("{} ({})", persons(numbers), list(names, ", "));
}

/// Gives each group that is left one person or more, in every way that uses up `people`.
void staff(std::span<const Roles> groups, int people, const People& crew,
           std::vector<People>& crews) {
  const int others = static_cast<int>(groups.size()) - 1;
  for (int n = others == 0 ? people : 1; n >= 1 && n <= people - others; ++n) {
    People more = crew;
    more.insert(more.end(), static_cast<std::size_t>(n), groups.front());
    if (others == 0) {
      crews.push_back(std::move(more));
    } else {
      staff(groups.subspan(1), people - n, more, crews);
    }
  }
}

}  // namespace

bool has(const Roles& roles, Role role) {
  return std::find(roles.begin(), roles.end(), role) != roles.end();
}

std::size_t roles_held(const People& people) {
  std::size_t sum = 0;
  for (const Roles& roles : people) sum += roles.size();
  return sum;
}

int holders(const People& people, Role role) {
  return static_cast<int>(std::count_if(people.begin(), people.end(),
                                        [&](const Roles& roles) { return has(roles, role); }));
}

bool takes_turns(const People& people) {
  for (const Roles& a : people) {
    if (has(a, Role::mix) && has(a, Role::place) && !has(a, Role::carry)) return false;
    for (const Roles& b : people) {
      if (share_a_role(a, b) && !same_work(a, b)) return false;
    }
  }
  return true;
}

Duration cycle(const Crew& crew, const std::vector<Role>& roles) {
  const Times& t = crew.times;
  const auto share = [&](Role role) {
    return has(roles, role) ? 1.0 / holders(crew.people, role) : 0.0;
  };
  const double mix = share(Role::mix), carry = share(Role::carry);
  return (t.load.usual + t.mix.usual + t.reset.usual) * mix +
         t.discharge.usual * std::max(mix, carry) + (t.carry.usual + t.back.usual) * carry +
         t.place.usual * share(Role::place);
}

Pace pace(const Crew& crew) {
  const Times& t = crew.times;
  Pace pace;
  pace.lead = t.mix.usual + t.discharge.usual + t.carry.usual + t.place.usual;
  for (const Role role : pouring_roles) {
    if (holders(crew.people, role) == 0) pace.missing.push_back(role);
  }
  if (!pace.missing.empty()) {
    pace.bottleneck = nobody(pace.missing);
    return pace;
  }

  // With more mixers than people mixing the spare ones stand idle: then the person is the limit.
  if (crew.mixers <= holders(crew.people, Role::mix)) {
    pace.takt = (t.load.usual + t.mix.usual + t.discharge.usual + t.reset.usual) / crew.mixers;
    pace.bottleneck = crew.mixers == 1 ? "the mixer" : fmt::format("the {} mixers", crew.mixers);
  }
  for (const Roles& roles : crew.people) {
    const Duration own = cycle(crew, roles);
    // A tie goes to whoever was named first; rounding must not rename it.
    if (own.si() > pace.takt.si() * (1 + 1e-12)) {
      pace.takt = own;
      pace.bottleneck = slowest(crew.people, roles);
    }
  }
  return pace;
}

Crew with_bags(Crew crew, double bags) {
  const double by = bags / crew.bags_per_batch;
  for (UsualBad Times::*time : {&Times::load, &Times::discharge, &Times::place}) {
    UsualBad& takes = crew.times.*time;
    takes = {takes.usual * by, takes.bad * by};
  }
  crew.bags_per_batch = bags;
  return crew;
}

const char* name_of(Role role) {
  return words(role).plain;
}

std::string describe(const std::vector<std::vector<Role>>& people) {
  std::vector<std::string> groups;
  for (std::size_t i = 0; i < people.size();) {
    std::vector<std::size_t> numbers;
    const Roles& roles = people[i];
    for (; i < people.size() && people[i] == roles; ++i) numbers.push_back(i + 1);
    std::vector<std::string> verbs;
    for (const Role role : roles) {
      verbs.emplace_back(numbers.size() == 1 ? words(role).one : words(role).many);
    }
    groups.push_back(persons(numbers) + " " + list(verbs, " and "));
  }
  return list(groups, "; ");
}

std::vector<std::vector<std::vector<Role>>> consecutive_crews(int people) {
  const std::vector<std::vector<Roles>> splits{{{Role::mix, Role::carry, Role::place}},
                                               {{Role::mix}, {Role::carry, Role::place}},
                                               {{Role::mix, Role::carry}, {Role::place}},
                                               {{Role::mix}, {Role::carry}, {Role::place}}};
  std::vector<People> crews;
  for (const std::vector<Roles>& split : splits) staff(split, people, {}, crews);
  return crews;
}

}  // namespace strikeoff
