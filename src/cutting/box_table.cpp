// SPDX-License-Identifier: MIT
#include "cutting/box_table.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace strikeoff {
namespace {

/// Boxes by rising length and falling width.
class Front {
 public:
  explicit Front(std::vector<Box>& boxes) : boxes_(boxes) {}

  /// Adds the box unless another is within it; drops those it is within. Of equal boxes the one
  /// of fewer stages stays, then the first.
  void add(const Box& box) {
    auto at = std::lower_bound(boxes_.begin(), boxes_.end(), box.length,
                               [](const Box& b, std::int64_t length) { return b.length < length; });
    if (at != boxes_.begin() && std::prev(at)->width <= box.width) return;
    if (at != boxes_.end() && at->length == box.length) {
      if (at->width < box.width) return;
      if (at->width == box.width && stages(*at) <= stages(box)) return;
    }
    auto end = at;
    while (end != boxes_.end() && end->width >= box.width) ++end;
    at = boxes_.erase(at, end);
    boxes_.insert(at, box);
  }

 private:
  static std::pair<int, int> stages(const Box& box) {
    return std::minmax(box.stages_x, box.stages_y);
  }
  std::vector<Box>& boxes_;
};

/// Stages, cuts across x first, of a box within a join of boxes beside each other: a box less wide
/// than the join is trimmed after them.
int stages_beside(const Box& box, std::int64_t width) {
  return box.width < width ? 1 + std::max(1, box.stages_y) : std::max(1, box.stages_x);
}

int stages_on_top(const Box& box, std::int64_t length) {
  return box.length < length ? 1 + std::max(1, box.stages_x) : std::max(1, box.stages_y);
}

class TableBuilder {
 public:
  TableBuilder(const GuillotineProblem& problem, int most_stages, long& steps)
      : problem_(problem), most_stages_(most_stages), steps_(steps) {
    for (const SheetStock& stock : problem.stocks) {
      largest_ =
          std::max(largest_, static_cast<double>(stock.length) * static_cast<double>(stock.width));
    }
  }

  std::optional<BoxTable> build(long most_choices) {
    long choices = 1;
    for (const RectangleItem& item : problem_.items) {
      table_.demand.push_back(item.demand);
      table_.worth.push_back(static_cast<int>(choices));
      if (item.demand >= most_choices) return std::nullopt;
      choices *= item.demand + 1;
      if (choices > most_choices) return std::nullopt;
    }
    table_.all = static_cast<int>(choices) - 1;
    table_.boxes.resize(static_cast<std::size_t>(choices));
    std::vector<int> counts(problem_.items.size());
    for (int choice = 1; choice <= table_.all; ++choice) {
      step(counts, table_.demand);
      if (is_possible(choice, counts)) fill(choice, counts);
      if (steps_ < 0) return std::nullopt;
    }
    return std::move(table_);
  }

 private:
  /// Counts on by one.
  static void step(std::vector<int>& counts, const std::vector<int>& most) {
    for (std::size_t i = 0; i < counts.size(); ++i) {
      if (++counts[i] <= most[i]) return;
      counts[i] = 0;
    }
  }

  /// True when a sheet has the area, and holds all but any one of the pieces.
  bool is_possible(int choice, const std::vector<int>& counts) {
    steps_ -= static_cast<long>(counts.size());
    double area = 0;
    int pieces = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
      const RectangleItem& item = problem_.items[i];
      area += static_cast<double>(item.length) * static_cast<double>(item.width) * counts[i];
      pieces += counts[i];
    }
    if (area > largest_ * (1 + 1e-9)) return false;
    if (pieces == 1) return true;
    for (std::size_t i = 0; i < counts.size(); ++i) {
      if (counts[i] > 0 && boxes_of(choice - table_.worth[i]).empty()) return false;
    }
    return true;
  }

  void fill(int choice, const std::vector<int>& counts) {
    std::vector<Box> boxes;
    const auto only = std::find(table_.worth.begin(), table_.worth.end(), choice);
    if (only != table_.worth.end())
      add_piece(boxes, static_cast<std::size_t>(only - table_.worth.begin()));
    // Every part of the choice up to its half; the rest is the other box.
    std::vector<int> part(counts.size());
    int left = 0;
    while (true) {
      for (std::size_t i = 0; i < counts.size(); ++i) {
        left += table_.worth[i];
        if (++part[i] <= counts[i]) break;
        left -= table_.worth[i] * part[i];
        part[i] = 0;
      }
      --steps_;
      if (left == 0 || left > choice - left || steps_ < 0) break;
      if (!boxes_of(left).empty() && !boxes_of(choice - left).empty()) {
        join(boxes, left, choice - left);
      }
    }
    table_.boxes[static_cast<std::size_t>(choice)] = std::move(boxes);
  }

  void add_piece(std::vector<Box>& boxes, std::size_t i) {
    const RectangleItem& item = problem_.items[i];
    Box box;
    box.length = item.length;
    box.width = item.width;
    add(boxes, box);
    if (!item.may_turn) return;
    std::swap(box.length, box.width);
    box.turned = true;
    add(boxes, box);
  }

  /// For each width either side can have, the shortest boxes of at most that width side by side;
  /// and likewise on top. No other join can be undominated.
  void join(std::vector<Box>& boxes, int left, int right) {
    const std::vector<Box>&a = boxes_of(left), &b = boxes_of(right);
    steps_ -= 2 * static_cast<long>(a.size() + b.size());
    // Side by side: lengths rise as widths fall.
    for (std::size_t i = 0, k = 0; i < a.size() && k < b.size();) {
      add(boxes, beside(left, i, right, k));
      // The wider of the two decides: only a narrower one of it makes the join narrower.
      const std::int64_t wide_a = a[i].width, wide_b = b[k].width;
      if (wide_a >= wide_b) ++i;
      if (wide_b >= wide_a) ++k;
    }
    for (std::size_t i = a.size(), k = b.size(); i > 0 && k > 0;) {
      add(boxes, on_top(left, i - 1, right, k - 1));
      const std::int64_t long_a = a[i - 1].length, long_b = b[k - 1].length;
      if (long_a >= long_b) --i;
      if (long_b >= long_a) --k;
    }
  }

  Box beside(int left, std::size_t i, int right, std::size_t k) const {
    const Box &a = boxes_of(left)[i], &b = boxes_of(right)[k];
    Box box;
    box.length = a.length + b.length;
    box.width = std::max(a.width, b.width);
    set_parts(box, left, i, right, k);
    box.beside = true;
    box.stages_x = std::max(stages_beside(a, box.width), stages_beside(b, box.width));
    box.stages_y = 1 + box.stages_x;
    return box;
  }

  Box on_top(int left, std::size_t i, int right, std::size_t k) const {
    const Box &a = boxes_of(left)[i], &b = boxes_of(right)[k];
    Box box;
    box.length = std::max(a.length, b.length);
    box.width = a.width + b.width;
    set_parts(box, left, i, right, k);
    box.stages_y = std::max(stages_on_top(a, box.length), stages_on_top(b, box.length));
    box.stages_x = 1 + box.stages_y;
    return box;
  }

  static void set_parts(Box& box, int left, std::size_t i, int right, std::size_t k) {
    box.left = left;
    box.left_box = static_cast<int>(i);
    box.right = right;
    box.right_box = static_cast<int>(k);
  }

  void add(std::vector<Box>& boxes, const Box& box) const {
    if (std::min(box.stages_x, box.stages_y) > most_stages_) return;
    const bool held =
        std::any_of(problem_.stocks.begin(), problem_.stocks.end(), [&](const SheetStock& stock) {
          return box.length <= stock.length && box.width <= stock.width;
        });
    if (held) Front(boxes).add(box);
  }

  [[nodiscard]] const std::vector<Box>& boxes_of(int choice) const {
    return table_.boxes[static_cast<std::size_t>(choice)];
  }

  const GuillotineProblem& problem_;
  int most_stages_;
  long& steps_;
  double largest_ = 0;
  BoxTable table_;
};

}  // namespace

Seat seat_of(const Box& box, const SheetStock& sheet) {
  const std::int64_t right = sheet.length - box.length, above = sheet.width - box.width;
  const auto larger = [](std::int64_t a, std::int64_t b, std::int64_t c, std::int64_t d) {
    return std::max(static_cast<double>(a) * static_cast<double>(b),
                    static_cast<double>(c) * static_cast<double>(d));
  };
  // Cut off at the right over the whole width, then above the box; or the other way round.
  Seat x, y;
  x.rest = larger(right, sheet.width, box.length, above);
  x.stages = above > 0 ? 1 + std::max(1, box.stages_y) : std::max(int{right > 0}, box.stages_x);
  y.rest = larger(above, sheet.length, box.width, right);
  y.stages = right > 0 ? 1 + std::max(1, box.stages_x) : std::max(int{above > 0}, box.stages_y);
  const auto better = [](const Seat& a, const Seat& b) {
    return std::make_tuple(a.stages > 3, -a.rest, a.stages) <
           std::make_tuple(b.stages > 3, -b.rest, b.stages);
  };
  return better(y, x) ? y : x;
}

std::optional<BoxTable> box_table(const GuillotineProblem& problem, int most_stages,
                                  long most_choices, long& steps) {
  return TableBuilder(problem, most_stages, steps).build(most_choices);
}

}  // namespace strikeoff
