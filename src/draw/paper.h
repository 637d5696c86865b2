// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "draw/svg.h"
#include "strikeoff/geometry.h"
#include "strikeoff/job.h"

namespace strikeoff::draw {

/// A common drawing scale: so many millimetres of the slab to one of paper, 0 for none.
struct Scale {
  int denominator = 0;
  std::string words;  // "1:10", "1:12 (1 in is 1 ft)"
};

/// The largest common scale at which this much fits the room: metric ones of ISO 5455 (from
/// memory), US ones of so much of an inch to the foot; past the last, a whole number.
[[nodiscard]] Scale scale_for(Length width, Length height, const PaperBox& room, Units units);

/// How a slab lies on the paper: its frame's y runs up the paper.
struct View {
  Scale scale;
  PaperPoint zero;  // where (0, 0) of the frame is
  [[nodiscard]] PaperPoint operator()(const Point& point) const {
    return {zero.x + (*this)(point.x), zero.y - (*this)(point.y)};
  }
  /// Millimetres of paper.
  [[nodiscard]] double operator()(Length length) const {
    return length.in_mm() / scale.denominator;
  }
  [[nodiscard]] std::vector<PaperPoint> operator()(const Polygon& polygon) const;
  [[nodiscard]] PaperBox operator()(const Rectangle& rectangle) const;
};
/// That this rectangle of the frame stands in the middle of the room, as large as a common scale
/// lets it.
[[nodiscard]] View view_of(const Rectangle& what, const PaperBox& room, Units units);

/// One sheet of paper: A4 in metric jobs, US Letter in US ones, lying. A frame, a title, room for
/// the drawing, and below it scale bar and legend.
class Paper {
 public:
  /// `id` is the drawing's file name without its ending; `job` stands small beside the title.
  Paper(std::string id, const std::string& title, const std::string& job, Units units,
        const std::string& description);

  Svg svg;
  [[nodiscard]] PaperBox room() const { return room_; }
  /// A sample and its words, below the drawing; up to six of at most 48 mm of words each.
  void legend(Fill fill, const Pen& pen, const std::string& words);
  /// A line across the foot, under the legend; a second stands above the first, and a third.
  void note(const std::string& words);
  /// Sentences there, as many to a line as fit; three lines in all.
  void notes(const std::vector<std::string>& sentences);
  void scale_bar(const Scale& scale);

 private:
  Units units_;
  double width_, height_;
  PaperBox room_;
  int legends_ = 0, notes_ = 0;
};

/// Texts that never lie on each other: each asks for a place that is still free.
class Labels {
 public:
  explicit Labels(const PaperBox& room) : room_(room) {}
  void keep_clear(const PaperBox& box);
  void keep_clear(const std::vector<PaperPoint>& line);
  void keep_clear(const PaperPoint& at, const std::string& text, const TextStyle& style);
  [[nodiscard]] bool is_free(const Quad& quad) const;
  /// That a line from here to there strikes out no text.
  [[nodiscard]] bool misses_texts(const PaperPoint& from, const PaperPoint& to) const;
  /// Writes the text at the first of these places where it is free; false when none is.
  [[nodiscard]] bool put(Svg& svg, const std::string& text, const TextStyle& style,
                         const std::vector<PaperPoint>& places);

 private:
  PaperBox room_;
  std::vector<Quad> taken_, texts_;
};

/// How a text along a line is turned: read from below or from the right, as ISO 129-1 asks (from
/// memory); a line that is upright but for a hair counts as upright.
[[nodiscard]] double turn_along(const PaperPoint& from, const PaperPoint& to);

/// Words for things that have no room for them.
struct Callout {
  PaperPoint tip;  // in the thing
  std::string words;
};
/// Writes them in one column that begins at x, between top and bottom, in the order of their tips
/// from above, each with a line to its tip. As many as fit; the words of the others come back.
[[nodiscard]] std::vector<std::string> callouts(Svg& svg, Labels& labels, double x,
                                                const PaperBox& room, std::vector<Callout> what);

/// A dimension from `from` to `to`, drawn `away` mm to the left of that direction (negative: to
/// the right), with extension lines, arrows and its length in as many units as there is room for
/// between the arrows; beside them, where there is none. Its place is kept clear of others. False,
/// and nothing is drawn, where there is no place that leaves all other texts alone.
[[nodiscard]] bool dimension(Svg& svg, Labels& labels, const PaperPoint& from, const PaperPoint& to,
                             double away, Length length, Units units);

/// "78 in (1981 mm)", "1930 mm": both where the job is in US units.
[[nodiscard]] std::string both_units(Length length, Units units);
/// How a length may be said, the fullest first: in both units, in the job's.
[[nodiscard]] std::vector<std::string> ways_to_say(Length length, Units units);

}  // namespace strikeoff::draw
