// SPDX-License-Identifier: MIT
// Cuts problems whose optimum is known, and random ones:
//   cutting_bench [--must-prove] FILE...    one line a problem, and what each set comes to
//   cutting_bench --against-glpk FILE...    the same problems by GLPK on an arc-flow model
//   cutting_bench --random N SEED           N jobs of a workshop, then a few large ones
// It fails when a plan or bound contradicts what is known, never for its time.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <iomanip>
#include <iostream>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "cutting/bar_solver.h"
#include "cutting_cases.h"
#include "support/arc_flow.h"
#include "support/bar_oracles.h"

namespace {

using namespace strikeoff;
using namespace strikeoff::bench;

struct Cut {
  bool found = false;
  std::int64_t cost = 0, bound = 0;
  bool proven = false;
  double milliseconds = 0;
  bool sound = true;
};

Cut cut(const CuttingCase& job) {
  const auto start = std::chrono::steady_clock::now();
  const auto milliseconds = [&] {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
        .count();
  };
  Cut result;
  if (job.bars) {
    const BarSolution solution = cut_bars(*job.bars);
    result.milliseconds = milliseconds();
    result.found = !solution.patterns.empty();
    result.cost = solution.cost;
    result.bound = solution.bound;
    result.proven = solution.proven;
    for (const std::string& fault :
         result.found ? test::faults_of(solution, *job.bars) : std::vector<std::string>{}) {
      std::cout << job.id << ": " << fault << '\n';
      result.sound = false;
    }
    return result;
  }
  const GuillotinePlan plan = cut_guillotine(*job.sheets);
  result.milliseconds = milliseconds();
  result.found =
      std::all_of(plan.unplaced.begin(), plan.unplaced.end(), [](int n) { return n == 0; });
  result.cost = plan.cost;
  result.bound = plan.cost_bound;
  result.proven = plan.proven;
  return result;
}

/// False when what was found cannot be: cheaper than the optimum, or a bound above it.
bool agrees(const Cut& cut, const std::optional<Known>& known) {
  if (!cut.sound || (cut.found && cut.bound > cut.cost)) return false;
  if (!known) return true;
  return (!cut.found || cut.cost >= known->least) && cut.bound <= known->most &&
         (!cut.proven || cut.cost <= known->most);
}

std::string text_of(const std::optional<Known>& known) {
  if (!known) return "?";
  const std::string least = std::to_string(known->least);
  return known->least == known->most ? least : least + ".." + std::to_string(known->most);
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

struct Tally {
  int cases = 0, proven = 0;
  std::vector<double> milliseconds;
  double largest_gap = 0;  // of cost over bound, in percent; where there is a plan and a bound

  void add(const Cut& cut) {
    ++cases;
    proven += cut.proven ? 1 : 0;
    milliseconds.push_back(cut.milliseconds);
    if (cut.found && cut.bound > 0) {
      largest_gap = std::max(largest_gap, 100.0 * static_cast<double>(cut.cost - cut.bound) /
                                              static_cast<double>(cut.bound));
    }
  }
};

void print(const std::string& set, const Tally& tally) {
  std::cout << "# " << set << ": " << tally.proven << " of " << tally.cases
            << " proven; largest gap " << tally.largest_gap << " %; median "
            << median(tally.milliseconds) << " ms; slowest "
            << *std::max_element(tally.milliseconds.begin(), tally.milliseconds.end()) << " ms\n";
}

void print(const CuttingCase& job, const Cut& cut) {
  std::cout << job.id << ' ' << text_of(job.known) << ' '
            << (cut.found ? std::to_string(cut.cost) : "none") << ' ' << cut.bound << ' '
            << (cut.proven ? "proven" : "open") << ' ' << cut.milliseconds << std::endl;
}

/// Sets of which the solvers leave nothing open.
const std::set<std::string> always_proven{
    "Falkenauer U", "Falkenauer T", "Scholl 1",        "Scholl 2",
    "Schwerin 1",   "Schwerin 2",   "several lengths", "furniture 2-stage exact",
};

int run_files(const std::vector<std::string>& files, bool must_prove) {
  std::map<std::string, Tally> tallies;
  int wrong = 0;
  for (const std::string& file : files) {
    for (const CuttingCase& job : read_cases(file)) {
      // Where all must be proven, what need not be would only take time.
      if (must_prove && always_proven.count(job.set) == 0) continue;
      const Cut result = cut(job);
      print(job, result);
      tallies[job.set].add(result);
      if (agrees(result, job.known) && (result.proven || !must_prove)) continue;
      std::cout << "WRONG: " << job.id << '\n';
      ++wrong;
    }
  }
  for (const auto& [set, tally] : tallies) print(set, tally);
  return wrong;
}

int run_against_glpk(const std::vector<std::string>& files, double seconds) {
  std::vector<double> ours, glpk;
  int wrong = 0;
  for (const std::string& file : files) {
    for (const CuttingCase& job : read_cases(file)) {
      if (!job.bars) continue;
      const Cut result = cut(job);
      const auto start = std::chrono::steady_clock::now();
      const test::ArcFlowAnswer answer = test::arc_flow(*job.bars, seconds);
      const double milliseconds =
          std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
              .count();
      ours.push_back(result.milliseconds);
      glpk.push_back(milliseconds);
      const bool same = !answer.finished || answer.least == result.cost;
      std::cout << job.id << " ours " << result.cost << ' ' << result.milliseconds << " ms, GLPK "
                << (answer.least ? std::to_string(*answer.least) : "stopped") << ' ' << milliseconds
                << " ms (" << answer.variables << " variables), "
                << milliseconds / result.milliseconds << " times\n"
                << std::flush;
      wrong += same && agrees(result, job.known) ? 0 : 1;
    }
  }
  std::cout << "# medians: ours " << median(ours) << " ms, GLPK " << median(glpk)
            << " ms: " << median(glpk) / median(ours) << " times\n";
  return wrong;
}

int run_random(int jobs, std::uint64_t seed) {
  int wrong = 0;
  Tally small;
  for (int number = 1; number <= jobs; ++number) {
    const CuttingCase job = random_case(number, 20, 60, seed);
    const Cut result = cut(job);
    small.add(result);
    if (!result.proven) print(job, result);
    wrong += agrees(result, {}) ? 0 : 1;
  }
  print("20 to 60 parts", small);
  for (const int parts : {500, 5000}) {
    Tally large;
    for (int number = 1; number <= std::min(jobs, 10); ++number) {
      CuttingCase job = random_case(number, parts, parts, seed);
      job.id = "parts_" + std::to_string(parts) + '_' + std::to_string(number);
      const Cut result = cut(job);
      large.add(result);
      print(job, result);
      wrong += agrees(result, {}) ? 0 : 1;
    }
    print(std::to_string(parts) + " parts", large);
  }
  return wrong;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    std::vector<std::string> words(argv + 1, argv + argc);
    std::cout << std::setprecision(3);
    if (words.empty()) throw std::runtime_error("no file named");
    const std::string first = words.front();
    if (first.rfind("--", 0) == 0) words.erase(words.begin());
    if (first == "--random") {
      return run_random(std::stoi(words.at(0)), std::stoull(words.at(1))) == 0 ? 0 : 1;
    }
    constexpr double glpk_seconds = 60;  // a problem, so that it ends
    const int wrong = first == "--against-glpk" ? run_against_glpk(words, glpk_seconds)
                                                : run_files(words, first == "--must-prove");
    return wrong == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
  } catch (const std::exception& error) {
    std::cerr << "cutting_bench: " << error.what() << '\n';
    return EXIT_FAILURE;
  }
}
