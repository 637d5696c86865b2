// SPDX-License-Identifier: MIT
#include "plan/schedule.h"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>

#include "plan/tasks.h"

namespace strikeoff {
std::string local_time(const StartDate& start, Duration after) {
  using std::chrono::days;
  using std::chrono::floor;
  using std::chrono::seconds;
  using std::chrono::sys_days;
  const auto moment = sys_days{start.day} + *start.time +
                      seconds{static_cast<std::int64_t>(std::round(after.si()))};
  const sys_days day = floor<days>(moment);
  const std::chrono::year_month_day ymd{day};
  const std::chrono::hh_mm_ss time{moment - day};
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", static_cast<int>(ymd.year()),
                     static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                     time.hours().count(), time.minutes().count(), time.seconds().count());
}

Moment later(const Moment& a, const Moment& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

std::string TaskList::add(std::string task, std::string who, Moment start, Moment end) {
  std::vector<std::string> after;
  if (!tasks_.empty()) after.push_back(tasks_.back().task);
  return add_after(std::move(after), std::move(task), std::move(who), start, end);
}

std::string TaskList::add_after(std::vector<std::string> after, std::string task, std::string who,
                                Moment start, Moment end) {
  Task next;
  next.phase = phase_;
  next.task = std::move(task);
  next.who = std::move(who);
  next.start = start;
  next.end = end;
  next.after = std::move(after);
  tasks_.push_back(std::move(next));
  return tasks_.back().task;
}

std::string who_has(const Crew& crew, Role role) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < crew.people.size(); ++i) {
    for (const Role has : crew.people[i]) {
      if (has == role) numbers.push_back(i + 1);
    }
  }
  if (numbers.empty()) return "nobody yet";
  if (numbers.size() == 1) return fmt::format("person {}", numbers.front());
  std::string text = fmt::format("persons {}", numbers.front());
  for (std::size_t i = 1; i < numbers.size(); ++i) {
    text += fmt::format("{}{}", i + 1 == numbers.size() ? " and " : ", ", numbers[i]);
  }
  return text;
}

std::vector<Task> make_schedule(const Job& job, const Plan& plan) {
  TaskList list;
  add_preparation(job, plan, list);
  add_pour(job, plan, list);
  add_finishing(job, plan, list);
  add_later(job, plan, list);
  std::vector<Task> tasks = std::move(list).take();
  if (job.date && job.date->time) {
    for (Task& task : tasks) {
      if (task.start) task.start_local = local_time(*job.date, *task.start);
      if (task.end) task.end_local = local_time(*job.date, *task.end);
    }
  }
  return tasks;
}

}  // namespace strikeoff
