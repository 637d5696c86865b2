// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

constexpr long long minutes_a_day = 1440;
constexpr Duration a_day = days(1);

/// Up to the next full step; what is 1e-6 min over a full one is rounding.
long long up(Duration time, long long step) {
  const auto whole = static_cast<double>(step);
  return std::llround(std::ceil(in_minutes(time) / whole - 1e-6) * whole);
}

std::string day_after(const StartDate& start, long long days) {
  return iso({std::chrono::sys_days{start.day} + std::chrono::days{days}, {}});
}

/// The clock on the day of the pour, with the date on another day; a day or more away up to the
/// next full hour: nothing is known to the minute then.
std::string local(const StartDate& start, Duration from_contact) {
  const long long midnight = start.time->count();
  const bool far = from_contact >= a_day;
  const long long moment = far ? up(from_contact + minutes(static_cast<double>(midnight)), 60)
                               : midnight + std::llround(in_minutes(from_contact));
  const auto day = static_cast<long long>(
      std::floor(static_cast<double>(moment) / static_cast<double>(minutes_a_day)));
  const long long minute = moment - day * minutes_a_day;
  const std::string clock = fmt::format("{:02}:{:02}", minute / 60, minute % 60);
  return day == 0 ? clock : day_after(start, day) + " " + clock;
}

/// The stopwatch; a day or more away up to the next full hour: "+1 d 3 h".
std::string counted(Duration from_contact) {
  if (from_contact < a_day) return stopwatch(from_contact, false);
  const long long hours = up(from_contact, 60) / 60;
  const std::string days = fmt::format("+{} d", hours / 24);
  return hours % 24 == 0 ? days : fmt::format("{} {} h", days, hours % 24);
}

/// Without a start time a day or more away is a date, up to the next whole day.
std::string moment(const Plan& plan, const std::optional<Duration>& from_contact) {
  if (!from_contact) return "____";
  if (!plan.date) return counted(*from_contact);
  if (plan.date->time) return local(*plan.date, *from_contact);
  const bool far = *from_contact >= a_day || *from_contact <= -a_day;
  if (!far) return counted(*from_contact);
  return day_after(*plan.date, up(*from_contact, minutes_a_day) / minutes_a_day);
}

bool same_moment(const Task& task) {
  return task.start == task.end;
}

using TaskIterator = std::vector<Task>::const_iterator;

/// Steps of which only the order is known: nobody can say how long each takes.
bool is_order_only(TaskIterator first, TaskIterator last) {
  return last - first > 1 && first->start && std::all_of(first, last, [&](const Task& task) {
           return same_moment(task) && task.start == first->start;
         });
}

Table steps(TaskIterator first, TaskIterator last) {
  Table table({{"Step", Align::right}, {"What"}, {"Who"}});
  for (int number = 1; first != last; ++first, ++number) {
    table.add({std::to_string(number), first->task, first->who});
  }
  return table;
}

Table tasks(const Plan& plan, TaskIterator first, TaskIterator last) {
  Table table({{"From", Align::right}, {"To", Align::right}, {"What"}, {"Who"}});
  for (; first != last; ++first) {
    const std::string from = moment(plan, first->start), to = moment(plan, first->end);
    // Rounded up to the hour a short step begins and ends at once.
    const bool at_once = same_moment(*first) || (from == to && first->start);
    table.add({from, at_once ? "" : to, first->task, first->who});
  }
  return table;
}

Table phase_table(const Plan& plan, TaskIterator first, TaskIterator last) {
  return is_order_only(first, last) ? steps(first, last) : tasks(plan, first, last);
}

/// How to read the times; each rule only where the plan needs it.
std::string reading(const Plan& plan) {
  const auto any = [&](auto is) {
    return std::any_of(plan.schedule.begin(), plan.schedule.end(), is);
  };
  std::string text = "Times are h:min before (-) or after (+) the first water.";
  std::string far = " Not before: a day or more away is rounded up to the full hour.";
  if (plan.date && plan.date->time) {
    text = "Local times, with the date where it is another day.";
  } else if (plan.date) {
    far = " Not before: a day or more away is a date, rounded up to the whole day.";
  }
  if (any([](const Task& task) { return task.end && *task.end >= a_day; })) text += far;
  if (any([](const Task& task) { return !task.start; })) {
    text += " ____: the bag does not say, so nobody can; write it in from its data sheet.";
  }
  return text;
}

}  // namespace

Text reading_times(const Plan& plan) {
  return paragraph("  ", reading(plan));
}

Text tasks_of(const Plan& plan, std::string_view phase) {
  const auto in_phase = [&](const Task& task) { return task.phase == phase; };
  const auto first = std::find_if(plan.schedule.begin(), plan.schedule.end(), in_phase);
  const auto last = std::find_if_not(first, plan.schedule.end(), in_phase);
  if (first == last) return {};
  return placed(phase_table(plan, first, last), 4);
}

Text the_day(const Plan& plan) {
  if (plan.schedule.empty()) return "";
  Text result = heading("THE DAY") + reading_times(plan);
  for (auto first = plan.schedule.begin(); first != plan.schedule.end();) {
    const auto last = std::find_if(first, plan.schedule.end(),
                                   [&](const Task& task) { return task.phase != first->phase; });
    result +=
        "\n" +
        paragraph("  ", first->phase + (is_order_only(first, last) ? ", in this order" : "")) +
        placed(phase_table(plan, first, last), 4);
    first = last;
  }
  return result;
}

}  // namespace strikeoff::text
