// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "strikeoff/odds.h"
#include "strikeoff/plan.h"
#include "strikeoff/resume.h"
#include "strikeoff/why.h"

namespace strikeoff {

/// What a text is laid out for.
struct TextPage {
  std::size_t width = 100;  // columns, at least 60: no line is longer
  bool emphasis = false;    // headings, stops and cautions stand out by terminal escape sequences
};

/// The plan as text for a workshop, in the order of the day, lengths as US fractions to 1/16 in or
/// in millimetres, as the plan's units say. No text of the job file reaches it with control
/// characters.
[[nodiscard]] std::string render_text(const Plan& plan, const TextPage& page = {});

/// The plan file, format "strikeoff-plan/1": SI with the unit in each key, full precision.
[[nodiscard]] std::string render_json(const Plan& plan);

/// The print sheet: one HTML file that needs nothing beside it, no scripts, in the order of the
/// day, with boxes to tick and every drawing in its place. It prints on A4 in metric plans, on US
/// Letter in others.
[[nodiscard]] std::string render_html(const Plan& plan);

/// The tables a spreadsheet can have: parts to cut, pieces of boards and sheets, what to buy,
/// batches with their water and times, tasks with theirs.
enum class CsvTable { parts, boards, materials, batches, schedule };

/// One table as CSV (RFC 4180): a header of the plan file's keys, SI, full precision, decimal
/// point; lists in one cell; what is not known is empty. Control characters become blanks, and a
/// text that begins with one of = + - @ has an apostrophe before it, lest a spreadsheet takes it
/// for a formula.
[[nodiscard]] std::string render_csv(const Plan& plan, CsvTable table = CsvTable::parts);

/// The plan's dated steps as a calendar (RFC 5545): the day before and the pour as blocks, then
/// each later step with an alarm, the wet cure's one at every wetting. Times are local and
/// floating; a day or more away, or without a start time, whole days. A step keeps its UID when
/// times change, so importing again updates it. Nothing when the job gives no date.
[[nodiscard]] std::optional<std::string> render_ics(const Plan& plan);

/// The odds as text: what goes wrong how often, what decides it, what to do, what was assumed.
[[nodiscard]] std::string render_text(const Odds& odds, const TextPage& page = {});

/// The odds file, format "strikeoff-odds/1": chances as shares of 1 with their 95 % interval, SI
/// with the unit in each key.
[[nodiscard]] std::string render_json(const Odds& odds);

/// The rest of a pour as text: what to do now and until when comes first.
[[nodiscard]] std::string render_text(const Resume& resume, const TextPage& page = {});

/// The file of the rest, format "strikeoff-resume/1": SI with the unit in each key.
[[nodiscard]] std::string render_json(const Resume& resume);

/// How one number came about, as text; and all names, one to a line.
[[nodiscard]] std::string render_text(const Explanation& why, const TextPage& page = {});
[[nodiscard]] std::string render_text(const std::vector<ExplainedKind>& kinds,
                                      const TextPage& page = {});

/// The same as JSON, formats "strikeoff-why/1" and "strikeoff-why-list/1"; what is not given is
/// null.
[[nodiscard]] std::string render_json(const Explanation& why);
[[nodiscard]] std::string render_json(const std::vector<ExplainedKind>& kinds);

}  // namespace strikeoff
