// SPDX-License-Identifier: MIT
#include "draw/paper.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

#include "core/format.h"

namespace strikeoff::draw {
namespace {

constexpr double margin = 10, title_height = 12, foot_height = 24;

// Sizes of paper: ISO 216 A4, ANSI/ASME Y14.1 A (from memory).
constexpr PaperPoint a4{297, 210}, letter{279.4, 215.9};

PaperPoint paper(Units units) {
  return units == Units::us ? letter : a4;
}

struct NamedScale {
  int denominator;
  std::string_view words;
};

constexpr NamedScale metric_scales[] = {
    {1, "1:1"},   {2, "1:2"},     {5, "1:5"},     {10, "1:10"},   {15, "1:15"},
    {20, "1:20"}, {25, "1:25"},   {30, "1:30"},   {40, "1:40"},   {50, "1:50"},
    {75, "1:75"}, {100, "1:100"}, {150, "1:150"}, {200, "1:200"}, {500, "1:500"}};
constexpr NamedScale us_scales[] = {{1, "full size"},
                                    {2, "1:2 (6 in is 1 ft)"},
                                    {4, "1:4 (3 in is 1 ft)"},
                                    {8, "1:8 (1 1/2 in is 1 ft)"},
                                    {12, "1:12 (1 in is 1 ft)"},
                                    {16, "1:16 (3/4 in is 1 ft)"},
                                    {24, "1:24 (1/2 in is 1 ft)"},
                                    {32, "1:32 (3/8 in is 1 ft)"},
                                    {48, "1:48 (1/4 in is 1 ft)"},
                                    {64, "1:64 (3/16 in is 1 ft)"},
                                    {96, "1:96 (1/8 in is 1 ft)"},
                                    {128, "1:128 (3/32 in is 1 ft)"},
                                    {192, "1:192 (1/16 in is 1 ft)"}};

constexpr TextStyle note_style{2.6};

double note_width(double paper_width) {
  return paper_width - 2 * margin - 6;
}

/// What a thin line between two different places covers.
Quad stroke_quad(const PaperPoint& a, const PaperPoint& b) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const double x = 0.1 * (b.y - a.y) / length, y = -0.1 * (b.x - a.x) / length;
  return {PaperPoint{a.x + x, a.y + y}, PaperPoint{b.x + x, b.y + y}, PaperPoint{b.x - x, b.y - y},
          PaperPoint{a.x - x, a.y - y}};
}

}  // namespace

Scale scale_for(Length width, Length height, const PaperBox& room, Units units) {
  const double least = std::max(width.in_mm() / room.width, height.in_mm() / room.height);
  const auto largest = [&](const auto& scales) -> Scale {
    for (const NamedScale& scale : scales) {
      if (scale.denominator >= least) return {scale.denominator, std::string(scale.words)};
    }
    const int whole = static_cast<int>(std::ceil(least / 100)) * 100;
    return {whole, fmt::format("1:{}", whole)};
  };
  return units == Units::us ? largest(us_scales) : largest(metric_scales);
}

std::vector<PaperPoint> View::operator()(const Polygon& polygon) const {
  std::vector<PaperPoint> spots;
  for (const Point& point : polygon) spots.push_back((*this)(point));
  return spots;
}

PaperBox View::operator()(const Rectangle& rectangle) const {
  const PaperPoint corner = (*this)(Point{rectangle.at.x, rectangle.at.y + rectangle.depth});
  return {corner.x, corner.y, (*this)(rectangle.length), (*this)(rectangle.depth)};
}

View view_of(const Rectangle& what, const PaperBox& room, Units units) {
  View view{scale_for(what.length, what.depth, room, units), {}};
  view.zero = {room.x + (room.width - view(what.length)) / 2 - view(what.at.x),
               room.y + (room.height + view(what.depth)) / 2 + view(what.at.y)};
  return view;
}

Paper::Paper(std::string id, const std::string& title, const std::string& job, Units units,
             const std::string& description)
    : svg(std::move(id), paper(units).x, paper(units).y, title, description),
      units_(units),
      width_(paper(units).x),
      height_(paper(units).y),
      room_{margin + 2, margin + title_height + 2, width_ - 2 * margin - 4,
            height_ - 2 * margin - title_height - foot_height - 4} {
  svg.box({0, 0, width_, height_}, Fill::paper, Pen{0});
  svg.box({margin, margin, width_ - 2 * margin, height_ - 2 * margin}, Fill::none, usual_pen);
  svg.line({margin, margin + title_height}, {width_ - margin, margin + title_height}, usual_pen);
  const double foot = height_ - margin - foot_height;
  svg.line({margin, foot}, {width_ - margin, foot}, usual_pen);
  TextStyle large{5, Anchor::start, true};
  const TextStyle small{3, Anchor::end};
  const double for_title = (width_ - 2 * margin) * 0.72, for_job = (width_ - 2 * margin) * 0.24;
  while (large.size > 3.5 && text_width(title, large) > for_title) large.size -= 0.5;
  svg.text({margin + 3, margin + 8}, fitted(title, for_title, large), large);
  svg.text({width_ - margin - 3, margin + 8}, fitted(job, for_job, small), small);
}

void Paper::legend(Fill fill, const Pen& pen, const std::string& words) {
  const double column = 59, row = 6;
  const int line = legends_ / 3;
  const PaperPoint at{margin + 79 + column * (legends_ % 3),
                      height_ - margin - foot_height + 2.5 + row * line};
  ++legends_;
  if (fill == Fill::none) {
    svg.line({at.x, at.y + 2}, {at.x + 8, at.y + 2}, pen);
  } else {
    svg.box({at.x, at.y, 8, 4}, fill, pen);
  }
  const TextStyle style{2.6};
  svg.text({at.x + 9.5, at.y + 3}, fitted(words, column - 11, style), style);
}

void Paper::notes(const std::vector<std::string>& sentences) {
  const std::size_t most = 3;
  std::vector<std::string> lines;
  std::istringstream words(joined(sentences, " "));
  for (std::string word; words >> word;) {
    const std::string longer = lines.empty() ? word : lines.back() + " " + word;
    const bool fits = text_width(longer, note_style) <= note_width(width_);
    if (!lines.empty() && (fits || lines.size() == most)) {
      lines.back() = longer;
    } else {
      lines.push_back(word);
    }
  }
  for (auto line = lines.rbegin(); line != lines.rend(); ++line) note(*line);
}

void Paper::note(const std::string& words) {
  svg.text({margin + 3, height_ - margin - 2 - 3.4 * notes_},
           fitted(words, note_width(width_), note_style), note_style);
  ++notes_;
}

void Paper::scale_bar(const Scale& scale) {
  // The longest round length that fits 60 mm of paper.
  const bool us = units_ == Units::us;
  Length length = us ? Length::inches(1) : Length::mm(10);
  for (const double each :
       us ? std::vector{2., 3., 6., 12., 24., 36., 48., 72., 96., 120., 240.}
          : std::vector{20., 50., 100., 200., 250., 500., 1000., 2000., 5000., 10000., 20000.}) {
    const Length longer = us ? Length::inches(each) : Length::mm(each);
    if (longer.in_mm() / scale.denominator <= 60) length = longer;
  }
  const double long_mm = length.in_mm() / scale.denominator;
  const PaperPoint at{margin + 3, height_ - margin - foot_height + 9};
  const TextStyle style{2.6}, middle{2.6, Anchor::middle};
  svg.text({at.x, at.y - 4}, "Scale " + scale.words, style);
  svg.begin_group("scale-bar");
  svg.box({at.x, at.y - 2, long_mm / 2, 2}, Fill::dark, usual_pen);
  svg.box({at.x + long_mm / 2, at.y - 2, long_mm / 2, 2}, Fill::paper, usual_pen);
  svg.end_group();
  svg.text({at.x, at.y + 3}, "0", style);
  svg.text({at.x + std::max(long_mm, 12.0), at.y + 3}, show(length, units_), middle);
}

void Labels::keep_clear(const PaperBox& box) {
  taken_.push_back(corners_of(box));
}

void Labels::keep_clear(const std::vector<PaperPoint>& line) {
  for (std::size_t k = 1; k < line.size(); ++k) {
    if (line[k - 1] == line[k]) continue;
    taken_.push_back(stroke_quad(line[k - 1], line[k]));
  }
}

void Labels::keep_clear(const PaperPoint& at, const std::string& text, const TextStyle& style) {
  texts_.push_back(text_quad(at, text, style));
  taken_.push_back(texts_.back());
}

bool Labels::is_free(const Quad& quad) const {
  const auto outside = [&](const PaperPoint& spot) {
    return !holds(room_, {spot.x, spot.y, 0, 0});
  };
  return std::none_of(quad.begin(), quad.end(), outside) &&
         std::none_of(taken_.begin(), taken_.end(),
                      [&](const Quad& other) { return overlap(quad, other); });
}

bool Labels::misses_texts(const PaperPoint& from, const PaperPoint& to) const {
  if (from == to) return true;
  const Quad stroke = stroke_quad(from, to);
  return std::none_of(texts_.begin(), texts_.end(),
                      [&](const Quad& text) { return overlap(stroke, text); });
}

bool Labels::put(Svg& svg, const std::string& text, const TextStyle& style,
                 const std::vector<PaperPoint>& places) {
  for (const PaperPoint& place : places) {
    const Quad quad = text_quad(place, text, style);
    if (!is_free(quad)) continue;
    taken_.push_back(quad);
    texts_.push_back(quad);
    svg.text(place, text, style);
    return true;
  }
  return false;
}

double turn_along(const PaperPoint& from, const PaperPoint& to) {
  double turn = std::atan2(to.y - from.y, to.x - from.x) * 180 / std::acos(-1.0);
  if (turn > 85) turn -= 180;
  if (turn <= -95) turn += 180;
  return std::abs(turn) < 1e-9 ? 0 : turn;
}

std::vector<std::string> callouts(Svg& svg, Labels& labels, double x, const PaperBox& room,
                                  std::vector<Callout> what) {
  const double row = 5;
  const TextStyle style{2.8};
  std::stable_sort(what.begin(), what.end(), [](const Callout& a, const Callout& b) {
    return a.tip.y != b.tip.y ? a.tip.y < b.tip.y : a.tip.x > b.tip.x;
  });
  std::vector<std::string> left_out;
  const auto most = static_cast<std::size_t>(room.height / row);
  for (; what.size() > most; what.pop_back()) left_out.push_back(what.back().words);
  // As near to their tips as they can be, without touching.
  std::vector<double> heights;
  double next = room.y + row;
  for (const Callout& one : what) {
    heights.push_back(std::max(next, one.tip.y));
    next = heights.back() + row;
  }
  double last = room.bottom();
  for (std::size_t k = heights.size(); k-- > 0; last = heights[k] - row) {
    heights[k] = std::min(heights[k], last);
  }
  for (std::size_t k = 0; k < what.size(); ++k) {
    const PaperPoint at{x, heights[k]};
    const std::vector<PaperPoint> leader{{x - 1, at.y - 1}, {x - 4, at.y - 1}, what[k].tip};
    svg.polyline(leader, thin_pen);
    labels.keep_clear(leader);
    svg.circle(what[k].tip, 0.5, Fill::dark, Pen{0});
    const std::string words = fitted(what[k].words, room.right() - x, style);
    svg.text(at, words, style);
    labels.keep_clear(at, words, style);
  }
  return left_out;
}

bool dimension(Svg& svg, Labels& labels, const PaperPoint& from, const PaperPoint& to, double away,
               Length length, Units units) {
  const double reach = std::hypot(to.x - from.x, to.y - from.y);
  if (reach <= 0) return true;
  const PaperPoint along{(to.x - from.x) / reach, (to.y - from.y) / reach};
  const PaperPoint out{along.y, -along.x};  // to the left, y being down
  const auto shifted = [&](const PaperPoint& spot, double by) {
    return PaperPoint{spot.x + out.x * by, spot.y + out.y * by};
  };
  const auto further = [&](const PaperPoint& spot, double by) {
    return PaperPoint{spot.x + along.x * by, spot.y + along.y * by};
  };
  const double gap = std::copysign(std::min(1.0, std::abs(away)), away);
  const PaperPoint a = shifted(from, away), b = shifted(to, away);
  for (const auto& [one, other] : {std::pair{shifted(from, gap), shifted(a, gap)},
                                   {shifted(to, gap), shifted(b, gap)},
                                   {a, b}})
    if (!labels.misses_texts(one, other)) return false;

  TextStyle style = spot_word;
  style.turn = turn_along(from, to);
  // Above the line as it is read.
  const double angle = style.turn * std::acos(-1.0) / 180;
  const PaperPoint up{std::sin(angle), -std::cos(angle)};
  const auto lifted = [&](const PaperPoint& spot, double by) {
    return PaperPoint{spot.x + up.x * by, spot.y + up.y * by};
  };
  const PaperPoint middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
  const double lift = 0.9;
  bool written = false;
  const std::vector<std::string> ways = ways_to_say(length, units);
  for (const std::string& words : ways) {
    const double spare = reach - 1 - text_width(words, style);
    if (written || spare <= 0) continue;
    std::vector<PaperPoint> places;
    for (const double share : {0.0, 0.25, -0.25, 0.45, -0.45}) {
      places.push_back(lifted(further(middle, spare * share), lift));
    }
    written = labels.put(svg, words, style, places);
  }
  // Beside the line, where the shortest stays nearest to it.
  for (auto way = ways.rbegin(); way != ways.rend() && !written; ++way) {
    const std::string& words = *way;
    std::vector<PaperPoint> places;
    const double needs = text_width(words, style), beside = reach / 2 + needs / 2 + 2;
    for (const double by : {lift, lift + 3.5, lift + 7, -lift - 2.4, -lift - 5.9}) {
      if (needs >= reach - 1) places.push_back(lifted(middle, by));
      places.push_back(lifted(further(middle, beside), by));
      places.push_back(lifted(further(middle, -beside), by));
    }
    written = labels.put(svg, words, style, places);
  }
  if (!written) return false;
  // A little past the line.
  svg.line(shifted(from, gap), shifted(a, gap), thin_pen);
  svg.line(shifted(to, gap), shifted(b, gap), thin_pen);
  svg.line(a, b, thin_pen);
  if (reach > 5) {
    svg.arrow(b, a);
    svg.arrow(a, b);
  } else {
    svg.arrow(further(a, -1), a);
    svg.arrow(further(b, 1), b);
  }
  labels.keep_clear({shifted(from, gap), a, b, shifted(to, gap)});
  return true;
}

std::vector<std::string> ways_to_say(Length length, Units units) {
  if (units == Units::metric) return {show(length, units)};
  return {both_units(length, units), show(length, units)};
}

std::string both_units(Length length, Units units) {
  if (units == Units::metric) return show(length, units);
  return fmt::format("{} ({})", show(length, units), show(length, Units::metric));
}

}  // namespace strikeoff::draw
