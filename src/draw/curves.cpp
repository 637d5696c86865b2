// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"
#include "site/site.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle word{2.8}, below{2.8, Anchor::middle}, left{2.8, Anchor::end};

/// A field with two axes; `at` takes shares of it from its lower left corner.
struct Field {
  PaperBox box;
  [[nodiscard]] PaperPoint at(double x, double y) const {
    return {box.x + box.width * x, box.bottom() - box.height * y};
  }
};

Field field_of(Paper& paper) {
  const PaperBox room = paper.room();
  const Field field{{room.x + 24, room.y + 10, room.width - 34, room.height - 26}};
  paper.svg.line(field.at(0, 0), field.at(1, 0), usual_pen);
  paper.svg.line(field.at(0, 0), field.at(0, 1), usual_pen);
  return field;
}

/// The next of 1, 2, 5 times a power of ten.
double round_up(double value) {
  const double power = std::pow(10, std::floor(std::log10(value)));
  for (const double step : {1., 2., 5., 10.}) {
    if (step * power >= value * (1 - 1e-9)) return step * power;
  }
  return 10 * power;
}

void mark_left(Paper& paper, const Field& field, double share, const std::string& words) {
  const PaperPoint at = field.at(0, share);
  paper.svg.line(at, field.at(1, share), Pen{0.13, "0.6 1.2"});
  paper.svg.text({at.x - 1.5, at.y + 1}, words, left);
}

void mark_below(Paper& paper, const Field& field, double share, const std::string& words) {
  const PaperPoint at = field.at(share, 0);
  paper.svg.line({at.x, at.y + 1.5}, field.at(share, 1), Pen{0.13, "0.6 1.2"});
  paper.svg.text({at.x, at.y + 5}, words, below);
}

// --- strength

/// Ages are drawn by their logarithm: hours and weeks on one axis.
struct AgeAxis {
  double first, last;  // h
  [[nodiscard]] double operator()(Duration age) const {
    return std::log(in_hours(age) / first) / std::log(last / first);
  }
};

/// The curve's points and those that are marked on it, which a chord would pass by.
std::vector<StrengthPoint> with_marked(const HardeningPlan& hardening) {
  std::vector<StrengthPoint> points = hardening.strength;
  for (const ExpectedStrength& one : hardening.expected) {
    const bool on_axis = one.point.age >= points.front().age && one.point.age <= points.back().age;
    if (on_axis && hardening.curve != "steps") points.push_back(one.point);
  }
  std::stable_sort(points.begin(), points.end(),
                   [](const StrengthPoint& a, const StrengthPoint& b) { return a.age < b.age; });
  return points;
}

Drawing strength_curve(const Plan& plan) {
  const std::vector<StrengthPoint>& points = plan.hardening.strength;
  Paper paper("strength", "How strong the slab is, and when", plan.name, plan.units,
              "Compressive strength against age in the air of the job, an estimate");
  const Field field = field_of(paper);
  const Pressure unit = plan.units == Units::us ? psi(1) : megapascals(1);
  double greatest = 0;
  for (const StrengthPoint& point : points) greatest = std::max(greatest, point.strength / unit);
  const Pressure most = unit * round_up(greatest);
  const AgeAxis axis{in_hours(points.front().age), in_hours(points.back().age)};
  for (int i = 0; i <= 5; ++i) {
    const double share = i / 5.0;
    mark_left(paper, field, share, i == 0 ? "0" : show_strength(most * share, plan.units));
  }
  double free_from = -1;
  for (const Duration age : {hours(1), hours(2), hours(4), hours(8), hours(16), days(1), days(2),
                             days(4), days(7), days(14), days(28)}) {
    const double share = axis(age);
    if (share < 0 || share > 1 || share < free_from) continue;
    mark_below(paper, field, share, show(age));
    free_from = share + 0.06;
  }
  std::vector<PaperPoint> line;
  for (const StrengthPoint& point : with_marked(plan.hardening)) {
    const PaperPoint at = field.at(axis(point.age), point.strength / most);
    if (plan.hardening.curve == "steps" && !line.empty()) line.push_back({at.x, line.back().y});
    line.push_back(at);
  }
  paper.svg.begin_group("strength");
  paper.svg.polyline(line, outline_pen);
  paper.svg.end_group();
  paper.svg.text({field.box.x, field.box.y - 3}, "strength, by the age after the pour", word);
  Labels labels(paper.room());
  labels.keep_clear({paper.room().x, paper.room().y, field.box.x - paper.room().x,
                     paper.room().height});  // the words of the axis
  labels.keep_clear(line);
  for (const ExpectedStrength& one : plan.hardening.expected) {
    const double share = axis(one.point.age);
    if (share < 0 || share > 1) continue;
    const PaperPoint at = field.at(share, one.point.strength / most);
    paper.svg.circle(at, 0.8, Fill::dark, Pen{0});
    TextStyle style = left;
    style.halo = true;
    const std::string words =
        fmt::format("{}: {}", one.when, show_strength(one.point.strength, plan.units));
    if (labels.put(paper.svg, words, style,
                   {{at.x - 2, at.y - 1}, {at.x - 2, at.y - 5}, {at.x - 2, at.y - 9}})) {
      continue;
    }
    style.anchor = Anchor::start;  // near the axis: on the other side of the point
    (void)labels.put(paper.svg, words, style, {{at.x + 2, at.y + 4}, {at.x + 2, at.y + 8}});
  }
  paper.note(
      "An estimate from the bag's strengths, in the air of the job. "
      "The bag's data sheet decides.");
  return {"strength", "How strong the slab is, and when", paper.svg.str()};
}

// --- evaporation

std::string clock(std::chrono::minutes time) {
  return fmt::format("{:02}:{:02}", (time.count() / 60) % 24, time.count() % 60);
}

Drawing evaporation_bars(const Plan& plan) {
  const std::vector<HourPlan>& all = plan.site.hours;
  Paper paper(
      "evaporation", "How fast the fresh top dries, by the hour", plan.name, plan.units,
      "The worst evaporation of a pour begun at each hour of the job's weather, an estimate");
  const Field field = field_of(paper);
  double most = in_kilograms_per_m2_h(evaporation_stop) * 1.05;
  for (const HourPlan& hour : all) {
    if (hour.worst) most = std::max(most, in_kilograms_per_m2_h(*hour.worst));
  }
  const double step = most > 2 ? 1 : 0.25;
  const int steps = static_cast<int>(std::ceil(most / step));
  most = steps * step;
  for (int i = 0; i <= steps; ++i) {
    mark_left(paper, field, static_cast<double>(i) / steps,
              i == 0 ? "0" : show(kilograms_per_m2_h(i * step), plan.units));
  }
  const double width = 1.0 / static_cast<double>(all.size());
  const auto every = static_cast<std::size_t>(std::ceil(static_cast<double>(all.size()) / 16));
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].worst) {
      const double rate = in_kilograms_per_m2_h(*all[i].worst) / most;
      const PaperPoint top = field.at(width * (static_cast<double>(i) + 0.15), rate);
      const bool best = plan.site.best_start == all[i].weather.time;
      paper.svg.begin_group("hour " + clock(all[i].weather.time));
      paper.svg.box({top.x, top.y, field.box.width * width * 0.7, field.box.height * rate},
                    best ? Fill::panel : Fill::pale, best ? outline_pen : usual_pen);
      paper.svg.end_group();
    }
    if (i % every == 0) {
      const PaperPoint at = field.at(width * (static_cast<double>(i) + 0.5), 0);
      paper.svg.text({at.x, at.y + 5}, clock(all[i].weather.time), below);
    }
  }
  // Over the bars, so that no bar hides a limit.
  for (const auto& [rate, words] :
       {std::pair{evaporation_caution, "take care from here up: "},
        {evaporation_stop, "the top cracks unprotected from here up: "}}) {
    const double share = in_kilograms_per_m2_h(rate) / most;
    const PaperPoint at = field.at(0, share);
    paper.svg.line(at, field.at(1, share), Pen{0.5, "3 1.2"});
    TextStyle style = left;
    style.halo = true;
    paper.svg.text({field.box.right(), at.y - 1}, words + show(rate, plan.units), style);
  }
  paper.svg.text({field.box.x, field.box.y - 3},
                 "at worst, in a pour begun at that hour; an estimate", word);
  paper.legend(Fill::pale, usual_pen, "begun at that hour");
  if (plan.site.best_start) paper.legend(Fill::panel, outline_pen, "best hour to begin");
  return {"evaporation", "How fast the fresh top dries, by the hour", paper.svg.str()};
}

}  // namespace

std::vector<Drawing> curves(const Plan& plan) {
  std::vector<Drawing> drawings;
  if (plan.hardening.strength.size() > 1) drawings.push_back(strength_curve(plan));
  if (!plan.site.hours.empty()) drawings.push_back(evaporation_bars(plan));
  return drawings;
}

}  // namespace strikeoff::draw
