// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// How a number of the plan came about: formula, inputs, source.

/// One number of the plan.
struct PlanNumber {
  std::string pointer;  // "/batches/1/edge_wait_min"
  std::string name;     // "edge-wait/2", counted from 1; the pointer where there is no shorter one
  double value = 0;
  std::string unit;   // "min"; empty: a count or a share
  std::string in_us;  // the same in US units, where the plan's are those and differ
};

/// The numbers of one kind: a line of the list that `why` gives.
struct ExplainedKind {
  std::string name;
  std::string words;
  std::vector<PlanNumber> numbers;  // in the order of the plan file; at least one
};

/// One symbol of a formula.
struct WhyInput {
  std::string symbol;
  std::vector<double> values;  // one, or a list's; NaN: not given
  bool is_list = false;
  std::string unit;
  std::string origin;  // "the job, /crew/usable", "assumption: …", "this plan, edge-wait/2"
  std::string in_us;
};

/// A formula with its numbers.
struct Working {
  std::string formula;  // empty: found by a search or a count
  std::string worked;   // the formula with the numbers put in
  std::vector<WhyInput> inputs;
  /// What the formula comes to, in the plan's unit. Nothing where there is none, or where it needs
  /// what neither job nor plan has.
  std::optional<double> result;
};

/// Another number of the plan that the one asked for rests on.
struct WhyStep {
  PlanNumber number;
  std::string words;
  Working working;
};

struct Explanation {
  PlanNumber number;
  std::string words;  // how it comes about
  Working working;
  std::vector<WhyStep> rests_on;   // one level down
  std::string source;              // author or body, title or number, edition, clause; may be empty
  std::string known;               // how well the source is known: "read", "from memory"
  std::vector<PlanNumber> others;  // the other numbers of its kind, at most 20
  std::size_t kind_size = 1;       // how many there are of its kind
};

/// All numbers of a plan, by kind.
[[nodiscard]] std::vector<ExplainedKind> explainable(const Plan& plan);

/// An explanation, or why there is none.
struct WhyResult {
  std::optional<Explanation> explanation;
  std::string problem;  // "no number is named \"edge-wiat\"; did you mean \"edge-wait\"?"
};

/// Explains the number that `name` names: a JSON Pointer of the plan file ("/pour/usable_min",
/// where an element of a list may be named: "/checks/evaporation/value"), or a short name of the
/// list, with the number of the one that is meant where there are several: "edge-wait/2"; without
/// it the first. Precondition: the plan is that of the job.
[[nodiscard]] WhyResult explain(const Job& job, const Plan& plan, std::string_view name,
                                const Catalogue& catalogue = shipped_catalogue());

}  // namespace strikeoff
