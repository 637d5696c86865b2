// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/format.h"
#include "render/icalendar.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using icalendar::escaped;
using icalendar::line;
using std::chrono::sys_days;

constexpr Duration a_day = days(1);

/// Part of a calendar: the days [first, past), or with `clock` the moments of its tasks.
struct Event {
  std::string id;  // of the UID, unique in the job
  std::string summary, description;
  sys_days first, past;
  std::optional<std::string> start, end;  // ISO 8601, local; nothing: whole days
  std::string alarm;                      // its trigger after the start; empty: none
  std::optional<Duration> again;          // the alarm comes back so often
  int times = 0;                          // so many times after the first
};

long long rounded_up(Duration time, Duration step) {
  return std::llround(std::ceil(time.si() / step.si() - 1e-9));
}

Duration of_day(const StartDate& start, Duration time) {
  return time + minutes(static_cast<double>(start.time->count()));
}

/// A day or more away nothing is known to the minute: the next full hour, after midnight of the
/// pour's day.
long long full_hour(const StartDate& start, Duration time) {
  return rounded_up(of_day(start, time), hours(1));
}

/// The day of a moment, not before it. Without a start time what comes within half a day stands on
/// the pour's own (a pour begins in the morning, assumption); the rest is rounded up.
sys_days day_of(const StartDate& start, Duration time) {
  const sys_days pour{start.day};
  if (!start.time) {
    return pour +
           std::chrono::days{time < days(0.5) && time > -a_day ? 0 : rounded_up(time, a_day)};
  }
  const Duration shown =
      time < a_day ? of_day(start, time) : hours(static_cast<double>(full_hour(start, time)));
  return pour + std::chrono::days{std::llround(std::floor(in_days(shown)))};
}

/// The day after the last one of what ends then.
sys_days past(const StartDate& start, sys_days first, Duration end) {
  const sys_days day = start.time ? day_of(start, end) + std::chrono::days{1}
                                  : sys_days{start.day} + std::chrono::days{rounded_up(end, a_day)};
  return std::max(day, first + std::chrono::days{1});
}

/// "20260516T090000" of "2026-05-16T09:00:00", "20260516" of a day.
std::string basic(std::string iso) {
  iso.erase(std::remove_if(iso.begin(), iso.end(), [](char c) { return c == '-' || c == ':'; }),
            iso.end());
  return iso;
}

std::string basic(sys_days day) {
  return basic(iso({std::chrono::year_month_day{day}, {}}));
}

/// A task's name: what stands before its first explanation.
std::string name_of(const std::string& task) {
  return task.substr(0, std::min({task.find(':'), task.find(';'), task.find(" (")}));
}

/// Of a UID: the first three words of the name, for the others change with the job.
std::string id_of(const std::string& name) {
  std::string id = icalendar::slug(name.substr(0, name.find(',')));
  std::size_t end = 0;
  for (int word = 0; word < 3 && end != std::string::npos; ++word) end = id.find('-', end + 1);
  return id.substr(0, end);
}

std::string details(const Task& task) {
  return fmt::format("{}. Who: {}.", task.task, task.who);
}

/// Whole days ring at the hour of the step, but not before eight in the morning (assumption).
/// Nothing where the hour is not known on the day of the pour itself.
std::optional<long long> alarm_hour(const StartDate& start, const Task& task, sys_days first) {
  constexpr long long morning = 8;
  if (start.time) return std::max(morning, full_hour(start, *task.start) % 24);
  if (first > sys_days{start.day}) return morning;
  if (task.end && *task.end > a_day) return 24 + morning;  // a wet cure goes on the next day
  return std::nullopt;
}

/// One task of the later work.
Event later_event(const StartDate& start, const Task& task) {
  Event event;
  event.summary = name_of(task.task);
  event.description = details(task);
  event.first = day_of(start, *task.start);
  event.past = past(start, event.first, task.end.value_or(*task.start));
  if (task.start_local && *task.start < a_day) {
    event.start = task.start_local;
    event.end = task.end_local;
    event.alarm = "PT0S";
    return event;
  }
  if (start.time) {
    event.description += fmt::format(" Not before {:02}:00.", full_hour(start, *task.start) % 24);
  }
  if (const auto hour = alarm_hour(start, task, event.first)) {
    event.alarm = fmt::format("PT{}H", *hour);
  }
  return event;
}

using TaskIterator = std::vector<Task>::const_iterator;

/// Tasks that belong together as one block: the day before, the pour with strike-off and trowel.
std::optional<Event> block(const StartDate& start, std::string summary, TaskIterator first,
                           TaskIterator last) {
  Event event;
  event.summary = std::move(summary);
  std::optional<Duration> from, to;
  for (auto task = first; task != last; ++task) {
    event.description += (task == first ? "" : "\n") + details(*task);
    if (!task->start) continue;
    if (!from || *task->start < *from) {
      from = task->start;
      event.start = task->start_local;
    }
    if (task->end && (!to || *task->end > *to)) {
      to = task->end;
      event.end = task->end_local;
    }
  }
  if (!from) return std::nullopt;
  event.first = day_of(start, *from);
  event.past = past(start, event.first, to.value_or(*from));
  if (from == to) event.start = std::nullopt;  // only the order is known
  return event;
}

/// The alarm of the wet cure comes back as often as the top is to be wetted.
void set_wetting(const SitePlan& site, const Task& cure, Event& event) {
  if (!cure.end) return;
  event.again = minutes(std::max(1.0, std::floor(in_minutes(site.wet_every))));
  event.times = static_cast<int>((*cure.end - *cure.start).si() / event.again->si());
}

/// The phase that begins with this task is the pour's block, which goes on until the wet cure.
bool is_later(const Task& task) {
  return task.phase == "wet cure" || task.phase == "later";
}

/// What has no date because a label is silent is told in the last event.
void add_undated(const std::vector<Task>& schedule, std::vector<Event>& events) {
  std::string list;
  for (const Task& task : schedule) {
    if (!task.start) list += "\n- " + task.task;
  }
  if (list.empty() || events.empty()) return;
  events.back().description +=
      "\nWithout a date, for the label is silent; see the bag's data sheet:" + list;
}

std::vector<Event> events_of(const Plan& plan, const StartDate& start) {
  const std::vector<Task>& tasks = plan.schedule;
  const auto before = std::find_if(tasks.begin(), tasks.end(),
                                   [](const Task& task) { return task.phase != "day before"; });
  const auto later = std::find_if(before, tasks.end(), is_later);
  std::vector<Event> events;
  for (std::optional<Event>& one : std::vector<std::optional<Event>>{
           block(start, "Prepare the pour", tasks.begin(), before),
           block(start, "Pour, strike off and trowel", before, later)}) {
    if (one) events.push_back(std::move(*one));
  }
  for (auto task = later; task != tasks.end(); ++task) {
    if (!task->start) continue;
    events.push_back(later_event(start, *task));
    if (task->phase == "wet cure") set_wetting(plan.site, *task, events.back());
  }
  add_undated(tasks, events);
  std::map<std::string, int> known;
  for (Event& event : events) {
    const std::string name = id_of(event.summary);
    event.id = fmt::format("{}-{}", name, ++known[name]);
  }
  return events;
}

std::string alarm(const Event& event) {
  std::string text = line("BEGIN:VALARM") + line("ACTION:DISPLAY") +
                     line("DESCRIPTION:" + escaped(event.summary)) + line("TRIGGER:" + event.alarm);
  if (event.again && event.times > 0) {
    text += line(fmt::format("DURATION:PT{}M", std::llround(in_minutes(*event.again)))) +
            line(fmt::format("REPEAT:{}", event.times));
  }
  return text + line("END:VALARM");
}

std::string moments(const Event& event) {
  if (!event.start) {
    return line("DTSTART;VALUE=DATE:" + basic(event.first)) +
           line("DTEND;VALUE=DATE:" + basic(event.past));
  }
  std::string start = line("DTSTART:" + basic(*event.start));
  if (!event.end || *event.end <= *event.start) return start;  // takes no time (RFC 5545, 3.6.1)
  return start + line("DTEND:" + basic(*event.end));
}

/// What one job's entries have in common and no other's: its name, for a job that is changed stays
/// the same; without one the shape of its slabs.
std::string identity(const Plan& plan) {
  if (!plan.name.empty()) return plan.name;
  std::string shape = "slab";
  for (const SlabPlan& slab : plan.slabs) {
    shape += ' ' + slab.name;
    for (const Point& corner : slab.outline) {
      shape += fmt::format(" {:.1f},{:.1f}", corner.x.in_mm(), corner.y.in_mm());
    }
  }
  return shape;
}

std::string component(const Event& event, const Plan& plan, const std::string& stamp) {
  const std::string name = plan.name.empty() ? "slab" : plan.name;
  std::string text =
      line("BEGIN:VEVENT") +
      line(fmt::format("UID:{}@{}.strikeoff", event.id, icalendar::name_slug(identity(plan)))) +
      line("DTSTAMP:" + stamp) + moments(event) +
      line("SUMMARY:" + escaped(fmt::format("{} ({})", event.summary, name))) +
      line("DESCRIPTION:" + escaped(event.description));
  if (!event.alarm.empty()) text += alarm(event);
  return text + line("END:VEVENT");
}

/// RFC 5545 asks when an entry was made; the library reads no clock, and the same job is to give
/// the same bytes, so it is the job's own start.
std::string stamp_of(const StartDate& start) {
  const std::string time = iso({start.day, start.time.value_or(std::chrono::minutes{0})});
  return basic(time) + "00Z";
}

}  // namespace

std::optional<std::string> render_ics(const Plan& plan) {
  if (!plan.date) return std::nullopt;
  std::string text =
      line("BEGIN:VCALENDAR") + line("VERSION:2.0") + line("PRODID:-//strikeoff//plan//EN");
  for (const Event& event : events_of(plan, *plan.date)) {
    text += component(event, plan, stamp_of(*plan.date));
  }
  return text + line("END:VCALENDAR");
}

}  // namespace strikeoff
