// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle axis{2.6, Anchor::middle}, right{2.8, Anchor::end};
constexpr double most_names = 96, least_row = 3.4, most_row = 8;

/// One line of the timeline: a batch, or a task of the pour.
struct Row {
  std::string name;
  const Batch* batch = nullptr;
  const Task* task = nullptr;
};

std::vector<Row> rows_of(const Plan& plan) {
  std::vector<Row> rows;
  for (const Batch& batch : plan.batches) {
    rows.push_back({fmt::format("batch {}, mixer {}", batch.number, batch.mixer), &batch, nullptr});
  }
  for (const Task& task : plan.schedule) {
    if (task.phase == "finish" || (task.phase == "pour" && task.task.starts_with("Strike"))) {
      const std::string what = task.task.substr(0, task.task.find_first_of(":,"));
      if (task.start) rows.push_back({what + ": " + task.who, nullptr, &task});
    }
  }
  return rows;
}

Duration end_of(const Row& row) {
  if (row.batch == nullptr) return row.task->end.value_or(*row.task->start);
  return std::max(row.batch->place_end, row.batch->meet_by.value_or(Duration{}));
}

/// Minutes to millimetres.
struct Clock {
  double zero, mm_per_minute;
  [[nodiscard]] double operator()(Duration time) const {
    return zero + in_minutes(time) * mm_per_minute;
  }
};

void draw_axis(Paper& paper, const PaperBox& room, const Clock& clock, double last) {
  // About ten marks, at a round number of minutes.
  double step = 1;
  for (const double each : {2., 5., 10., 15., 30., 60., 120., 240., 480., 1440., 2880., 10080.}) {
    if (last / step > 12) step = each;
  }
  for (double minute = 0; minute <= last + 1e-9; minute += step) {
    const double x = clock(minutes(minute));
    paper.svg.line({x, room.y}, {x, room.bottom()}, Pen{0.13, "0.6 1.2"});
    paper.svg.text({x, room.y - 1}, show_clock(minutes(minute)), axis);
  }
}

void draw_batch(Paper& paper, const Clock& clock, const Batch& batch, const PaperBox& row) {
  const double start = clock(batch.contact), placing = clock(batch.place_start),
               placed = clock(batch.place_end);
  const double top = row.y + row.height * 0.2, height = row.height * 0.6;
  paper.svg.begin_group(fmt::format("batch {}", batch.number));
  paper.svg.box({start, top, placing - start, height}, Fill::keep, usual_pen);
  paper.svg.box({placing, top, placed - placing, height}, Fill::concrete, outline_pen);
  paper.svg.end_group();
  if (!batch.meet_by) return;
  const double by = clock(*batch.meet_by), middle = top + height / 2;
  paper.svg.line({placed, middle}, {by, middle}, wet_edge_pen);
  paper.svg.line({by, top}, {by, top + height}, outline_pen);
  paper.svg.text({by + 1, middle + 0.9}, "meet by " + show_clock(*batch.meet_by),
                 TextStyle{std::min(2.6, height), Anchor::start, false, 0, true});
}

Drawing page(const Plan& plan, const std::vector<Row>& rows, std::size_t first, std::size_t last,
             const std::string& name, const std::string& title) {
  Paper paper(name, title, plan.name, plan.units,
              "When each batch is mixed and placed, and until when its fresh edge must be met");
  PaperBox room = paper.room();
  double names_width = 0;
  for (std::size_t i = first; i < last; ++i) {
    names_width = std::max(names_width, text_width(rows[i].name, right) + 4);
  }
  names_width = std::min(names_width, most_names);
  room = {room.x + names_width, room.y + 7, room.width - names_width - 28, room.height - 9};
  Duration end;
  for (std::size_t i = first; i < last; ++i) end = std::max(end, end_of(rows[i]));
  const double minutes_shown = std::max(in_minutes(end), 1.0);
  const Clock clock{room.x, room.width / minutes_shown};
  const double height =
      std::min(most_row, room.height / static_cast<double>(std::max<std::size_t>(last - first, 1)));
  draw_axis(paper, room, clock, minutes_shown);
  for (std::size_t i = first; i < last; ++i) {
    const Row& row = rows[i];
    const PaperBox at{room.x, room.y + height * static_cast<double>(i - first), room.width, height};
    paper.svg.text({room.x - 2, at.y + height / 2 + 1}, fitted(row.name, names_width - 4, right),
                   right);
    if (row.batch != nullptr) {
      draw_batch(paper, clock, *row.batch, at);
    } else {
      const double from = clock(*row.task->start), to = clock(end_of(row));
      paper.svg.box({from, at.y + height * 0.2, std::max(to - from, 0.5), height * 0.6},
                    Fill::panel, usual_pen);
    }
  }
  paper.legend(Fill::keep, usual_pen, "water in, mix, carry");
  paper.legend(Fill::concrete, outline_pen, "placing");
  paper.legend(Fill::none, wet_edge_pen, "fresh edge, may wait so long");
  paper.legend(Fill::panel, usual_pen, "strike off, trowel");
  if (plan.pour.margin && plan.pour.usable) {
    paper.note(fmt::format("The longest wait is {}, {} may be used: {} to spare.",
                           show(plan.pour.edge_wait_max), show(*plan.pour.usable),
                           show(*plan.pour.margin)));
  }
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> timelines(const Plan& plan) {
  std::vector<Drawing> drawings;
  const std::vector<Row> rows = rows_of(plan);
  const auto per_page = static_cast<std::size_t>(120 / least_row);
  for (std::size_t first = 0; first < rows.size(); first += per_page) {
    const std::size_t last = std::min(rows.size(), first + per_page);
    const std::size_t number = drawings.size() + 1;
    const std::string of = rows.size() > per_page ? fmt::format(", part {}", number) : "";
    drawings.push_back(page(plan, rows, first, last, fmt::format("timeline-{}", number),
                            "The pour, minute by minute" + of));
  }
  return drawings;
}

}  // namespace strikeoff::draw
