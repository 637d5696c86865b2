// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <memory>
#include <set>
#include <sstream>

#include "basis/basis.h"
#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "support/source_dir.h"
#include "why/expression.h"
#include "why/inputs.h"
#include "why/kinds.h"

// The registry against the plans of every example and of the jobs in tests/cases/why-jobs.

using namespace strikeoff;

namespace {

namespace fs = std::filesystem;
using Words = std::set<std::string>;

struct Planned {
  std::string file;
  Job job;
  Plan plan;
  PlanFile plan_file;
  Kinds kinds;
  WhyFacts facts;

  Planned(std::string file_name, const Job& given)
      : file(std::move(file_name)),
        job(settled_job(given)),
        plan(make_plan(given)),
        plan_file(plan),
        kinds(plan_file),
        facts{job, plan_file, shipped_catalogue()} {}
  Planned(const Planned&) = delete;
  Planned& operator=(const Planned&) = delete;
};

std::vector<fs::path> job_files() {
  const fs::path root = test::source_dir();
  std::vector<fs::path> files;
  for (const auto& example : fs::directory_iterator(root / "examples")) {
    files.push_back(example.path() / "job.json");
  }
  for (const auto& file : fs::directory_iterator(root / "tests/cases/why-jobs")) {
    files.push_back(file.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

const std::vector<std::unique_ptr<Planned>>& planned() {
  static const std::vector<std::unique_ptr<Planned>> all = [] {
    std::vector<std::unique_ptr<Planned>> plans;
    for (const fs::path& file : job_files()) {
      std::ifstream in(file, std::ios::binary);
      std::stringstream text;
      text << in.rdbuf();
      const ReadResult read = read_job(text.str());
      INFO(file.string() << render_diagnostics(read.diagnostics, "job.json", text.str()));
      REQUIRE(read.job.has_value());
      plans.push_back(std::make_unique<Planned>(file.filename() == "job.json"
                                                    ? file.parent_path().filename().string()
                                                    : file.filename().string(),
                                                *read.job));
    }
    return plans;
  }();
  return all;
}

/// The pointer with every index as `*`.
std::string family(const Planned& planned, const Path& path) {
  std::string text;
  for (std::size_t i = 0; i < path.size(); ++i) {
    text += "/" + (planned.plan_file.is_index(path, i) ? "*" : path[i]);
  }
  return text;
}

std::string family_of(const Planned& planned, const NumberBasis& number) {
  std::string text = family(planned, number.number->path);
  if (text.starts_with("/checks")) {
    text += " of " + word_of(*planned.plan_file.find({"checks", number.number->path[1], "code"}));
  }
  if (text.starts_with("/materials")) {
    text +=
        " of " + word_of(*planned.plan_file.find({"materials", number.number->path[1], "stock"}));
  }
  return text;
}

bool is_of_registry(const std::string& text) {
  for (const BasisEntry* entry : all_basis()) {
    if (text == basis(entry->name) || text.starts_with(basis(entry->name) + ": ")) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("every number of every plan has an entry in the registry", "[why]") {
  Words missing;
  for (const auto& plan : planned()) {
    for (const NumberBasis& number : plan->kinds.numbers()) {
      if (!number.entry) missing.insert(family_of(*plan, number));
    }
  }
  CHECK(missing == Words{});
}

TEST_CASE("no number has two entries that fit it as well", "[why]") {
  const auto patterns = basis_patterns();
  const auto stars = [](const Path& path) { return std::count(path.begin(), path.end(), "*"); };
  Words twice;
  for (const auto& plan : planned()) {
    for (const NumberBasis& number : plan->kinds.numbers()) {
      std::map<std::ptrdiff_t, int> fitting;
      for (const BasisPattern& pattern : patterns) {
        if (pattern.path.size() != number.number->path.size()) continue;
        if (plan->kinds.fits(pattern.path, number.number->path)) ++fitting[stars(pattern.path)];
      }
      if (!fitting.empty() && fitting.begin()->second > 1) {
        twice.insert(family_of(*plan, number));
      }
    }
  }
  CHECK(twice == Words{});
}

TEST_CASE("no entry of the registry is dead", "[why]") {
  Words dead;
  for (const BasisPattern& pattern : basis_patterns()) {
    dead.insert(std::string(pattern.entry->name) + " " + pointer_of(pattern.path));
  }
  const auto patterns = basis_patterns();
  for (const auto& plan : planned()) {
    std::map<const BasisEntry*, std::set<std::string>> families;  // one number of each will do
    for (const NumberBasis& number : plan->kinds.numbers()) {
      if (!number.entry || !families[number.entry].insert(family_of(*plan, number)).second)
        continue;
      for (const BasisPattern& pattern : patterns) {
        if (pattern.entry != number.entry) continue;
        if (!plan->kinds.fits(pattern.path, number.number->path)) continue;
        dead.erase(std::string(pattern.entry->name) + " " + pointer_of(pattern.path));
      }
    }
  }
  CHECK(dead == Words{});
}

TEST_CASE("every formula gives the number of the plan", "[why]") {
  Words wrong;
  std::set<const BasisEntry*> proven;
  for (const auto& plan : planned()) {
    for (const NumberBasis& number : plan->kinds.numbers()) {
      if (!number.entry) continue;
      std::optional<double> result;
      try {
        result = formula_result(number, plan->facts);
      } catch (const FormulaError& error) {
        wrong.insert(std::string(number.entry->name) + ": " + error.what());
        continue;
      }
      if (!result) continue;
      proven.insert(number.entry);
      const double value = number.number->value;
      const double tolerance = 1e-9 * std::max(1.0, std::abs(value));
      if (!(std::abs(*result - value) <= tolerance)) {
        std::ostringstream text;
        text << number.entry->name << ": " << pointer_of(number.number->path) << " is " << value
             << ", its formula gives " << *result << " in " << plan->file;
        wrong.insert(text.str());
      }
    }
  }
  CHECK(wrong == Words{});
  Words unproven;
  for (const BasisEntry* entry : all_basis()) {
    if (!entry->formula.empty() && !proven.contains(entry)) unproven.emplace(entry->name);
  }
  CHECK(unproven == Words{});
}

TEST_CASE("every input of a formula is found in some job or plan", "[why]") {
  Words never;
  for (const BasisEntry* entry : all_basis()) {
    for (const BasisInput& input : entry->inputs) {
      never.insert(std::string(entry->name) + " " + std::string(input.from));
    }
  }
  for (const auto& plan : planned()) {
    for (const NumberBasis& number : plan->kinds.numbers()) {
      if (!number.entry) continue;
      for (const BasisInput& input : number.entry->inputs) {
        const std::string text = std::string(number.entry->name) + " " + std::string(input.from);
        if (!never.contains(text)) continue;
        const FoundInput found = find_input(input, number, plan->facts);
        for (const double value : found.value.numbers) {
          if (!std::isnan(value)) never.erase(text);
        }
      }
    }
  }
  CHECK(never == Words{});
}

TEST_CASE("a formula and its inputs have the same symbols", "[why]") {
  for (const BasisEntry* entry : all_basis()) {
    CAPTURE(entry->name);
    Words inputs;
    for (const BasisInput& input : entry->inputs) CHECK(inputs.emplace(input.symbol).second);
    const auto symbols = symbols_of(entry->formula);
    if (!entry->formula.empty()) CHECK(Words(symbols.begin(), symbols.end()) == inputs);
  }
}

TEST_CASE("names of the registry are words and stand once", "[why]") {
  Words names;
  for (const BasisEntry* entry : all_basis()) {
    CAPTURE(entry->name);
    CHECK(names.emplace(entry->name).second);
    CHECK(entry->name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") ==
          std::string_view::npos);
    CHECK_FALSE(entry->words.empty());
    CHECK_FALSE(entry->words.ends_with("."));
    const bool looked_up = entry->known == Known::read || entry->known == Known::second_hand ||
                           entry->known == Known::recalled;
    if (looked_up) CHECK_FALSE(entry->source.empty());
  }
}

TEST_CASE("every basis that a plan prints is an entry of the registry", "[why]") {
  Words strange;
  for (const auto& plan : planned()) {
    for (const Check& check : plan->plan.checks) {
      if (!is_of_registry(check.basis)) strange.insert(check.code + ": " + check.basis);
    }
    for (const Material& material : plan->plan.materials) {
      if (!is_of_registry(material.basis)) strange.insert(material.stock + ": " + material.basis);
    }
  }
  CHECK(strange == Words{});
}
