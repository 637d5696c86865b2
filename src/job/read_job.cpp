// SPDX-License-Identifier: MIT
#include "strikeoff/read_job.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "core/format.h"
#include "core/outlines.h"
#include "embedded.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<int> spare_bag_count{0, 1000, "0 and 1000"};
/// Beyond these a plan is of no use to anyone and would only keep the machine busy.
constexpr double most_batches = 2000;
constexpr double most_pieces = 2000;

void read_format(Reader& reader, const Node& node) {
  const auto format = read_text(reader, node);
  if (!format || *format == "strikeoff-job/1") return;
  reader.error(
      node.pointer,
      {"unknown-format",
       fmt::format("this program reads \"strikeoff-job/1\", the file says {}", in_quotes(*format)),
       ""});
}

/// True when one lies before the other, as far as the times of day are given.
bool lies_before(const StartDate& one, const StartDate& other) {
  const std::chrono::sys_days a{one.day}, b{other.day};
  return a < b || (a == b && one.time && other.time && *one.time < *other.time);
}

std::optional<StartDate> read_ready_by(Reader& reader, const Node& node,
                                       const std::optional<StartDate>& date) {
  if (!node) return std::nullopt;
  const auto ready_by = read_date(reader, node);
  if (ready_by && date && lies_before(*ready_by, *date)) {
    reader.error(node.pointer,
                 {"ready-before-date",
                  fmt::format("the slab is wanted by {}, before its pour on {}",
                              readable(iso(*ready_by)), readable(iso(*date))),
                  "\"date\" is the day of the pour, \"ready_by\" the day of the first use; leave "
                  "out \"date\" to be told the latest start"});
  }
  return ready_by;
}

Units read_units(Reader& reader, const Node& node) {
  if (!node) {
    reader.assume(weight_units, "/units", "metric", "how results are shown (assumption)");
  }
  return read_units_word(reader, node).value_or(Units::metric);
}

std::string read_currency(Reader& reader, const Node& node, Units units) {
  const std::string usual = units == Units::us ? "USD" : "EUR";
  if (!node) reader.assume(weight_currency, "/currency", usual, "from the units (assumption)");
  const std::string currency = read_text(reader, node).value_or(usual);
  if (currency.size() > 12) {
    reader.error(node.pointer,
                 {"text-length", "a currency has at most 12 letters", "as in \"USD\""});
  }
  return currency;
}

double read_share(Reader& reader, const Node& node, const char* path, double usual, int weight,
                  const char* reason) {
  if (!node) reader.assume(weight, path, show_percent(usual), reason);
  const auto share = read_quantity(reader, node, any_percent);
  return share ? share->fraction : usual;
}

int read_spare_bags(Reader& reader, const Node& node) {
  if (!node) {
    reader.assume(weight_spare_bags, "/spare_bags", "1",
                  "unopened, to take back if it is not needed (assumption)");
  }
  return read_count(reader, node, spare_bag_count).value_or(1);
}

/// Parts are cut, counted and bought by the name of their stock: one name, one stock.
void check_stock_names(Reader& reader, const Job& job) {
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    if (!job.slabs[i].panel) continue;
    const Stock& panel = *job.slabs[i].panel;
    const std::string at = fmt::format("/slabs/{}/panel", i);
    std::vector<Stock> boards = job.forms.strip_stock;
    if (job.forms.bend_stock) boards.push_back(*job.forms.bend_stock);
    if (std::any_of(boards.begin(), boards.end(),
                    [&](const Stock& board) { return board.id == panel.id; })) {
      reader.error(at, {"duplicate-name",
                        fmt::format("a board and a panel are both named {}", in_quotes(panel.name)),
                        "give each its own name, even where both are cut from one kind of sheet"});
      return;
    }
    for (std::size_t k = 0; k < i; ++k) {
      const auto& other = job.slabs[k].panel;
      if (!other || other->id != panel.id || *other == panel) continue;
      reader.error(at, {"duplicate-name",
                        fmt::format("two different panels are named {}", in_quotes(panel.name)),
                        "give each its own name"});
      return;
    }
  }
}

/// The concrete of a slab, roughly and rather too much: its openings and its panel not taken off,
/// and hollow and rise as if they were as great everywhere as anywhere.
Volume rough_volume(const Slab& slab) {
  const Polygon outline = sharp_outline(slab);
  const Rectangle box = bounding_box(outline);
  Length thickness = slab.thickness;
  const auto [least, most] = std::minmax_element(
      slab.levels.begin(), slab.levels.end(),
      [](const LevelReading& a, const LevelReading& b) { return a.low < b.low; });
  if (!slab.levels.empty()) thickness += most->low - least->low;
  if (slab.fall) thickness += slab.fall->slope * (box.length + box.depth);
  Volume volume = signed_area(outline) * thickness;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    if (!slab.sides[k].apron) continue;
    volume += edge_length(outline, k) * slab.sides[k].overhang * slab.apron_depth;
  }
  return volume;
}

/// Keeps every later stage bounded: batches, sheets and pieces of strip.
void check_size(Reader& reader, const Job& job) {
  Volume box;
  double sheets = 0;
  Length edge;
  for (const Slab& slab : job.slabs) {
    const Polygon outline = sharp_outline(slab);
    box += rough_volume(slab);
    edge += perimeter(outline);
    if (slab.panel) sheets += signed_area(outline) / (slab.panel->length * slab.panel->width);
  }
  const double bags = box / job.mix.yield * (1 + job.waste);
  const double batches = bags / std::min(1.0, job.crew.bags_per_batch);
  Length longest;
  for (const Stock& stock : job.forms.strip_stock) longest = std::max(longest, stock.length);
  const auto too_big = [&](double number, double most, const char* things) {
    if (number <= most) return;
    reader.error("/slabs",
                 {"too-big",
                  fmt::format("this job takes about {} {}; at most {} are planned",
                              show_number(number, 0), things, show_number(most, 0)),
                  "check the units of the lengths and of the yield, or split the job"},
                 Reader::Mark::key);
  };
  too_big(batches, most_batches, "batches of mix");
  too_big(sheets, most_pieces, "panels");
  too_big(2 * (edge / longest), most_pieces, "lengths of strip");
}

Job read_all(Reader& reader, const Catalogue& catalogue) {
  Object o(reader, reader.root(), "the job");
  Job job;
  if (!o.is_object()) return job;
  read_format(reader, o.find("format"));
  job.name = o.text("name").value_or("");
  job.date = read_date(reader, o.find("date"));
  job.ready_by = read_ready_by(reader, o.find("ready_by"), job.date);
  job.units = read_units(reader, o.find("units"));
  job.currency = read_currency(reader, o.find("currency"), job.units);

  Context c{reader, catalogue, job.units};
  const Node slabs = o.need("slabs", "the starter job: strikeoff new");
  job.mix = read_mix(c, o.need("mix", "\"mix\": \"rapid-fine-48lb\", from: strikeoff list mixes"));
  job.additives = read_additives(c, o.find("additives"), job.mix);
  assume_water(c, job.mix, job.additives);
  job.waste = read_share(reader, o.find("waste"), "/waste", 0.10, weight_waste,
                         "mix left in buckets and on tools (common practice, no source)");
  job.spare_bags = read_spare_bags(reader, o.find("spare_bags"));
  job.forms = read_forms(c, o.find("forms"));
  // An apron is as wide as the form's strips and the mix's grains let it be.
  if (!job.forms.strip_stock.empty()) c.strip_thickness = job.forms.strip_stock.front().thickness;
  c.aggregate = job.mix.aggregate;
  job.slabs = read_slabs(c, slabs);
  set_bend_stock(c, job);
  job.crew = read_crew(c, o.find("crew"), job.open);
  job.site = read_site(c, o.find("site"), job.mix, job.date, job.open);
  job.finish = read_finish(c, o.find("finish"), job.slabs);
  read_prices(c, o.find("prices"), job);
  read_on_hand(c, o.find("on_hand"), job);
  job.tax =
      read_share(reader, o.find("tax"), "/tax", 0, weight_tax, "prices include it (assumption)");
  job.limits = read_limits(c, o.find("limits"));
  o.finish();
  return job;
}

}  // namespace

ReadResult read_job(std::string_view text, const Catalogue& catalogue) {
  JsonResult read = read_json(text);
  if (!read.json) return {std::nullopt, std::move(read.diagnostics)};
  Reader reader(*read.json);
  Job job = read_all(reader, catalogue);
  if (reader.errors() == 0 && read.diagnostics.empty()) {
    check_stock_names(reader, job);
    check_size(reader, job);
  }
  auto problems = reader.diagnostics(std::move(read.diagnostics));
  if (!problems.empty()) return {std::nullopt, std::move(problems)};
  job.assumptions = reader.assumptions();
  return {std::move(job), {}};
}

std::string_view starter_job() {
  return embedded::starter_job();
}

std::string_view job_schema() {
  return embedded::job_schema();
}

std::string_view plan_schema() {
  return embedded::plan_schema();
}

}  // namespace strikeoff
