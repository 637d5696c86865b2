// SPDX-License-Identifier: MIT
#include "odds/crew_course.h"

namespace strikeoff {

OperationTimes usual_times(const Times& t) {
  return {t.load.usual.si(),  t.mix.usual.si(),  t.discharge.usual.si(), t.reset.usual.si(),
          t.carry.usual.si(), t.back.usual.si(), t.place.usual.si()};
}

CrewCourse::CrewCourse(const Crew& crew, const std::vector<Batch>& batches) {
  for (std::size_t p = 0; p < crew.people.size(); ++p) {
    Person person;
    for (const Role role : crew.people[p]) {
      if (role == Role::mix) mixing_.push_back(p);
      if (role == Role::carry) carrying_.push_back(p);
      if (role == Role::place) placing_.push_back(p);
      person.carries = person.carries || role == Role::carry;
      person.places = person.places || role == Role::place;
    }
    people_.push_back(person);
  }
  std::size_t mixers = 0;
  for (std::size_t i = 0; i < batches.size(); ++i) {
    const Batch& batch = batches[i];
    mixer_.push_back(static_cast<std::size_t>(batch.mixer - 1));
    mixers = std::max(mixers, mixer_.back() + 1);
    WaterRule rule;
    std::size_t j = i;
    // Minutes are added in another order here than in the plan: 1 us is no difference.
    while (j > 0 && batches[j - 1].place_start > batch.contact + seconds(1e-6)) --j;
    if (j > 0) {
      rule.place = j - 1;
      rule.after_place = (batch.contact - batches[j - 1].place_start).si();
    }
    if (i > 0 && j < i) {
      rule.counts_water = true;
      rule.after_water = (batch.contact - batches[i - 1].contact).si();
    }
    rules_.push_back(rule);
  }
  free_.resize(people_.size());
  empty_.resize(mixers);
  reset_.resize(mixers);
  contact_.resize(batches.size());
  start_.resize(batches.size());
  placed_.resize(batches.size());
}

}  // namespace strikeoff
