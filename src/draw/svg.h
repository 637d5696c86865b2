// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff::draw {

/// A place on the paper: millimetres from its upper left corner, x to the right, y down.
struct PaperPoint {
  double x = 0, y = 0;
  bool operator==(const PaperPoint&) const = default;
};

/// A rectangle on the paper.
struct PaperBox {
  double x = 0, y = 0, width = 0, height = 0;
  [[nodiscard]] double right() const { return x + width; }
  [[nodiscard]] double bottom() const { return y + height; }
  bool operator==(const PaperBox&) const = default;
};
[[nodiscard]] bool holds(const PaperBox& outer, const PaperBox& inner);

/// Four corners in order round, turned as they may be.
using Quad = std::array<PaperPoint, 4>;
/// True where the two have more than a border in common (separating axes).
[[nodiscard]] bool overlap(const Quad& a, const Quad& b);
[[nodiscard]] Quad corners_of(const PaperBox& box);

/// A line of a drawing: width in mm of paper, dashes in mm (empty: solid). Line widths are those of
/// ISO 128-2's series 0.18, 0.25, 0.35, 0.5, 0.7 (from memory).
struct Pen {
  double width = 0.25;
  std::string_view dashes = {};
  std::string_view colour = "#000";
};
inline constexpr Pen outline_pen{0.5}, thin_pen{0.18}, usual_pen{0.25}, hidden_pen{0.25, "2 1"},
    wet_edge_pen{0.7, "3 1.2"};

/// What a face is filled with. Materials differ by their pattern, so that they do without colour.
enum class Fill { none, paper, concrete, panel, wood, foam, ground, waste, keep, dark, pale };

enum class Anchor { start, middle, end };

struct TextStyle {
  double size = 3;  // mm, of the letters' em
  Anchor anchor = Anchor::start;
  bool bold = false;
  double turn = 0;    // degrees, clockwise, about the spot
  bool halo = false;  // on white, where it may lie over lines
};
/// A word in a drawing, about its spot.
inline constexpr TextStyle spot_word{2.8, Anchor::middle, false, 0, true};

/// How wide a text stands in mm at most: a sans-serif face, a little wide on purpose, for the
/// reader's own font is not known.
[[nodiscard]] double text_width(std::string_view text, const TextStyle& style);
/// What the text covers, its turn counted.
[[nodiscard]] Quad text_quad(const PaperPoint& at, std::string_view text, const TextStyle& style);
/// The text, or as much of its beginning as fits with "…" after it.
[[nodiscard]] std::string fitted(std::string_view text, double width, const TextStyle& style);

/// An SVG 1.1 file, written in mm. Every text that goes in is escaped here and nowhere else; a
/// number has at most three decimals.
class Svg {
 public:
  /// `id` begins every id inside, so that several drawings can stand in one page.
  Svg(std::string id, double width, double height, std::string_view title,
      std::string_view description);

  void line(const PaperPoint& from, const PaperPoint& to, const Pen& pen);
  void polyline(const std::vector<PaperPoint>& spots, const Pen& pen);
  void polygon(const std::vector<PaperPoint>& spots, Fill fill, const Pen& pen);
  void box(const PaperBox& box, Fill fill, const Pen& pen);
  void circle(const PaperPoint& centre, double radius, Fill fill, const Pen& pen);
  void text(const PaperPoint& at, std::string_view text, const TextStyle& style = {});
  /// A small filled triangle with its tip at `tip`, pointing from `from`.
  void arrow(const PaperPoint& from, const PaperPoint& tip);
  /// Everything until `end_group` is named, for tests and for scripts: <g data-what="…">.
  void begin_group(std::string_view what);
  void end_group();

  [[nodiscard]] std::string str() const;

 private:
  [[nodiscard]] std::string paint(Fill fill) const;
  std::string id_;
  double width_, height_;
  std::string head_, body_;
};

}  // namespace strikeoff::draw
