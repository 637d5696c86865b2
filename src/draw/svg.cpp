// SPDX-License-Identifier: MIT
#include "draw/svg.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "core/markup.h"
#include "core/unicode.h"

namespace strikeoff::draw {
namespace {

std::string number(double value) {
  return show_number(value, 3);
}

std::string points(const std::vector<PaperPoint>& spots) {
  std::string text;
  for (const PaperPoint& spot : spots) {
    if (!text.empty()) text += ' ';
    text += number(spot.x) + ',' + number(spot.y);
  }
  return text;
}

std::string stroke(const Pen& pen) {
  if (pen.width <= 0) return R"( stroke="none")";
  std::string text =
      fmt::format(R"( stroke="{}" stroke-width="{}")", pen.colour, number(pen.width));
  if (!pen.dashes.empty()) text += fmt::format(R"( stroke-dasharray="{}")", pen.dashes);
  return text;
}

/// Share of the em, of a common sans-serif face and up: capitals and wide letters more, narrow ones
/// less, ideographs a whole em.
double letter_width(char32_t letter) {
  if (letter >= 0x1100) return letter < 0x2000 || letter >= 0x2E80 ? 1.0 : 0.75;
  if (std::u32string_view(U"iljI.,:;'|!()[]").find(letter) != std::u32string_view::npos)
    return 0.42;
  if (letter == U' ' || letter == U't' || letter == U'f' || letter == U'r') return 0.43;
  if (letter == U'm' || letter == U'w' || letter == U'M' || letter == U'W' || letter == U'%' ||
      letter == U'@') {
    return 1.0;
  }
  return letter < U'a' || letter > U'z' ? 0.72 : 0.64;
}

/// The patterns, in mm of paper. Strokes, not colours, tell materials apart.
constexpr std::string_view patterns = R"svg(<defs>
<pattern id="{0}-concrete" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M1 1.2l.9.5-.8.5zM4 4l.8.2-.3.7z" fill="none" stroke="#555" stroke-width=".12"/><circle cx="3.4" cy="1.6" r=".12" fill="#555"/><circle cx="1.7" cy="4.4" r=".12" fill="#555"/><circle cx="5.2" cy="2.6" r=".1" fill="#555"/></pattern>
<pattern id="{0}-panel" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V2" stroke="#555" stroke-width=".18"/></pattern>
<pattern id="{0}-wood" width="9" height="2.4" patternUnits="userSpaceOnUse"><path d="M0 .6q2.2 .5 4.5 0t4.5 0M0 1.8q2.2 -.4 4.5 0t4.5 0" fill="none" stroke="#777" stroke-width=".12"/></pattern>
<pattern id="{0}-foam" width="1.6" height="1.6" patternUnits="userSpaceOnUse"><path d="M0 0L1.6 1.6M1.6 0L0 1.6" stroke="#777" stroke-width=".12"/></pattern>
<pattern id="{0}-ground" width="4" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 .5H2.6M1.4 1.5H4" stroke="#555" stroke-width=".15"/></pattern>
<pattern id="{0}-waste" width="1.5" height="1.5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V1.5" stroke="#888" stroke-width=".12"/></pattern>
<pattern id="{0}-keep" width="3" height="3" patternUnits="userSpaceOnUse"><circle cx=".75" cy=".75" r=".2" fill="#555"/><circle cx="2.25" cy="2.25" r=".2" fill="#555"/></pattern>
</defs>
)svg";

}  // namespace

Quad corners_of(const PaperBox& box) {
  return {PaperPoint{box.x, box.y}, PaperPoint{box.right(), box.y},
          PaperPoint{box.right(), box.bottom()}, PaperPoint{box.x, box.bottom()}};
}

bool overlap(const Quad& a, const Quad& b) {
  const auto parted = [](const Quad& one, const Quad& other, double across_x, double across_y) {
    const auto reach = [&](const Quad& quad) {
      double least = 1e18, most = -1e18;
      for (const PaperPoint& spot : quad) {
        const double at = spot.x * across_x + spot.y * across_y;
        least = std::min(least, at);
        most = std::max(most, at);
      }
      return std::pair{least, most};
    };
    const auto first = reach(one), second = reach(other);
    return first.second <= second.first || second.second <= first.first;
  };
  if (parted(a, b, 1, 0) || parted(a, b, 0, 1)) return false;  // nearly all are, and soon told
  for (const Quad* quad : {&a, &b}) {
    for (std::size_t k = 0; k < 4; ++k) {
      const PaperPoint &from = (*quad)[k], &to = (*quad)[(k + 1) % 4];
      if (parted(a, b, to.y - from.y, from.x - to.x)) return false;
    }
  }
  return true;
}

bool holds(const PaperBox& outer, const PaperBox& inner) {
  return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() &&
         inner.bottom() <= outer.bottom();
}

double text_width(std::string_view text, const TextStyle& style) {
  double ems = 0;
  for (const char32_t letter : code_points(text)) ems += letter_width(letter);
  return ems * style.size * (style.bold ? 1.08 : 1.0);
}

Quad text_quad(const PaperPoint& at, std::string_view text, const TextStyle& style) {
  const double width = text_width(text, style);
  const double left = style.anchor == Anchor::start    ? 0
                      : style.anchor == Anchor::middle ? -width / 2
                                                       : -width;
  const double up = -0.95 * style.size, down = 0.27 * style.size;
  const double angle = style.turn * std::acos(-1.0) / 180;
  const auto turned = [&](double x, double y) {
    return PaperPoint{at.x + x * std::cos(angle) - y * std::sin(angle),
                      at.y + x * std::sin(angle) + y * std::cos(angle)};
  };
  return {turned(left, up), turned(left + width, up), turned(left + width, down),
          turned(left, down)};
}

std::string fitted(std::string_view text, double width, const TextStyle& style) {
  if (text_width(text, style) <= width) return std::string(text);
  const std::u32string letters = code_points(text);
  std::size_t kept = letters.size();
  std::string shorter;
  do {
    shorter = utf8(std::u32string_view(letters).substr(0, --kept)) + "…";
  } while (kept > 0 && text_width(shorter, style) > width);
  return shorter;
}

Svg::Svg(std::string id, double width, double height, std::string_view title,
         std::string_view description)
    : id_(std::move(id)), width_(width), height_(height) {
  head_ = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 "
      "{0} "
      "{1}\" role=\"img\" font-family=\"sans-serif\" aria-labelledby=\"{2}-title {2}-desc\">\n"
      "<title id=\"{2}-title\">{3}</title>\n<desc id=\"{2}-desc\">{4}</desc>\n",
      number(width_), number(height_), id_, markup(title), markup(description));
  head_ += fmt::format(fmt::runtime(patterns), id_);
}

void Svg::line(const PaperPoint& from, const PaperPoint& to, const Pen& pen) {
  body_ += fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n", number(from.x),
                       number(from.y), number(to.x), number(to.y), stroke(pen));
}

void Svg::polyline(const std::vector<PaperPoint>& spots, const Pen& pen) {
  body_ += fmt::format("<polyline points=\"{}\" fill=\"none\"{}/>\n", points(spots), stroke(pen));
}

void Svg::polygon(const std::vector<PaperPoint>& spots, Fill fill, const Pen& pen) {
  body_ += fmt::format("<polygon points=\"{}\"{}{}/>\n", points(spots), paint(fill), stroke(pen));
}

void Svg::box(const PaperBox& box, Fill fill, const Pen& pen) {
  body_ +=
      fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}{}/>\n", number(box.x),
                  number(box.y), number(box.width), number(box.height), paint(fill), stroke(pen));
}

void Svg::circle(const PaperPoint& centre, double radius, Fill fill, const Pen& pen) {
  body_ += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}{}/>\n", number(centre.x),
                       number(centre.y), number(radius), paint(fill), stroke(pen));
}

void Svg::text(const PaperPoint& at, std::string_view text, const TextStyle& style) {
  std::string attributes = fmt::format("x=\"{}\" y=\"{}\" font-size=\"{}\"", number(at.x),
                                       number(at.y), number(style.size));
  if (style.anchor == Anchor::middle) attributes += " text-anchor=\"middle\"";
  if (style.anchor == Anchor::end) attributes += " text-anchor=\"end\"";
  if (style.bold) attributes += " font-weight=\"bold\"";
  if (style.turn != 0) {
    attributes += fmt::format(" transform=\"rotate({} {} {})\"", number(style.turn), number(at.x),
                              number(at.y));
  }
  if (style.halo) {
    attributes += " stroke=\"#fff\" stroke-width=\"0.8\" paint-order=\"stroke\"";
  }
  body_ += fmt::format("<text {}>{}</text>\n", attributes, markup(text));
}

void Svg::arrow(const PaperPoint& from, const PaperPoint& tip) {
  const double length = std::hypot(tip.x - from.x, tip.y - from.y);
  if (length <= 0) return;
  const PaperPoint along{(tip.x - from.x) / length, (tip.y - from.y) / length};
  const PaperPoint back{tip.x - 2 * along.x, tip.y - 2 * along.y};
  polygon({tip,
           {back.x - 0.5 * along.y, back.y + 0.5 * along.x},
           {back.x + 0.5 * along.y, back.y - 0.5 * along.x}},
          Fill::dark, Pen{0});
}

void Svg::begin_group(std::string_view what) {
  body_ += fmt::format("<g data-what=\"{}\">\n", markup(what));
}

void Svg::end_group() {
  body_ += "</g>\n";
}

std::string Svg::str() const {
  return head_ + body_ + "</svg>\n";
}

std::string Svg::paint(Fill fill) const {
  const auto pattern = [&](std::string_view name) {
    return fmt::format(" fill=\"url(#{}-{})\"", id_, name);
  };
  switch (fill) {
    case Fill::none:
      return R"( fill="none")";
    case Fill::paper:
      return R"( fill="#fff")";
    case Fill::dark:
      return R"( fill="#000")";
    case Fill::pale:
      return R"( fill="#eee")";
    case Fill::concrete:
      return pattern("concrete");
    case Fill::panel:
      return pattern("panel");
    case Fill::wood:
      return pattern("wood");
    case Fill::foam:
      return pattern("foam");
    case Fill::ground:
      return pattern("ground");
    case Fill::waste:
      return pattern("waste");
    case Fill::keep:
      return pattern("keep");
  }
  return "";
}

}  // namespace strikeoff::draw
