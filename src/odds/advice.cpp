// SPDX-License-Identifier: MIT
#include "odds/advice.h"

#include <fmt/core.h>

#include "core/format.h"

namespace strikeoff {
namespace {

/// "5 in 100"
std::string in_a_hundred(double share) {
  return show_number(share * 100, 1) + " in 100";
}

std::string doses(double number) {
  return show_number(number, 2) + (number > 1 ? " doses" : " dose");
}

/// What the retarder can do about joints and stiff batches.
std::string on_dose(const Odds& odds) {
  const SaferMix& remedy = *odds.remedy;
  const std::string goal = fmt::format("For at most {} such days the mix must stay workable for {}",
                                       in_a_hundred(odds.risk), show(remedy.working_time));
  if (!remedy.doses) {
    return goal +
           ": add a retarder, work faster, or mix smaller batches; the plan's smallest crew and "
           "its checks say what else would do.";
  }
  if (!remedy.enough) {
    return fmt::format(
        "{}, and {} of {} a bag, the most it may have, {} not enough: use smaller batches, one "
        "more person or mixer, or colder water too.",
        goal, doses(*remedy.most_doses), remedy.retarder, *remedy.most_doses > 1 ? "are" : "is");
  }
  return fmt::format("{}: {} of {} a bag; the plan has {}.", goal, doses(*remedy.doses),
                     remedy.retarder, show_number(remedy.planned, 2));
}

std::string on_input(Input leading) {
  switch (leading) {
    case working_time_input:
      return "The working time of the mix matters most: on the day time a test bucket, write its "
             "minutes into the job and run this again.";
    case temperature_input:
      return "The temperature of the mix matters most: keep bags and water in the shade, measure "
             "the first batch, and have colder water ready.";
    case pace_input:
      return "The crew's pace matters most: rehearse one batch with a stopwatch and write the "
             "usual and the bad minutes into the job.";
    case stops_input:
      return "Stops of the drill matter most: have a second one with its paddle on, plugged in.";
    case mixing_input:
      return "The minutes for mixing matter most: open bags and measure water beforehand.";
    case carrying_input:
      return "The minutes for carrying matter most: clear the way, or put the mixer nearer.";
    case placing_input:
      return "The minutes for placing matter most: one more person who places, or a helper who "
             "taps the forms.";
    case input_count:
      break;
  }
  return {};
}

bool above(const std::optional<Chance>& chance, double risk) {
  return chance && chance->share > risk;
}

}  // namespace

std::string name_of(Input input) {
  switch (input) {
    case working_time_input:
      return "working time of the mix that day";
    case temperature_input:
      return "temperature of the mix";
    case pace_input:
      return "pace of the crew that day";
    case stops_input:
      return "stops of the drill";
    case mixing_input:
      return "minutes for loading and mixing";
    case carrying_input:
      return "minutes for carrying";
    case placing_input:
      return "minutes for placing";
    case input_count:
      break;
  }
  return {};
}

std::vector<std::string> advice_on(const Odds& odds, Input leading) {
  std::vector<std::string> advice;
  if (odds.plan_stops) {
    advice.emplace_back(
        "The plan itself is at STOP: mend that first (strikeoff check says what it is).");
  }
  if (odds.remedy) {
    if (above(odds.cold_joint, odds.risk) || above(odds.stiff_batch, odds.risk)) {
      advice.push_back(on_dose(odds));
      if (!odds.drivers.empty()) advice.push_back(on_input(leading));
    } else {
      advice.push_back(fmt::format(
          "Joints: within the {} asked for; a working time down to {} would keep them there.",
          in_a_hundred(odds.risk), show(odds.remedy->working_time)));
    }
  }
  if (above(odds.late_trowel, odds.risk)) {
    advice.emplace_back(
        "Trowelling comes too late too often: one more person with a trowel, or pour less of the "
        "top at a time.");
  }
  if (above(odds.overrun, odds.risk)) {
    advice.push_back(
        fmt::format("Allow {} for the pour: 95 in 100 are over by then.", show(odds.end->p95)));
  }
  if (odds.short_with_spare.share > odds.risk) {
    advice.push_back(fmt::format("Have {} at hand, not {}: that many fill the forms in {} pours.",
                                 count(odds.bags_needed, "bag", "bags"),
                                 odds.bags + odds.spare_bags, in_a_hundred(1 - odds.risk)));
  } else if (odds.short_of_mix.share > odds.risk) {
    advice.emplace_back("Keep the spare bags by the mixer, with their water measured.");
  }
  return advice;
}

std::vector<OddsAssumption> assumptions_of(const Spreads& s, bool beat_is_bound, Units units) {
  const auto percent = [](double share) { return show_number(share * 100, 1) + " %"; };
  // A difference of temperatures.
  const std::string warmer = units == Units::us ? show_number(s.mix_temperature_c * 1.8, 1) + " F"
                                                : show_number(s.mix_temperature_c, 1) + " C";
  std::vector<OddsAssumption> list{
      {"what a cold joint is", "wait over the working time",
       "the whole working time; the share the plan may use of it is the plan's safety, not counted "
       "here"},
      {"working time, from day to day", percent(s.working_time),
       "standard deviation of its logarithm, the same for all batches of a day (assumption)"},
      {"working time, from batch to batch", percent(s.batch_working_time),
       "the same, for each batch; slips with the water are in it (assumption)"},
      {"temperature of the mix", warmer,
       "standard deviation of the plan's estimate; it works through the temperature factor "
       "(assumption)"},
      {"pace of the crew", percent(s.crew_pace),
       "standard deviation of its logarithm, the same for all minutes of a day (assumption)"},
      {"minutes of one operation", percent(s.least_time) + " of usual, to bad",
       "beta-PERT about the job's usual minutes (assumption); one time for both does not vary"},
      {"stops of the drill",
       fmt::format("{} of batches, {}", percent(s.drill_stop), show(s.drill_swap)),
       "a stop happens while mixing, and the water is in (assumption)"},
      {"trowelling",
       fmt::format("{}, {} or {} min per m2 and pass", show_number(quick_trowel, 1),
                   show_number(usual_trowel, 1), show_number(slow_trowel, 1)),
       "quick, usual, slow, beta-PERT; the final set comes early or late as the working time does "
       "(assumption)"},
      {"yield of a bag", percent(s.yield), "standard deviation (assumption)"},
      {"volume of the forms", percent(s.volume),
       "standard deviation: tape, bulging forms, a base out of level (assumption)"},
      {"mix lost", fmt::format("{}, at most {}", percent(s.loss_usual), percent(s.loss_bad)),
       "of the slab, in mixer and buckets and on the floor (assumption)"}};
  if (beat_is_bound) {
    list.push_back({"who does what", "batches in order",
                    "someone's jobs do not follow one another, so the pour runs slower than the "
                    "plan's beat, which is at best"});
  }
  return list;
}

}  // namespace strikeoff
