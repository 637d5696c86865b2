// SPDX-License-Identifier: MIT
#include <algorithm>

#include "render/text_sections.h"
#include "render/text_table.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// The local date and time where the plan has them, else the stopwatch.
std::string moment(Duration from_contact, const std::optional<std::string>& local) {
  return local ? readable(*local) : stopwatch(from_contact, false);
}

bool same_moment(const Task& task) {
  return task.start == task.end;
}

Table tasks(std::vector<Task>::const_iterator first, std::vector<Task>::const_iterator last) {
  Table table({{"From", Align::right}, {"To", Align::right}, {"What"}, {"Who"}});
  for (; first != last; ++first) {
    table.add({moment(first->start, first->start_local),
               same_moment(*first) ? "" : moment(first->end, first->end_local), first->task,
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
  result += paragraph(
      "  ", local ? "Local times." : "Times are h:min before (-) or after (+) the first water.");
  for (auto first = plan.schedule.begin(); first != plan.schedule.end();) {
    const auto last = std::find_if(first, plan.schedule.end(),
                                   [&](const Task& task) { return task.phase != first->phase; });
    result += "\n" + paragraph("  ", first->phase) + tasks(first, last).str(4);
    first = last;
  }
  return result;
}

}  // namespace strikeoff::text
