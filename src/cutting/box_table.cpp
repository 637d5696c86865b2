// SPDX-License-Identifier: MIT
#include "cutting/box_table.h"

#include <algorithm>
#include <utility>

namespace strikeoff {
namespace {

using Boxes = std::vector<Box>;

/// Adds the box unless another is within it; drops those it is within. Of equal boxes the first
/// stays.
void add_to_front(Boxes& front, const Box& box) {
  const auto [length, width] = box.size;
  auto at = std::lower_bound(front.begin(), front.end(), length,
                             [](const Box& b, std::int64_t x) { return b.size[0] < x; });
  if (at != front.begin() && std::prev(at)->size[1] <= width) return;
  if (at != front.end() && at->size[0] == length && at->size[1] <= width) return;
  auto end = at;
  while (end != front.end() && end->size[1] >= width) ++end;
  front.insert(front.erase(at, end), box);
}

/// How far the piece reaches along an axis when it is `across` wide.
struct Laid {
  std::int64_t along = 0;
  bool turned = false;
};

std::optional<Laid> lay(const RectangleItem& item, std::size_t axis, std::int64_t across) {
  const std::array<std::int64_t, 2> size = {item.length, item.width};
  if (size[1 - axis] == across) return Laid{size[axis], false};
  if (item.may_turn && size[axis] == across) return Laid{size[1 - axis], true};
  return std::nullopt;
}

class TableBuilder {
 public:
  TableBuilder(const GuillotineProblem& problem, ChoiceCode code, long& steps)
      : problem_(problem), steps_(steps) {
    table_.code = std::move(code);
    for (const SheetStock& stock : problem.stocks) {
      if (stock.available > 0) largest_ = std::max(largest_, area(stock.length, stock.width));
    }
  }

  std::optional<BoxTable> build(std::size_t most_choices) {
    for (std::size_t i = 0; i < code().items(); ++i) {
      if (problem_.items[i].demand > 0) add_choice(code().one(i));
    }
    for (std::size_t c = 0; c < table_.choices.size(); ++c) {
      const Choice counts = table_.choices[c].counts;
      for (std::size_t i = code().top(counts); i < code().items(); ++i) {
        if (code().count(counts, i) == problem_.items[i].demand) continue;
        if (is_possible(counts + code().one(i))) add_choice(counts + code().one(i));
        if (steps_ < 0 || table_.choices.size() > most_choices) return std::nullopt;
      }
    }
    return std::move(table_);
  }

 private:
  static double area(std::int64_t length, std::int64_t width) {
    return static_cast<double>(length) * static_cast<double>(width);
  }
  [[nodiscard]] const ChoiceCode& code() const { return table_.code; }

  /// True when a sheet has the area, and sheets hold all but any one of the pieces.
  bool is_possible(Choice counts) {
    steps_ -= static_cast<long>(code().items());
    double sum = 0;
    for (std::size_t i = 0; i < code().items(); ++i) {
      const int count = code().count(counts, i);
      if (count == 0) continue;
      sum += area(problem_.items[i].length, problem_.items[i].width) * count;
      const Choice less = counts - code().one(i);
      if (table_.index.find(less) == table_.index.end()) return false;
    }
    return sum <= largest_ * (1 + 1e-9);
  }

  void add_choice(Choice counts) {
    const int own = static_cast<int>(table_.choices.size());
    table_.choices.push_back({counts, {}});
    table_.index[counts] = own;
    ChoiceBoxes& boxes = table_.choices.back();
    for (const std::size_t axis : {0U, 1U}) add_bars(boxes.fronts[0][axis], counts, axis);
    find_splits(counts);
    for (const std::size_t stage : {1U, 2U}) {
      for (const std::size_t axis : {0U, 1U}) {
        for (const auto& [part, rest] : splits_) join(boxes, stage, axis, part, rest);
      }
    }
    if (!boxes.fronts[2][0].empty() || !boxes.fronts[2][1].empty()) return;
    table_.index.erase(counts);
    table_.choices.pop_back();
  }

  /// Pieces end to end, all of one width.
  void add_bars(Boxes& front, Choice counts, std::size_t axis) const {
    const RectangleItem& top = problem_.items[code().top(counts)];
    for (const std::int64_t across : {top.length, top.width}) {
      Box bar;
      bar.size[1 - axis] = across;
      bool possible = true;
      for (std::size_t i = 0; i < code().items() && possible; ++i) {
        const int count = code().count(counts, i);
        if (count == 0) continue;
        const auto laid = lay(problem_.items[i], axis, across);
        possible = laid.has_value();
        if (laid) bar.size[axis] += laid->along * count;
      }
      if (possible && is_held(bar)) add_to_front(front, bar);
    }
  }

  /// Every part of the choice that has a piece of its last item, and what it leaves.
  void find_splits(Choice counts) {
    splits_.clear();
    std::vector<Choice> parts{0};
    const std::size_t top = code().top(counts);
    for (std::size_t i = 0; i <= top; ++i) {
      const int count = code().count(counts, i);
      const std::size_t shorter = parts.size();
      for (int n = 1; n <= count; ++n) {
        for (std::size_t p = 0; p < shorter; ++p) {
          parts.push_back(parts[p] + code().one(i) * static_cast<Choice>(n));
        }
      }
      if (i == top)
        parts.erase(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(shorter));
    }
    steps_ -= static_cast<long>(parts.size());
    for (const Choice part : parts) {
      const Choice rest = counts - part;
      splits_.emplace_back(table_.index.at(part), rest == 0 ? -1 : table_.index.at(rest));
    }
  }

  /// For each size across that either side can have, the shortest boxes of at most that: no other
  /// join can be undominated.
  void join(ChoiceBoxes& boxes, std::size_t stage, std::size_t axis, int part, int rest) {
    const Boxes& a = choice(part).fronts[stage - 1][1 - axis];
    if (a.empty()) return;
    Boxes& front = boxes.fronts[stage][axis];
    if (rest < 0) {
      for (std::size_t i = 0; i < a.size(); ++i) {
        add_to_front(front, {a[i].size, part, static_cast<int>(i), -1, 0});
      }
      return;
    }
    const Boxes& b = choice(rest).fronts[stage][axis];
    if (b.empty()) return;
    steps_ -= static_cast<long>(a.size() + b.size());
    // The widest across first, which is the front's start or its end.
    const auto at = [axis](const Boxes& from, std::size_t n) {
      return axis == 0 ? n : from.size() - 1 - n;
    };
    for (std::size_t i = 0, k = 0; i < a.size() && k < b.size();) {
      const std::size_t in_a = at(a, i), in_b = at(b, k);
      const std::int64_t wide_a = a[in_a].size[1 - axis], wide_b = b[in_b].size[1 - axis];
      Box box{{}, part, static_cast<int>(in_a), rest, static_cast<int>(in_b)};
      box.size[axis] = a[in_a].size[axis] + b[in_b].size[axis];
      box.size[1 - axis] = std::max(wide_a, wide_b);
      if (is_held(box)) add_to_front(front, box);
      if (wide_a >= wide_b) ++i;
      if (wide_b >= wide_a) ++k;
    }
  }

  [[nodiscard]] const ChoiceBoxes& choice(int index) const {
    return table_.choices[static_cast<std::size_t>(index)];
  }

  [[nodiscard]] bool is_held(const Box& box) const {
    return std::any_of(problem_.stocks.begin(), problem_.stocks.end(), [&](const SheetStock& s) {
      return s.available > 0 && box.size[0] <= s.length && box.size[1] <= s.width;
    });
  }

  const GuillotineProblem& problem_;
  long& steps_;
  double largest_ = 0;
  BoxTable table_;
  std::vector<std::pair<int, int>> splits_;
};

class BoxReader {
 public:
  BoxReader(const BoxTable& table, const GuillotineProblem& problem)
      : table_(table), problem_(problem) {}

  using At = std::array<std::int64_t, 2>;

  void read(int choice, std::size_t stage, std::size_t axis, int index, At at) {
    const ChoiceBoxes& boxes = table_.choices[static_cast<std::size_t>(choice)];
    const Box& box = boxes.fronts[stage][axis][static_cast<std::size_t>(index)];
    if (stage == 0) return read_bar(boxes.counts, axis, box.size[1 - axis], at);
    read(box.part, stage - 1, 1 - axis, box.part_box, at);
    if (box.rest < 0) return;
    const ChoiceBoxes& part = table_.choices[static_cast<std::size_t>(box.part)];
    at[axis] += part.fronts[stage - 1][1 - axis][static_cast<std::size_t>(box.part_box)].size[axis];
    read(box.rest, stage, axis, box.rest_box, at);
  }

  [[nodiscard]] std::vector<CutPiece> take() { return std::move(pieces_); }

 private:
  void read_bar(Choice counts, std::size_t axis, std::int64_t across, At at) {
    for (std::size_t i = 0; i < table_.code.items(); ++i) {
      for (int n = table_.code.count(counts, i); n > 0; --n) {
        const Laid laid = *lay(problem_.items[i], axis, across);
        At size{};
        size[axis] = laid.along;
        size[1 - axis] = across;
        pieces_.push_back({i, at[0], at[1], size[0], size[1], laid.turned});
        at[axis] += laid.along;
      }
    }
  }

  const BoxTable& table_;
  const GuillotineProblem& problem_;
  std::vector<CutPiece> pieces_;
};

}  // namespace

std::optional<BoxTable> box_table(const GuillotineProblem& problem, std::size_t most_choices,
                                  long& steps) {
  std::vector<int> demands;
  for (const RectangleItem& item : problem.items) demands.push_back(item.demand);
  auto code = ChoiceCode::for_demands(demands);
  if (!code) return std::nullopt;
  return TableBuilder(problem, std::move(*code), steps).build(most_choices);
}

std::vector<CutPiece> pieces_of(const BoxTable& table, const GuillotineProblem& problem, int choice,
                                std::size_t first, int box) {
  BoxReader reader(table, problem);
  reader.read(choice, 2, first, box, {0, 0});
  return reader.take();
}

}  // namespace strikeoff
