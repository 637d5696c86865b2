// SPDX-License-Identifier: MIT
#include <algorithm>
#include <string_view>

#include "render/text_sections.h"
#include "render/text_table.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// The local clock on the day of the pour, the local date and time on other days, else the
/// stopwatch.
std::string moment(const Plan& plan, Duration from_contact,
                   const std::optional<std::string>& local) {
  if (!local) return stopwatch(from_contact, false);
  const std::string text = readable(*local);
  constexpr std::size_t date = std::string_view("2026-05-09 ").size();
  constexpr std::size_t to_minute = std::string_view("2026-05-09 09:00").size();
  const bool same_day = plan.date && text.substr(0, date - 1) == iso({plan.date->day, {}});
  return same_day ? text.substr(date, to_minute - date) : text.substr(0, to_minute);
}

bool same_moment(const Task& task) {
  return task.start == task.end;
}

using TaskIterator = std::vector<Task>::const_iterator;

/// Steps of which only the order is known: nobody can say how long each takes.
bool is_order_only(TaskIterator first, TaskIterator last) {
  return std::all_of(first, last, [&](const Task& task) {
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
    table.add({moment(plan, first->start, first->start_local),
               same_moment(*first) ? "" : moment(plan, first->end, first->end_local), first->task,
               first->who});
  }
  return table;
}

}  // namespace

std::string the_day(const Plan& plan) {
  if (plan.schedule.empty()) return "";
  std::string result = heading("THE DAY");
  const bool local = std::any_of(plan.schedule.begin(), plan.schedule.end(),
                                 [](const Task& task) { return task.start_local.has_value(); });
  result += paragraph("  ", local ? "Local times, with the date where it is another day."
                                  : "Times are h:min before (-) or after (+) the first water.");
  for (auto first = plan.schedule.begin(); first != plan.schedule.end();) {
    const auto last = std::find_if(first, plan.schedule.end(),
                                   [&](const Task& task) { return task.phase != first->phase; });
    const bool order_only = last - first > 1 && is_order_only(first, last);
    result += "\n" + paragraph("  ", first->phase + (order_only ? ", in this order" : "")) +
              (order_only ? steps(first, last) : tasks(plan, first, last)).str(4);
    first = last;
  }
  return result;
}

}  // namespace strikeoff::text
