// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// When a step begins or ends; nothing where it hangs on a time nobody knows.
using Moment = std::optional<Duration>;

/// The later of two; nothing when either is not known, for then it is only a lower bound.
[[nodiscard]] Moment later(const Moment& a, const Moment& b);

/// Tasks in the order of the day. Each follows the one before it unless it names others.
class TaskList {
 public:
  void begin_phase(std::string name) { phase_ = std::move(name); }
  /// Adds a task that follows the last one; returns what it is called.
  std::string add(std::string task, std::string who, Moment start, Moment end);
  std::string add_after(std::vector<std::string> after, std::string task, std::string who,
                        Moment start, Moment end);
  /// The last one is all about this batch.
  void about(const Batch& batch) { tasks_.back().batch = batch.number; }
  [[nodiscard]] const Task& last() const { return tasks_.back(); }
  [[nodiscard]] std::vector<Task> take() && { return std::move(tasks_); }

 private:
  std::string phase_;
  std::vector<Task> tasks_;
};

/// Who has a role, by number: "person 1", "persons 2 and 3", "nobody yet".
[[nodiscard]] std::string who_has(const Crew& crew, Role role);

// The phases, in order. Each adds to what is there.
void add_preparation(const Job& job, const Plan& plan, TaskList& tasks);
void add_pour(const Job& job, const Plan& plan, TaskList& tasks);
void add_finishing(const Job& job, const Plan& plan, TaskList& tasks);
/// Follows the task `after`, which ends at `start`; returns what it is called.
std::string add_wet_cure(const Job& job, const Plan& plan, const std::string& after,
                         const Moment& start, TaskList& tasks);
/// Everything after the trowel, which is the last task; the last one it adds is the first full use.
/// Its times are the milestones of plan.hardening.
void add_later(const Job& job, const Plan& plan, TaskList& tasks);

// Of the later work: a step that is done, and when.
struct Done {
  std::string task;
  Moment at;
};
/// When the last of them is done; nothing when one is not known.
[[nodiscard]] Moment all_done(const std::vector<Done>& steps);
/// Adds a step that begins when the steps it follows are done and its milestone is there, and takes
/// so long; words stand for a beginning that is not known.
Done add_step(const std::vector<Done>& follows, std::string_view milestone, std::string task,
              const std::string& who, const Plan& plan, TaskList& tasks, Duration work = {});
/// A task a grit, and filling the pits. Returns what the next step follows: where there is nothing
/// to do, what this one followed.
[[nodiscard]] std::vector<Done> add_sanding(const Job& job, const Plan& plan,
                                            std::vector<Done> follows, TaskList& tasks);
/// Drying, then a task a coat; the same.
[[nodiscard]] std::vector<Done> add_sealing(const Job& job, const Plan& plan,
                                            std::vector<Done> follows, TaskList& tasks);

/// Forms, panels and ground of the day before, each only where the job has them.
[[nodiscard]] std::vector<std::string> form_tasks(const Job& job, const Plan& plan);

}  // namespace strikeoff
