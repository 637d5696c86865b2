// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "render/text.h"
#include "render/text_sections.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using text::heading;
using text::paragraph;

/// Of the numbers of a list so many are shown.
constexpr std::size_t most_shown = 6;

std::string digits(double value) {
  return std::isnan(value) ? "not given" : fmt::format("{:.6g}", value);
}

std::string with_unit(double value, const std::string& unit, const std::string& in_us) {
  std::string text = digits(value);
  if (!unit.empty() && !std::isnan(value)) text += " " + unit;
  return in_us.empty() ? text : fmt::format("{} ({})", text, in_us);
}

std::string shown(const PlanNumber& number) {
  return with_unit(number.value, number.unit, number.in_us);
}

std::string sentence(std::string words) {
  if (words.front() >= 'a' && words.front() <= 'z') {
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
  }
  return words + ".";
}

/// "12 min", "12; 12; 0 min", "12; 12; … 40 values, min".
std::string shown(const WhyInput& input) {
  if (!input.is_list) {
    return input.values.empty() ? "not given"
                                : with_unit(input.values.front(), input.unit, input.in_us);
  }
  if (input.values.empty()) return "none";
  std::string text;
  for (std::size_t i = 0; i < std::min(input.values.size(), most_shown); ++i) {
    text += (i == 0 ? "" : "; ") + digits(input.values[i]);
  }
  if (input.values.size() > most_shown) {
    text += fmt::format("; and {} more", input.values.size() - most_shown);
  }
  return input.unit.empty() ? text : text + " " + input.unit;
}

text::Text indented(const std::string& first, const std::string& words) {
  return paragraph("  " + first, words);
}

/// The formula, with the numbers put in, and what it comes to.
text::Text calculation(const PlanNumber& number, const Working& working) {
  if (working.formula.empty()) return "";
  text::Text text = indented(number.name + " = ", working.formula);
  const std::string equals = std::string(number.name.size(), ' ') + " = ";
  if (working.worked != working.formula) text += indented(equals, working.worked);
  text += working.result ? indented(equals, with_unit(*working.result, number.unit, ""))
                         : indented(equals, "not known from these alone");
  return text;
}

text::Text inputs(const Working& working, std::size_t indent) {
  text::Table table({{"", {}}, {"", {}}, {"", {}}});
  for (const WhyInput& input : working.inputs) {
    table.add({input.symbol, shown(input), input.origin});
  }
  return table.empty() ? "" : text::placed(table, indent);
}

text::Text source(const Explanation& why) {
  if (why.source.empty() && why.known.empty()) {
    return paragraph("Source: ", "arithmetic, geometry or the job's own words: nothing to look up");
  }
  if (why.source.empty()) return paragraph("Source: ", why.known);
  return paragraph("Source: ",
                   why.known.empty() ? why.source : fmt::format("{} ({})", why.source, why.known));
}

/// "edge-wait/2: 12 min; edge-wait/3: 0 min".
std::string listed(const std::vector<PlanNumber>& numbers, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < std::min(numbers.size(), most); ++i) {
    text += fmt::format("{}{}: {}", i == 0 ? "" : "; ", numbers[i].name, shown(numbers[i]));
  }
  return text;
}

}  // namespace

std::string render_text(const Explanation& why, const TextPage& page) {
  text::Text text = paragraph("", fmt::format("{}: {}", why.number.name, shown(why.number)));
  if (why.number.pointer != why.number.name) text += paragraph("", why.number.pointer);
  text += "\n" + paragraph("", sentence(why.words));
  if (!why.working.formula.empty()) text += "\n" + calculation(why.number, why.working);
  if (!why.working.inputs.empty()) {
    text += heading(why.working.formula.empty() ? "IT LOOKS AT" : "WHERE") + inputs(why.working, 2);
  }
  if (!why.rests_on.empty()) text += heading("IT RESTS ON");
  for (const WhyStep& step : why.rests_on) {
    text += paragraph("", fmt::format("{}: {}", step.number.name, shown(step.number)));
    text += indented("", sentence(step.words)) + calculation(step.number, step.working) +
            inputs(step.working, 4);
  }
  text += "\n" + source(why);
  if (!why.others.empty()) {
    const std::size_t left = why.kind_size - 1 - why.others.size();
    text += paragraph("Of its kind: ", listed(why.others, why.others.size()) +
                                           (left > 0 ? fmt::format("; and {} more", left) : ""));
  }
  return text.str(page);
}

std::string render_text(const std::vector<ExplainedKind>& kinds, const TextPage& page) {
  text::Text text = paragraph("",
                              "The numbers of the plan. strikeoff why JOB NAME says how one "
                              "came about.");
  text::Table table({{"NAME", {}}, {"VALUE", {}}, {"WHAT IT IS", {}}});
  for (const ExplainedKind& kind : kinds) {
    const PlanNumber& first = kind.numbers.front();
    const std::size_t n = kind.numbers.size();
    table.add({n == 1 ? kind.name : fmt::format("{} ({})", kind.name, n),
               n == 1 ? shown(first) : fmt::format("{}, …", shown(first)), kind.words});
  }
  return (text + "\n" + text::placed(table, 0)).str(page);
}

}  // namespace strikeoff
