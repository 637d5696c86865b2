// SPDX-License-Identifier: MIT
// The least edge wait against every order of the work of small pours, and its laws over random
// crews. Fixed seeds, our own draws.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <vector>

#include "pour/crew.h"
#include "pour/timetable.h"

using namespace strikeoff;

namespace {

using People = std::vector<std::vector<Role>>;
constexpr Role mix = Role::mix, carry = Role::carry, place = Role::place;

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int roll(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
  }

 private:
  std::mt19937 engine_;
};

std::vector<UsualBad*> each(Times& t) {
  return {&t.load, &t.mix, &t.discharge, &t.carry, &t.back, &t.place, &t.reset};
}

/// Whole multiples of 12 s, so that a ratio over up to 4 joints is a whole second.
Crew random_crew(Dice& dice, const People& people, int mixers) {
  Crew crew;
  crew.people = people;
  crew.mixers = mixers;
  for (UsualBad* time : each(crew.times)) time->usual = seconds(12.0 * dice.roll(0, 9));
  return crew;
}

std::vector<Touch> random_touches(Dice& dice, int batches) {
  std::vector<Touch> touches;
  for (int i = 1; i < batches; ++i) touches.push_back({i, i + 1});
  if (batches > 2 && dice.roll(0, 2) == 0) touches.push_back({1, dice.roll(3, batches)});
  return touches;
}

/// The least worst wait over every order of everyone's work and every way to share a role, by
/// trying them all; written apart from the library. Five pieces of work a batch (0 reset, 1 load, 2
/// mix, 3 tip out and carry, 4 place), batches in order in each.
class Oracle {
 public:
  Oracle(const Crew& crew, int batches, const std::vector<Touch>& touches)
      : crew_(crew), n_(batches), touches_(touches) {
    const Times& t = crew.times;
    takes_ = {whole(t.reset), whole(t.load), whole(t.mix), whole(t.discharge), whole(t.place)};
    for (const Role role : {mix, carry, place}) {
      std::vector<int> found;
      for (std::size_t i = 0; i < crew.people.size(); ++i) {
        const auto& own = crew.people[i];
        if (std::find(own.begin(), own.end(), role) != own.end())
          found.push_back(static_cast<int>(i));
      }
      holders_.push_back(found);
    }
    units_ = std::min(crew.mixers, static_cast<int>(holders_[0].size()));
  }

  int least() {
    best_ = 1000000;
    share(0);
    return best_;
  }

 private:
  struct Arc {
    int from, to, takes;
    bool joint;
  };
  static int whole(const UsualBad& t) { return static_cast<int>(t.usual.si() + 0.5); }

  void share(int slot) {
    if (slot == 3 * n_) return order({}, std::vector<int>(static_cast<std::size_t>(n_), 0));
    for (const int person : holders_[static_cast<std::size_t>(slot / n_)]) {
      who_.push_back(person);
      share(slot + 1);
      who_.pop_back();
    }
  }
  [[nodiscard]] int person(int role, int batch) const {
    return who_[static_cast<std::size_t>(role * n_ + batch)];
  }
  void order(std::vector<int> sequence, std::vector<int> done) {
    if (sequence.size() == static_cast<std::size_t>(5 * n_)) return judge(sequence);
    for (int i = 0; i < n_; ++i) {
      const auto at = static_cast<std::size_t>(i);
      if (done[at] == 5 || (i > 0 && done[at - 1] <= done[at])) continue;
      sequence.push_back(5 * i + done[at]);
      ++done[at];
      order(sequence, done);
      --done[at];
      sequence.pop_back();
    }
  }
  void judge(const std::vector<int>& sequence) {
    arcs_.clear();
    const int carrying = whole(crew_.times.carry), back = whole(crew_.times.back);
    for (int i = 0; i < n_; ++i) {
      for (int k = 0; k < 4; ++k) {
        arcs_.push_back({5 * i + k, 5 * i + k + 1,
                         takes_[static_cast<std::size_t>(k)] + (k == 3 ? carrying : 0), false});
      }
      if (i + units_ < n_) arcs_.push_back({5 * i + 3, 5 * (i + units_), takes_[3], false});
      if (i + 1 < n_) {
        arcs_.push_back({5 * i + 2, 5 * i + 7, 0, false});
        arcs_.push_back({5 * i + 4, 5 * i + 9, 0, false});
      }
    }
    for (const Touch& touch : touches_) {
      arcs_.push_back({5 * touch.second - 1, 5 * touch.first - 3, takes_[4], true});
    }
    for (std::size_t p = 0; p < crew_.people.size(); ++p) {
      const int me = static_cast<int>(p);
      int last = -1, busy = 0, walk = 0;
      for (const int piece : sequence) {
        const int i = piece / 5, k = piece % 5;
        const bool mine = k == 4   ? person(2, i) == me
                          : k == 3 ? person(0, i) == me || person(1, i) == me
                                   : person(0, i) == me;
        if (!mine) continue;
        if (last >= 0) {
          const int on_foot = k == 4 ? 0 : walk;
          arcs_.push_back({last, piece, busy + on_foot, false});
          if (k != 4) walk = 0;
        }
        last = piece;
        busy = takes_[static_cast<std::size_t>(k)];
        if (k == 3 && person(1, i) == me) {
          busy += carrying;
          walk = back;
        }
      }
    }
    if (!possible(best_ - 1)) return;
    int low = 0, high = best_ - 1;  // low is too short or 0
    while (low < high) {
      const int middle = (low + high) / 2;
      if (possible(middle)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    best_ = high;
  }
  [[nodiscard]] bool possible(int wait) const {
    std::vector<int> x(static_cast<std::size_t>(5 * n_), 0);
    for (int round = 0; round <= 5 * n_; ++round) {
      bool changed = false;
      for (const Arc& arc : arcs_) {
        const int least =
            x[static_cast<std::size_t>(arc.from)] + arc.takes - (arc.joint ? wait : 0);
        int& to = x[static_cast<std::size_t>(arc.to)];
        if (least > to) {
          to = least;
          changed = true;
        }
      }
      if (!changed) return true;
    }
    return false;
  }

  const Crew& crew_;
  int n_, units_ = 1, best_ = 0;
  std::vector<Touch> touches_;
  std::vector<int> takes_;
  std::vector<std::vector<int>> holders_;
  std::vector<int> who_;
  std::vector<Arc> arcs_;
};

void agrees(const Crew& crew, int batches, const std::vector<Touch>& touches) {
  const Timetable table = least_wait_timetable(crew, batches, touches);
  const int least = Oracle(crew, batches, touches).least();
  CAPTURE(batches, describe(crew.people), crew.mixers, table.chain);
  if (table.is_exact) {
    CHECK(table.worst_wait.si() == Approx(least).margin(1e-3));
  } else {
    CHECK(table.worst_wait.si() >= least - 1e-3);
  }
}

}  // namespace

TEST_CASE("no order of the work of a small pour waits less", "[properties][timetable]") {
  Dice dice(1);
  const std::vector<People> crews{{{mix}, {carry}, {place}},
                                  {{mix}, {carry, place}},
                                  {{mix, carry}, {place}},
                                  {{mix, carry, place}},
                                  {{mix, place}, {carry}}};
  for (int round = 0; round < 6; ++round) {
    for (const People& people : crews) {
      const Crew crew = random_crew(dice, people, dice.roll(1, 2));
      const int batches = dice.roll(2, 3);
      const auto touches = random_touches(dice, batches);
      CHECK(least_wait_timetable(crew, batches, touches).is_exact);
      agrees(crew, batches, touches);
    }
  }
}

TEST_CASE("no sharing of the work of a small pour among more people waits less",
          "[properties][timetable]") {
  Dice dice(2);
  const std::vector<People> crews{
      {{mix}, {mix}, {carry}, {place}},           {{mix}, {carry}, {place}, {place}},
      {{mix}, {carry, place}, {carry, place}},    {{mix, carry}, {mix, carry}, {place}},
      {{mix, carry, place}, {mix, carry, place}}, {{mix, carry}, {carry, place}},
      {{mix, carry}, {carry}, {place}},           {{mix, place}, {carry, place}}};
  for (int round = 0; round < 10; ++round) {
    for (const People& people : crews) {
      const Crew crew = random_crew(dice, people, dice.roll(1, 2));
      agrees(crew, 2, {{1, 2}});
    }
  }
}

TEST_CASE("the steady beat is what the exact timetable finds", "[properties][timetable]") {
  Dice dice(3);
  for (int round = 0; round < 60; ++round) {
    const auto crews = consecutive_crews(dice.roll(1, 5));
    const People& people =
        crews[static_cast<std::size_t>(dice.roll(0, static_cast<int>(crews.size()) - 1))];
    const Crew crew = random_crew(dice, people, dice.roll(1, 3));
    const int gap = dice.roll(1, 3), batches = dice.roll(12, 40);
    std::vector<Touch> touches;
    for (int i = 1; i + gap <= batches; ++i) touches.push_back({i, i + gap});
    const Timetable table = least_wait_timetable(crew, batches, touches);
    const Pace beat = pace(crew);
    CAPTURE(round, describe(people), gap);
    CHECK(table.worst_wait.si() == Approx((beat.takt * gap + beat.lead).si()).margin(1e-6));
    CHECK(table.own_age.si() <= table.worst_wait.si() + 1e-6);
  }
}

TEST_CASE("waits follow the times they are made of", "[properties][timetable]") {
  Dice dice(4);
  const std::vector<People> crews{{{mix}, {carry}, {place}},
                                  {{mix, place}, {carry}},
                                  {{mix, carry}, {carry, place}},
                                  {{mix}, {mix}, {carry, place}, {carry, place}}};
  for (int round = 0; round < 40; ++round) {
    Crew crew = random_crew(dice, crews[static_cast<std::size_t>(round) % crews.size()], 2);
    const int batches = dice.roll(2, 9);
    const auto touches = random_touches(dice, batches);
    const Timetable before = least_wait_timetable(crew, batches, touches);
    CAPTURE(round);
    CHECK(before.worst_wait <= unpaced_wait(crew, batches, touches) + seconds(1e-3));
    Crew scaled = crew;
    for (UsualBad* time : each(scaled.times)) time->usual = time->usual * 2.5;
    CHECK(least_wait_timetable(scaled, batches, touches).worst_wait.si() ==
          Approx(2.5 * before.worst_wait.si()).margin(1e-3));
    Crew slower = crew;
    each(slower.times)[static_cast<std::size_t>(dice.roll(0, 6))]->usual += seconds(30);
    const Timetable after = least_wait_timetable(slower, batches, touches);
    if (before.is_exact) CHECK(after.worst_wait.si() >= before.worst_wait.si() - 1e-3);
    if (!takes_turns(crew.people)) continue;
    Crew more = crew;
    ++more.mixers;
    more.people.push_back(more.people[static_cast<std::size_t>(dice.roll(0, 1))]);
    CHECK(least_wait_timetable(more, batches, touches).worst_wait.si() <=
          before.worst_wait.si() + 1e-3);
  }
}
