// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/diagnostic.h"
#include "strikeoff/job.h"

namespace strikeoff {

// What really happened in a pour so far. Times count from the first water contact.

/// A batch that has got its water.
struct LoggedBatch {
  int number = 1;
  Duration contact;
  std::optional<Duration> placed;  // nothing: it is in the mixer, in a bucket or being placed
  std::optional<Volume> water;     // of the whole batch; nothing: as planned
  std::optional<double> bags;      // nothing: as planned
  bool operator==(const LoggedBatch&) const = default;
};

/// How deep the form is to its top at one place that is still empty (base frame).
struct DepthReading {
  std::string slab;
  Point at;
  Length depth;
  bool operator==(const DepthReading&) const = default;
};

struct PourLog {
  std::optional<std::chrono::minutes> first_contact;  // after local midnight
  Duration now;
  std::vector<LoggedBatch> batches;  // 1, 2, 3, …; at least one
  std::vector<DepthReading> depths;
  std::optional<Temperature> mix_temperature, air;
  std::optional<Duration> working_time;  // as a bucket test with today's mix found it
  std::optional<double> bags_left;
  bool operator==(const PourLog&) const = default;
};

/// What became of a log file: a log, or the problems that prevent one, in file order.
struct LogResult {
  std::optional<PourLog> log;
  std::vector<Diagnostic> diagnostics;
};

/// Reads the log (format "strikeoff-log/1") of this job's pour; the same rules and bounds as
/// `read_job`. In the log in hand batches are numbered 1, 2, 3, …, got their water in that order
/// and were placed after it, and nothing happened later than `now`.
[[nodiscard]] LogResult read_log(std::string_view text, const Job& job);

/// The published JSON Schema (2020-12) of the log file.
[[nodiscard]] std::string_view log_schema();

}  // namespace strikeoff
