// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "core/format.h"
#include "render/text.h"
#include "render/text_words.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using text::Align;
using text::Table;

/// A share as a number of pours in a hundred, no finer than anyone can use.
std::string hundredths(double share) {
  const double times = share * 100;
  return show_number(times, times >= 10 ? 0 : times >= 1 ? 1 : 2);
}

std::string grouped(std::int64_t number) {
  std::string digits = std::to_string(number);
  for (std::size_t at = digits.size(); at > 3; at -= 3) digits.insert(at - 3, " ");
  return digits;
}

std::string opening(const Odds& odds) {
  if (!odds.cold_joint) return "";
  const Chance& cold = *odds.cold_joint;
  if (cold.times == 0) {
    return fmt::format("None of {} such days ended with a cold joint (95 %: at most {} in 100).",
                       grouped(cold.runs), hundredths(cold.high));
  }
  return fmt::format("About {} in 100 such days end with a cold joint (95 %: {} to {}).",
                     hundredths(cold.share), hundredths(cold.low), hundredths(cold.high));
}

void add(Table& table, const std::string& what, const std::optional<Chance>& chance) {
  if (!chance) return;
  table.add({what, hundredths(chance->share),
             hundredths(chance->low) + " to " + hundredths(chance->high)});
}

text::Text chance_table(const Odds& odds) {
  Table table({{"What goes wrong"}, {"In 100 days", Align::right}, {"95 %", Align::right}});
  add(table, "a joint goes cold: its edge waits longer than its mix stays workable",
      odds.cold_joint);
  add(table, "a batch is stiff before it is placed", odds.stiff_batch);
  add(table, "a place sets before it is trowelled twice", odds.late_trowel);
  if (odds.pour_within) {
    add(table, "the pour takes longer than " + show(*odds.pour_within), odds.overrun);
  }
  add(table, fmt::format("the {} do not fill the forms", count(odds.bags, "bag", "bags")),
      odds.short_of_mix);
  if (odds.spare_bags > 0) {
    add(table, fmt::format("nor do they with {} spare", odds.spare_bags), odds.short_with_spare);
  }
  return text::placed(table);
}

void add(Table& table, const std::string& what, const std::optional<Quantiles>& value) {
  if (value) table.add({what, show(value->p5), show(value->p50), show(value->p95)});
}

text::Text spread(const Odds& odds) {
  Table table(
      {{"At most"}, {"5 days in 100", Align::right}, {"50", Align::right}, {"95", Align::right}});
  add(table, "end of the pour, after the first water", odds.end);
  add(table, "longest wait of an edge", odds.worst_wait);
  add(table, "spare time of the edge with the least (minus: too late)", odds.margin);
  return table.empty() ? "" : "\n" + text::placed(table);
}

/// The first few, for the rest decide little.
constexpr std::size_t most_named = 4;

text::Text worst_joints(const Odds& odds) {
  if (odds.joints.empty()) return "";
  std::vector<std::string> parts;
  for (const JointShare& joint : odds.joints) {
    if (parts.size() == most_named) break;
    parts.push_back(fmt::format("batch {} to {} ({} in 100)", joint.first, joint.second,
                                hundredths(joint.worst.share)));
  }
  return text::paragraph("  ", "Most often the worst joint: " + joined(parts, ", ") + ".");
}

text::Text drivers(const Odds& odds) {
  if (odds.drivers.empty()) return "";
  std::vector<std::string> parts;
  for (const Driver& driver : odds.drivers) {
    if (parts.size() == most_named || driver.share < 0.005) break;
    parts.push_back(fmt::format("{} {} %", driver.name, show_number(driver.share * 100, 0)));
  }
  return text::paragraph("  ",
                         fmt::format("What decides it: {}; single batches and the rest {} %.",
                                     joined(parts, ", "), show_number(odds.unexplained * 100, 0)));
}

text::Text list(const std::vector<std::string>& sentences) {
  text::Text result;
  for (const std::string& sentence : sentences) result += text::paragraph("  - ", sentence);
  return result;
}

text::Text assumed(const Odds& odds) {
  Table table({{"What"}, {"Value"}, {"Why"}});
  for (const OddsAssumption& a : odds.assumptions) table.add({a.what, a.value, a.reason});
  return text::placed(table);
}

}  // namespace

std::string render_text(const Odds& odds, const TextPage& page) {
  text::Text result =
      text::paragraph(odds.name.empty() ? "ODDS" : "ODDS: ", odds.name, text::Emphasis::heading);
  const std::string first = opening(odds);
  if (!first.empty()) result += "\n" + text::paragraph("  ", first);
  result += "\n" + chance_table(odds) + spread(odds);
  const text::Text causes = worst_joints(odds) + drivers(odds);
  if (!causes.empty()) result += "\n" + causes;
  if (!odds.advice.empty()) result += text::heading("WHAT TO DO") + list(odds.advice);
  if (!odds.unknown.empty()) result += text::heading("NOT KNOWN") + list(odds.unknown);
  result +=
      text::heading("ASSUMED") +
      text::paragraph("  ", fmt::format("The plan was poured {} times with random numbers (seed "
                                        "{}), each time with other minutes, mix and weather. The "
                                        "95 % are for chance in these pours only: the spreads "
                                        "below are guesses, and count for more.",
                                        grouped(odds.runs), odds.seed)) +
      "\n" + assumed(odds);
  return result.str(page);
}

}  // namespace strikeoff
