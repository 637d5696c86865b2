// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json lift(const LiftPlan& lift) {
  Json result = {{"name", lift.name},
                 {"mass_kg", number(lift.mass.si())},
                 {"sharing", lift.sharing},
                 {"out_mm", number(lift.out.in_mm())},
                 {"from_mm", number(lift.from.in_mm())},
                 {"by_mm", number(lift.by.in_mm())},
                 {"per_minute", number(lift.per_minute)},
                 {"lasting_min", number(in_minutes(lift.lasting))},
                 {"horizontal", number(lift.horizontal)},
                 {"vertical", number(lift.vertical)},
                 {"distance", number(lift.distance)},
                 {"frequency", number(lift.frequency)},
                 {"coupling", number(lift.coupling)},
                 {"recommended_kg", number(lift.recommended.si())}};
  if (lift.index) result["index"] = number(*lift.index);
  if (lift.parts) result["parts"] = *lift.parts;
  return result;
}

Json person(const PersonLoad& person) {
  return {{"name", person.name},
          {"bags_in_kg", number(person.bags_in.si())},
          {"to_mixer_kg", number(person.to_mixer.si())},
          {"water_kg", number(person.water.si())},
          {"batches_kg", number(person.batches.si())},
          {"mass_kg", number(person.mass.si())}};
}

}  // namespace

Json handling(const HandlingPlan& handling) {
  return {{"lifts", array(handling.lifts, lift)}, {"people", array(handling.people, person)}};
}

}  // namespace strikeoff::json
