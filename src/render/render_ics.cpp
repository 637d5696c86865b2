// SPDX-License-Identifier: MIT
#include <fmt/format.h>

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
  bool alarm = false;
  std::optional<Duration> again;  // the alarm comes back so often
  int times = 0;                  // so many times after the first
};

long long rounded_up(Duration time, Duration step) {
  return std::llround(std::ceil(time.si() / step.si() - 1e-9));
}

/// The day of a moment. Without a start time a day or more away is rounded up to the whole day, and
/// less stands on the pour's; with one a day or more away is rounded up to the full hour. The same
/// as in the text plan.
sys_days day_of(const StartDate& start, Duration time) {
  const sys_days pour{start.day};
  if (!start.time) {
    return pour + std::chrono::days{std::abs(time.si()) < a_day.si() ? 0 : rounded_up(time, a_day)};
  }
  const Duration of_day = time + minutes(static_cast<double>(start.time->count()));
  const Duration shown =
      time < a_day ? of_day : minutes(60 * static_cast<double>(rounded_up(of_day, minutes(60))));
  return pour + std::chrono::days{std::llround(std::floor(shown.si() / a_day.si()))};
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

std::string details(const Task& task) {
  return fmt::format("{}. {}.", task.task, task.who);
}

/// One task of the later work.
Event later_event(const StartDate& start, const Task& task) {
  Event event;
  event.summary = name_of(task.task);
  event.description = details(task);
  event.first = day_of(start, *task.start);
  event.past =
      std::max(day_of(start, task.end.value_or(*task.start)), event.first) + std::chrono::days{1};
  if (task.start_local && *task.start < a_day) {
    event.start = task.start_local;
    event.end = task.end_local;
  } else if (task.start_local) {
    event.description += " Not before " + readable(*task.start_local) + ".";
  }
  event.alarm = true;
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
  event.past = std::max(day_of(start, to.value_or(*from)), event.first) + std::chrono::days{1};
  if (from == to) event.start = std::nullopt;  // only the order is known
  return event;
}

/// The alarm of the wet cure comes back as often as its cover asks for water.
void set_wetting(const SitePlan& site, const Task& cure, Event& event) {
  for (const Wetting& one : site.wettings) {
    if (one.cover != site.cure_cover || !one.every || !cure.end) continue;
    event.again = minutes(std::max(1.0, std::floor(in_minutes(*one.every))));
    event.times = static_cast<int>((*cure.end - *cure.start).si() / event.again->si());
  }
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
    const std::string name = icalendar::slug(event.summary);
    event.id = fmt::format("{}-{}", name, ++known[name]);
  }
  return events;
}

/// Of whole days at eight in the morning (assumption), else as it begins.
std::string alarm(const Event& event) {
  std::string text = line("BEGIN:VALARM") + line("ACTION:DISPLAY") +
                     line("DESCRIPTION:" + escaped(event.summary)) +
                     line(event.start ? "TRIGGER:PT0S" : "TRIGGER:PT8H");
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
  const std::string start = line("DTSTART:" + basic(*event.start));
  if (!event.end || *event.end <= *event.start) return start;  // takes no time (RFC 5545, 3.6.1)
  return start + line("DTEND:" + basic(*event.end));
}

std::string component(const Event& event, const Plan& plan, const std::string& stamp) {
  const std::string name = plan.name.empty() ? "slab" : plan.name;
  std::string text =
      line("BEGIN:VEVENT") +
      line(fmt::format("UID:{}@{}.strikeoff", event.id, icalendar::name_slug(name))) +
      line("DTSTAMP:" + stamp) + moments(event) +
      line("SUMMARY:" + escaped(fmt::format("{} ({})", event.summary, name))) +
      line("DESCRIPTION:" + escaped(event.description));
  if (event.alarm) text += alarm(event);
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
