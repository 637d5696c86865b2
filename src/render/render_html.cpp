// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/markup.h"
#include "render/html_blocks.h"
#include "render/html_style.h"
#include "render/text_sections.h"
#include "strikeoff/draw.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using html::blocks;
using html::section;
using html::Ticks;

/// The section a drawing stands in, by its name; what is not named here helps to build.
std::string_view section_of(const Drawing& drawing) {
  const std::string& name = drawing.name;
  if (name.starts_with("board-") || name.starts_with("sheet-")) return "cut";
  if (name.starts_with("timeline") || name.find("-pour") != std::string::npos) return "clock";
  if (name == "strength") return "calendar";
  if (name == "evaporation") return "air";
  return "build";
}

std::string figures(const std::vector<Drawing>& drawings, std::string_view id) {
  std::string result;
  for (const Drawing& drawing : drawings) {
    if (section_of(drawing) != id) continue;
    // Inside a page an SVG has no XML declaration.
    const std::size_t begin = std::min(drawing.svg.find("<svg"), drawing.svg.size());
    result += "<figure>\n" + drawing.svg.substr(begin) + "</figure>\n";
  }
  return result;
}

/// The tasks of one phase under its name, with boxes to tick where they gate the next step.
std::string phase(const Plan& plan, std::string_view name, std::string_view title, Ticks ticks) {
  const std::string tasks = blocks(text::tasks_of(plan, name), ticks);
  return tasks.empty() ? "" : fmt::format("<h3>{}</h3>\n{}", title, tasks);
}

std::string build(const Plan& plan) {
  return phase(plan, "day before", "The day before, in this order", Ticks::rows);
}

std::string gate(const Plan& plan) {
  const std::string tasks = phase(plan, "before mixing", "Before mixing", Ticks::rows);
  if (tasks.empty()) return "";
  return tasks + "<p>No water goes in before every box here and under Build is ticked.</p>\n" +
         blocks(text::reading_times(plan));
}

std::string finish(const Plan& plan) {
  return phase(plan, "finish", "Trowel", Ticks::rows) +
         phase(plan, "wet cure", "Keep wet", Ticks::rows);
}

std::string calendar(const Plan& plan) {
  const std::string tasks = phase(plan, "later", "Later", Ticks::rows);
  if (tasks.empty()) return "";
  return tasks + blocks(text::reading_times(plan)) + blocks(text::hardening(plan));
}

struct Section {
  std::string_view id, title;
  std::string content;
};

std::vector<Section> sections(const Plan& plan) {
  const std::vector<Drawing> drawings = drawings_of(plan);
  std::vector<Section> all = {
      {"shop", "Shop", blocks(text::shop(plan))},
      {"cut", "Cut", blocks(text::cut(plan))},
      {"build", "Build", build(plan)},
      {"gate", "Ready to mix?", gate(plan)},
      {"card", "Batch card", blocks(text::batch_rows(plan))},
      {"clock", "Clock",
       blocks(text::pour(plan)) + phase(plan, "pour", "Who does what", Ticks::none)},
      {"finish", "Finish", finish(plan)},
      {"calendar", "Calendar", calendar(plan)},
      {"air", "Air and water", blocks(text::air_and_water(plan))},
      {"weights", "Weights", blocks(text::weights(plan))},
      {"cautions", "Cautions", blocks(text::checks(plan))},
      {"assumptions", "Assumptions", blocks(text::assumptions(plan))},
  };
  for (Section& one : all) one.content += figures(drawings, one.id);
  all.erase(std::remove_if(all.begin(), all.end(),
                           [](const Section& one) { return one.content.empty(); }),
            all.end());
  return all;
}

std::string contents(const std::vector<Section>& all) {
  std::string items;
  for (const Section& one : all) {
    items += fmt::format("<li><a href=\"#{}\">{}</a></li>\n", one.id, markup(one.title));
  }
  return "<nav aria-label=\"Sections\"><ul>\n" + items + "</ul></nav>\n";
}

}  // namespace

std::string render_html(const Plan& plan) {
  const std::vector<Section> all = sections(plan);
  std::string body =
      "<header>\n" + blocks(text::headline(plan)) + "</header>\n" + contents(all) + "<main>\n";
  for (const Section& one : all) body += section(one.id, one.title, one.content);
  return fmt::format(
      "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta "
      "name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n{}"
      "</head>\n<body>\n{}</main>\n</body>\n</html>\n",
      markup(plan.name.empty() ? "slab" : plan.name), html::style(plan.units), body);
}

}  // namespace strikeoff
