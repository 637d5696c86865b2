// SPDX-License-Identifier: MIT
#include "odds/runs.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <thread>

namespace strikeoff {
namespace {

struct Tally {
  Counts counts;
  Correlations correlations;
};

class Work {
 public:
  Work(const TrialModel& model, const PourBounds& bounds, const OddsOptions& options, Runs& runs)
      : model_(model),
        bounds_(bounds),
        options_(options),
        runs_(runs),
        block_(std::max<std::int64_t>(256, (options.runs + most_blocks - 1) / most_blocks)),
        tallies_(static_cast<std::size_t>((options.runs + block_ - 1) / block_)) {}

  /// Takes blocks until none is left. `progress` may be empty.
  void pour_blocks(Pourer& pourer, const std::function<void(std::int64_t)>& progress) {
    for (std::size_t b = next_++; b < tallies_.size(); b = next_++) {
      const std::int64_t from = static_cast<std::int64_t>(b) * block_;
      const std::int64_t to = std::min(from + block_, options_.runs);
      for (std::int64_t number = from; number < to; ++number) {
        note(pourer.pour(number), static_cast<std::size_t>(number), tallies_[b]);
      }
      done_ += to - from;
      if (progress) progress(done_);
    }
  }

  void add_up() {
    for (const Tally& tally : tallies_) {
      Counts& all = runs_.counts;
      all.cold += tally.counts.cold;
      all.stiff += tally.counts.stiff;
      all.late += tally.counts.late;
      all.overrun += tally.counts.overrun;
      all.empty += tally.counts.empty;
      all.empty_with_spare += tally.counts.empty_with_spare;
      runs_.correlations.add(tally.correlations);
    }
  }

 private:
  static constexpr std::int64_t most_blocks = 1024;

  void note(const Trial& trial, std::size_t number, Tally& tally) {
    runs_.end[number] = trial.end;
    runs_.wait[number] = trial.wait;
    runs_.margin[number] = trial.margin;
    runs_.bags[number] = trial.bags;
    runs_.severity[number] = std::max(trial.joint, trial.age);
    runs_.worst[number] = trial.worst;
    Counts& counts = tally.counts;
    // A wait of just the working time is no cold joint, however the minutes were added.
    constexpr double just = 1 + 1e-12;
    counts.cold += trial.joint > just ? 1 : 0;
    counts.stiff += trial.age > just ? 1 : 0;
    counts.late += trial.late ? 1 : 0;
    counts.overrun += trial.end > bounds_.end * just ? 1 : 0;
    counts.empty += trial.bags > bounds_.bags * just ? 1 : 0;
    counts.empty_with_spare += trial.bags > bounds_.bags_with_spare * just ? 1 : 0;
    const double outcome = model_.pairs.empty() ? trial.age : trial.joint;
    if (outcome > 0) tally.correlations.add(trial.inputs, std::log(outcome));
  }

  const TrialModel& model_;
  const PourBounds& bounds_;
  const OddsOptions& options_;
  Runs& runs_;
  std::int64_t block_;
  std::vector<Tally> tallies_;
  std::atomic<std::size_t> next_{0};
  std::atomic<std::int64_t> done_{0};
};

}  // namespace

Runs pour_all(const TrialModel& model, const PourBounds& bounds, const OddsOptions& options) {
  Runs runs;
  const auto size = static_cast<std::size_t>(options.runs);
  for (std::vector<double>* column :
       {&runs.end, &runs.wait, &runs.margin, &runs.bags, &runs.severity}) {
    column->resize(size);
  }
  runs.worst.resize(size);
  Work work(model, bounds, options, runs);
  std::vector<Pourer> pourers(static_cast<std::size_t>(options.threads),
                              Pourer(model, options.seed));
  {
    std::vector<std::jthread> others;
    for (std::size_t t = 1; t < pourers.size(); ++t) {
      others.emplace_back([&work, &pourer = pourers[t]] { work.pour_blocks(pourer, {}); });
    }
    work.pour_blocks(pourers.front(), options.progress);
  }
  work.add_up();
  return runs;
}

}  // namespace strikeoff
