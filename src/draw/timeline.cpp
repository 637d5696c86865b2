// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"
#include "pour/crew.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle axis{2.6, Anchor::middle}, right{2.8, Anchor::end};
constexpr double most_names = 96, least_row = 3.4, most_row = 8;

/// A stretch of somebody's time.
struct Stretch {
  Duration start, end;
  Fill fill;
  int batch = 0;  // its number stands in it; 0: none
};

/// One line of the timeline: a mixer, who works, or a batch with its window.
struct Lane {
  std::string name;
  std::vector<Stretch> stretches;
  const Batch* window = nullptr;
};

Fill fill_of(Role role) {
  return role == Role::mix     ? Fill::keep
         : role == Role::carry ? Fill::pale
         : role == Role::place ? Fill::concrete
                               : Fill::panel;
}

std::vector<Lane> mixers(const Plan& plan) {
  std::map<int, Lane> lanes;
  for (const Batch& batch : plan.batches) {
    Lane& lane = lanes[batch.mixer];
    lane.name = fmt::format("mixer {}", batch.mixer);
    lane.stretches.push_back({batch.loading, batch.emptied, Fill::paper, batch.number});
  }
  std::vector<Lane> result;
  for (auto& [number, lane] : lanes) result.push_back(std::move(lane));
  return result;
}

/// "person 1: mix, place": what each has in hand, batch by batch.
std::vector<Lane> people(const Plan& plan) {
  std::map<int, Lane> lanes;
  std::map<int, std::vector<Role>> roles;
  for (const PersonWork& work : plan.pour.work) {
    lanes[work.person].stretches.push_back({work.start, work.end, fill_of(work.role), work.batch});
    std::vector<Role>& has = roles[work.person];
    if (std::find(has.begin(), has.end(), work.role) == has.end()) has.push_back(work.role);
  }
  std::vector<Lane> result;
  for (auto& [number, lane] : lanes) {
    lane.name = fmt::format("person {}:", number);
    for (const Role role : roles[number]) {
      lane.name += fmt::format("{} {}", role == roles[number].front() ? "" : ",", name_of(role));
    }
    result.push_back(std::move(lane));
  }
  return result;
}

/// Striking off, which can go on beside placing, and the trowel: a line for each, whoever does it.
std::vector<Lane> finishing(const Plan& plan) {
  std::vector<Lane> result;
  for (const std::string_view phase : {"pour", "finish"}) {
    const bool pour = phase == "pour";
    for (const Task& task : plan.schedule) {
      // A batch's own task of the pour is in the lines of its people.
      if (task.phase != phase || !task.start || (pour && task.batch > 0)) continue;
      const std::string name = fmt::format("{}: {}", task.who, pour ? "strike off" : "trowel");
      if (result.empty() || result.back().name != name) result.push_back({name, {}, nullptr});
      result.back().stretches.push_back(
          {*task.start, task.end.value_or(*task.start), Fill::panel, task.batch});
    }
  }
  return result;
}

std::vector<Lane> batches(const Plan& plan) {
  std::vector<Lane> result;
  for (const Batch& batch : plan.batches) {
    result.push_back({fmt::format("batch {}, from its water", batch.number),
                      {{batch.contact, batch.place_start, Fill::keep, 0},
                       {batch.place_start, batch.place_end, Fill::concrete, 0}},
                      &batch});
  }
  return result;
}

std::vector<Lane> lanes_of(const Plan& plan) {
  std::vector<Lane> all;
  // Without a whole crew nobody knows who does what when.
  if (!plan.pour.work.empty()) {
    all = mixers(plan);
    for (Lane& lane : people(plan)) all.push_back(std::move(lane));
  }
  for (Lane& lane : finishing(plan)) all.push_back(std::move(lane));
  for (Lane& lane : batches(plan)) all.push_back(std::move(lane));
  return all;
}

struct TimeSpan {
  Duration start, end;
};

/// What the lanes of one page reach over.
TimeSpan reach(const std::vector<Lane>& lanes) {
  std::optional<TimeSpan> all;
  const auto add = [&](Duration start, Duration end) {
    if (!all) all = {start, end};
    all = {std::min(all->start, start), std::max(all->end, end)};
  };
  for (const Lane& lane : lanes) {
    for (const Stretch& one : lane.stretches) add(one.start, one.end);
    if (lane.window && lane.window->meet_by) add(lane.window->contact, *lane.window->meet_by);
  }
  return all.value_or(TimeSpan{});
}

/// Minutes to millimetres.
struct Clock {
  Duration from;
  double zero, mm_per_minute;
  [[nodiscard]] double operator()(Duration time) const {
    return zero + in_minutes(time - from) * mm_per_minute;
  }
};

void draw_axis(Paper& paper, const PaperBox& room, const Clock& clock, const TimeSpan& shown) {
  // About ten marks, at a round number of minutes.
  const double first = in_minutes(shown.start), last = in_minutes(shown.end);
  double step = 1;
  for (const double each : {2., 5., 10., 15., 30., 60., 120., 240., 480., 1440., 2880., 10080.}) {
    if ((last - first) / step > 12) step = each;
  }
  const auto from = std::llround(std::ceil(first / step)),
             to = std::llround(std::floor(last / step + 1e-9));
  for (auto mark = from; mark <= to; ++mark) {
    const Duration time = minutes(static_cast<double>(mark) * step);
    const double x = clock(time);
    paper.svg.line({x, room.y}, {x, room.bottom()}, Pen{0.13, "0.6 1.2"});
    paper.svg.text({x, room.y - 1}, show_clock(time), axis);
  }
}

void draw_stretches(Paper& paper, const Clock& clock, const Lane& lane, const PaperBox& row) {
  paper.svg.begin_group(lane.name);
  for (const Stretch& one : lane.stretches) {
    const double from = clock(one.start), to = clock(one.end);
    paper.svg.box({from, row.y, std::max(to - from, 0.5), row.height}, one.fill,
                  one.fill == Fill::concrete ? outline_pen : usual_pen);
  }
  paper.svg.end_group();
  for (const Stretch& one : lane.stretches) {
    const TextStyle number{std::min(2.8, row.height), Anchor::middle, true, 0, true};
    const std::string words = fmt::format("{}", one.batch);
    const double from = clock(one.start), to = clock(one.end);
    if (one.batch == 0 || text_width(words, number) > to - from - 0.6) continue;
    paper.svg.text({(from + to) / 2, row.y + row.height / 2 + number.size * 0.35}, words, number);
  }
}

/// The fresh edge waits until its last neighbour lies there, and could wait until `meet_by`.
void draw_window(Paper& paper, const Clock& clock, const Batch& batch, const PaperBox& row) {
  if (!batch.meet_by) return;
  const double placed = clock(batch.place_end), by = clock(*batch.meet_by),
               met = std::max(placed, clock(batch.contact + batch.edge_wait));
  const double middle = row.y + row.height / 2;
  if (met > placed) paper.svg.line({placed, middle}, {met, middle}, outline_pen);
  if (by > met) paper.svg.line({met, middle}, {by, middle}, wet_edge_pen);
  paper.svg.line({by, row.y}, {by, row.bottom()}, outline_pen);
  paper.svg.text({std::max(by, met) + 1, middle + 0.9}, "meet by " + show_deadline(*batch.meet_by),
                 TextStyle{std::min(2.6, row.height), Anchor::start, false, 0, true});
}

void legends(Paper& paper, const Plan& plan) {
  const bool has_people = !plan.pour.work.empty();
  paper.legend(Fill::keep, usual_pen, "mixing, from the water on");
  if (has_people) paper.legend(Fill::pale, usual_pen, "carrying");
  paper.legend(Fill::concrete, outline_pen, "placing");
  paper.legend(Fill::panel, usual_pen, "strike off, trowel");
  paper.legend(Fill::none, outline_pen, "fresh edge waits to be met");
  paper.legend(Fill::none, wet_edge_pen, "and could wait so long");
}

Drawing page(const Plan& plan, const std::vector<Lane>& lanes, const std::string& name,
             const std::string& title) {
  Paper paper(name, title, plan.name, plan.units,
              "What mixers and people do when, and until when each fresh edge must be met");
  double names = 0;
  for (const Lane& lane : lanes) names = std::max(names, text_width(lane.name, right) + 4);
  names = std::min(names, most_names);
  PaperBox room = paper.room();
  room = {room.x + names, room.y + 7, room.width - names - 34, room.height - 9};
  const TimeSpan shown = reach(lanes);
  const Clock clock{shown.start, room.x,
                    room.width / std::max(in_minutes(shown.end - shown.start), 1.0)};
  const double height = std::min(most_row, room.height / static_cast<double>(lanes.size()));
  draw_axis(paper, room, clock, shown);
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    const double top = room.y + height * static_cast<double>(i);
    paper.svg.text({room.x - 2, top + height / 2 + 1}, fitted(lanes[i].name, names - 4, right),
                   right);
    const PaperBox row{room.x, top + height * 0.2, room.width, height * 0.6};
    draw_stretches(paper, clock, lanes[i], row);
    if (lanes[i].window) draw_window(paper, clock, *lanes[i].window, row);
  }
  legends(paper, plan);
  if (plan.pour.margin && plan.pour.usable) {
    paper.note(fmt::format(
        "Numbers are batches. The longest wait is {}, {} may be used: {} to spare.",
        show(plan.pour.edge_wait_max), show(*plan.pour.usable), show(*plan.pour.margin)));
  }
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> timelines(const Plan& plan) {
  std::vector<Drawing> drawings;
  const std::vector<Lane> lanes = lanes_of(plan);
  const auto per_page = static_cast<std::size_t>(120 / least_row);
  for (std::size_t first = 0; first < lanes.size(); first += per_page) {
    const std::size_t last = std::min(lanes.size(), first + per_page);
    const std::size_t number = drawings.size() + 1;
    const std::string of = lanes.size() > per_page ? fmt::format(", part {}", number) : "";
    drawings.push_back(page(plan,
                            {lanes.begin() + static_cast<std::ptrdiff_t>(first),
                             lanes.begin() + static_cast<std::ptrdiff_t>(last)},
                            fmt::format("timeline-{}", number), "The pour, minute by minute" + of));
  }
  return drawings;
}

}  // namespace strikeoff::draw
