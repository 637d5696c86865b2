// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "job/suggest.h"
#include "strikeoff/planner.h"
#include "strikeoff/why.h"
#include "why/inputs.h"
#include "why/origin.h"
#include "why/us_units.h"

namespace strikeoff {
namespace {

constexpr std::size_t most_others = 20;
constexpr std::size_t most_listed = 8;  // numbers of a list that are shown in a formula

std::string digits(double value) {
  if (std::isnan(value)) return "none";
  const std::string text = fmt::format("{:.6g}", value);
  return value < 0 ? "(" + text + ")" : text;
}

std::string digits(const FormulaValue& value) {
  if (!value.is_list) return digits(value.numbers.front());
  std::string text;
  for (std::size_t i = 0; i < std::min(value.numbers.size(), most_listed); ++i) {
    text += (i == 0 ? "" : "; ") + digits(value.numbers[i]);
  }
  if (value.numbers.size() > most_listed) {
    text += fmt::format("; and {} more", value.numbers.size() - most_listed);
  }
  return "[" + text + "]";
}

/// All that explaining one plan looks at.
class Explainer {
 public:
  Explainer(const Job& job, const Plan& plan, const Catalogue& catalogue)
      : job_(job.open.any() ? settled_job(job) : job),
        plan_(plan),
        file_(plan),
        kinds_(file_),
        facts_{job_, file_, catalogue} {}

  [[nodiscard]] WhyResult result(std::string_view name) const {
    const bool pointer = name.starts_with("/");
    const NumberBasis* const number = pointer ? kinds_.at(name) : kinds_.named(name);
    if (!number) return {std::nullopt, unknown(std::string(name))};
    if (!number->entry) {
      return {std::nullopt, fmt::format("\"{}\" has no explanation yet", name)};
    }
    return {explanation(*number), ""};
  }

 private:
  Job job_;
  const Plan& plan_;
  PlanFile file_;
  Kinds kinds_;
  WhyFacts facts_;

  [[nodiscard]] PlanNumber shown(const NumberBasis& number) const {
    return plan_number(number, file_, plan_.units);
  }

  [[nodiscard]] std::string unknown(const std::string& name) const {
    for (const BasisEntry* entry : all_basis()) {
      if (entry->name == name) {
        return fmt::format("this plan has no number \"{}\"; it would be: {}", name, entry->words);
      }
    }
    std::vector<std::string> known;
    const bool pointer = name.starts_with("/");
    for (const NumberBasis& number : kinds_.numbers()) {
      known.push_back(pointer ? pointer_of(number.number->path) : number.name);
      if (!pointer && number.entry) known.emplace_back(number.entry->name);
    }
    return fmt::format("the plan has no number \"{}\"; {}", name,
                       did_you_mean(name, known, "strikeoff why JOB lists them all"));
  }

  [[nodiscard]] std::string origin(const FoundInput& input) const {
    if (input.pointers.empty()) return "there is none";
    const std::string& first = input.pointers.front();
    switch (input.from) {
      case InputFrom::catalogue:
        return "the shipped catalogue, " + first;
      case InputFrom::job:
        if (!input.value.is_list && std::isnan(input.value.numbers.front())) {
          return "not given in the job, " + first;
        }
        return origin_of(first, job_, plan_.pour.choices, facts_.catalogue);
      case InputFrom::plan:
        break;
    }
    const NumberBasis* const number = kinds_.at(first);
    if (!number) return "this plan, " + first;
    if (!input.value.is_list || !number->entry) return "this plan, " + number->name;
    return "this plan, all of " + std::string(number->entry->name);
  }

  [[nodiscard]] Working working(const NumberBasis& number) const {
    Working working;
    working.formula = number.entry->formula;
    std::map<std::string, std::string, std::less<>> texts;
    for (const BasisInput& asked : number.entry->inputs) {
      const FoundInput found = find_input(asked, number, facts_);
      WhyInput input;
      input.symbol = asked.symbol;
      input.values = found.value.numbers;
      input.is_list = found.value.is_list;
      input.unit = found.unit;
      input.origin = origin(found);
      if (!input.is_list && !found.pointers.empty()) {
        input.in_us =
            in_us_units(input.values.front(), found.unit, found.pointers.front(), plan_.units);
      }
      texts[input.symbol] = digits(found.value);
      working.inputs.push_back(std::move(input));
    }
    if (!working.formula.empty()) working.worked = put_in(working.formula, texts);
    working.result = formula_result(number, facts_);
    return working;
  }

  /// The single numbers of the plan that the formula asks for.
  [[nodiscard]] std::vector<WhyStep> steps(const NumberBasis& number) const {
    std::vector<WhyStep> steps;
    for (const BasisInput& asked : number.entry->inputs) {
      const FoundInput found = find_input(asked, number, facts_);
      if (found.from != InputFrom::plan || found.value.is_list || found.pointers.empty()) continue;
      const NumberBasis* const under = kinds_.at(found.pointers.front());
      if (!under || !under->entry) continue;
      steps.push_back({shown(*under), std::string(under->entry->words), working(*under)});
    }
    return steps;
  }

  [[nodiscard]] Explanation explanation(const NumberBasis& number) const {
    Explanation result;
    result.number = shown(number);
    result.words = number.entry->words;
    result.working = working(number);
    result.rests_on = steps(number);
    result.source = number.entry->source;
    result.known = known_words(number.entry->known);
    const auto kind = kinds_.of(*number.entry);
    result.kind_size = kind.size();
    for (const NumberBasis* other : kind) {
      if (other == &number || result.others.size() == most_others) continue;
      result.others.push_back(shown(*other));
    }
    return result;
  }
};

}  // namespace

std::vector<ExplainedKind> explainable(const Plan& plan) {
  const PlanFile file(plan);
  const Kinds kinds(file);
  std::map<const BasisEntry*, ExplainedKind> by_entry;
  for (const NumberBasis& number : kinds.numbers()) {
    if (!number.entry) continue;
    by_entry[number.entry].numbers.push_back(plan_number(number, file, plan.units));
  }
  std::vector<ExplainedKind> list;
  for (const BasisEntry* entry : all_basis()) {
    const auto found = by_entry.find(entry);
    if (found == by_entry.end()) continue;
    found->second.name = entry->name;
    found->second.words = entry->words;
    list.push_back(std::move(found->second));
  }
  return list;
}

WhyResult explain(const Job& job, const Plan& plan, std::string_view name,
                  const Catalogue& catalogue) {
  return Explainer(job, plan, catalogue).result(name);
}

}  // namespace strikeoff
