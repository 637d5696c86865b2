// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

#include "core/ascii.h"
#include "core/format.h"
#include "core/vec.h"
#include "job/read_shape.h"

namespace strikeoff {
namespace {

/// A walk round a base with a tape must come back this near to where it began, or within this
/// share of its length, whichever is more. Assumption; 1:500 is a taped traverse of low order.
constexpr Length closing_allowed = Length::mm(3);
constexpr double closing_share = 1.0 / 500;

constexpr auto how_to_walk =
    R"(write "E 76 in": E is right, N to the back; also NE, SE, SW, NW, and "N 30 E 76 in")";

constexpr OutlineWords run_words{"run",
                                 "walk round the base so that no run crosses or touches another",
                                 "make the two runs that meet there one"};

/// Unit vector: x is east, y is north.
struct Direction {
  double x, y;
};

/// Between two neighbouring axes.
constexpr double diagonal = std::numbers::sqrt2 / 2;
struct Word {
  std::string_view name;
  Direction direction;
};
constexpr std::array<Word, 8> compass{{{"N", {0, 1}},
                                       {"E", {1, 0}},
                                       {"S", {0, -1}},
                                       {"W", {-1, 0}},
                                       {"NE", {diagonal, diagonal}},
                                       {"SE", {diagonal, -diagonal}},
                                       {"SW", {-diagonal, -diagonal}},
                                       {"NW", {-diagonal, diagonal}}}};

struct Run {
  Direction direction{};
  Length length;
};

/// Reads a run's text from left to right.
class RunText {
 public:
  explicit RunText(std::string_view text) : rest_(text) { skip_spaces(); }

  /// The letters that follow, in capitals.
  std::string take_word() {
    std::string word;
    while (!rest_.empty() && is_letter(rest_.front())) {
      word += static_cast<char>(rest_.front() & ~0x20);
      rest_.remove_prefix(1);
    }
    skip_spaces();
    return word;
  }

  /// "30", "30.5" and "30°", where that and a direction of one letter follow; nothing is taken
  /// otherwise.
  std::optional<std::pair<double, char>> take_bearing() {
    RunText ahead = *this;
    double degrees = 0;
    const char *begin = rest_.data(), *end = begin + rest_.size();
    const auto [stop, error] = std::from_chars(begin, end, degrees, std::chars_format::fixed);
    if (error != std::errc{}) return std::nullopt;
    ahead.rest_.remove_prefix(static_cast<std::size_t>(stop - begin));
    constexpr std::string_view sign = "\u00B0";
    if (ahead.rest_.starts_with(sign)) ahead.rest_.remove_prefix(sign.size());
    ahead.skip_spaces();
    const std::string word = ahead.take_word();
    if (word.size() != 1 || std::string_view("NESW").find(word[0]) == std::string_view::npos) {
      return std::nullopt;
    }
    *this = ahead;
    return std::pair{degrees, word[0]};
  }

  [[nodiscard]] std::string_view rest() const { return rest_; }

 private:
  void skip_spaces() {
    while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
  }
  std::string_view rest_;
};

/// "N 30 E": 30 degrees from north towards east.
Parsed<Direction> direction_of(char from, double degrees, char towards, const std::string& text) {
  const bool from_pole = from == 'N' || from == 'S', to_pole = towards == 'N' || towards == 'S';
  if (degrees < 0 || degrees > 90 || from_pole == to_pole) {
    return TextError{"bad-bearing", fmt::format("cannot read the bearing in {}", in_quotes(text)),
                     "a bearing has at most 90 degrees, from N or S towards E or W: \"N 30 E 76 "
                     "in\" runs 30 degrees right of straight back"};
  }
  if (!from_pole) {
    return TextError{"bad-bearing",
                     fmt::format("the bearing in {} does not begin at N or S", in_quotes(text)),
                     fmt::format("write \"{} {} {}\" and the length", towards,
                                 show_number(90 - degrees, 4), from)};
  }
  const double angle = degrees * std::numbers::pi / 180;
  const double along = degrees == 90 ? 0 : std::cos(angle);
  const double across = degrees == 90 ? 1 : std::sin(angle);
  return Direction{towards == 'E' ? across : -across, from == 'N' ? along : -along};
}

Parsed<Direction> take_direction(RunText& run, const std::string& text) {
  const std::string word = run.take_word();
  if (word.size() == 1) {
    if (const auto bearing = run.take_bearing()) {
      return direction_of(word[0], bearing->first, bearing->second, text);
    }
  }
  const auto found = std::find_if(compass.begin(), compass.end(),
                                  [&](const Word& known) { return known.name == word; });
  if (found != compass.end()) return found->direction;
  return TextError{"bad-direction",
                   fmt::format("{} does not begin with a direction", in_quotes(text)), how_to_walk};
}

Parsed<Run> parse_run(const std::string& text) {
  RunText run(text);
  const auto direction = take_direction(run, text);
  if (const auto* error = std::get_if<TextError>(&direction)) return *error;
  if (run.rest().empty()) {
    return TextError{"missing-length", fmt::format("{} does not say how far", in_quotes(text)),
                     "write the length after the direction, as in \"E 76 in\""};
  }
  const auto length = parse_quantity<Length>(run.rest());
  if (const auto* error = std::get_if<TextError>(&length)) return *error;
  const Run found{std::get<Direction>(direction), std::get<Length>(length)};
  if (found.length < any_length.least || found.length > any_length.most) {
    return TextError{
        "out-of-range",
        fmt::format("the length in {} must be between {}", in_quotes(text), any_length.words),
        found.length < Length{} ? "to go back, turn the direction round" : ""};
  }
  return found;
}

/// "2 in east and 1 in north".
std::string offset_words(const Point& offset, Units units) {
  std::string text;
  const auto add = [&](Length by, const char* positive, const char* negative) {
    const std::string shown = show(by < Length{} ? -by : by, units);
    if (shown == show(Length{}, units)) return;
    text += fmt::format("{}{} {}", text.empty() ? "" : " and ", shown,
                        by < Length{} ? negative : positive);
  };
  add(offset.x, "east", "west");
  add(offset.y, "north", "south");
  return text;
}

/// The corners of a walk, its misclosure spread by the compass rule: each corner moves back by the
/// misclosure times the share of the way walked so far (N. Bowditch, in The Analyst no. 4, 1808,
/// from memory). Empty after reporting that it misses its start by too much.
Polygon walked(Context& c, const Node& node, const std::vector<Run>& runs, Base& base) {
  Polygon corners;
  std::vector<Length> way;  // walked before each corner
  Point at;
  Length whole;
  for (const Run& run : runs) {
    corners.push_back(at);
    way.push_back(whole);
    at = {at.x + run.length * run.direction.x, at.y + run.length * run.direction.y};
    whole += run.length;
  }
  const Length by = distance({}, at), allowed = std::max(closing_allowed, whole * closing_share);
  base.closing = Misfit{by, allowed};
  if (by > allowed) {
    c.reader.error(node.pointer,
                   {"walk-not-closed",
                    fmt::format("this walk ends {} of where it began; {} is allowed",
                                offset_words(at, c.units), show(allowed, c.units)),
                    "measure the runs again, the longest first"},
                   Reader::Mark::key);
    return {};
  }
  // The walk closes, and only arithmetic is to blame: its runs stay as they are.
  if (by <= arithmetic) return corners;
  for (std::size_t k = 0; k < corners.size(); ++k) {
    const double share = way[k] / whole;
    corners[k] = {corners[k].x - at.x * share, corners[k].y - at.y * share};
  }
  return corners;
}

}  // namespace

void read_runs(Context& c, const Node& node, Base& base) {
  const auto entries = read_list(c.reader, node, "runs");
  if (!entries) return;
  std::vector<Run> runs;
  for (const Node& entry : *entries) {
    const auto text = read_text(c.reader, entry);
    if (!text) continue;
    const auto run = parse_run(*text);
    if (const auto* error = std::get_if<TextError>(&run)) {
      c.reader.error(entry.pointer, *error);
    } else {
      runs.push_back(std::get<Run>(run));
    }
  }
  if (runs.size() != entries->size()) return;
  if (runs.size() < 3) {
    c.reader.error(node.pointer, {"too-few-runs", "a walk round a base has at least three runs",
                                  "the last run leads back to where the first began"});
    return;
  }
  const Polygon corners = walked(c, node, runs, base);
  if (!corners.empty() && is_outline(c.reader, node, corners, run_words)) {
    set_outline(base, corners);
  }
}

}  // namespace strikeoff
