// SPDX-License-Identifier: MIT
#include "cutting/sheet_cuts.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

namespace strikeoff {
namespace {

/// Pieces that lie together, and how far they reach along one direction.
struct Group {
  std::int64_t extent = 0;
  std::vector<std::size_t> pieces;
};

/// A rectangle of the sheet that is still to be cut.
struct Task {
  CutRest from;
  std::vector<std::size_t> pieces;
  SawnPart name;
  int stage = 1;
  bool across_x = true;
};

/// Cuts a sheet stage by stage: every part by all cuts that go through it in one direction, and
/// what that leaves by those in the other. Cutting all that can be cut at once never costs a stage.
/// Of each part the largest is cut off first, so that what is left stays large as long as it can
/// (common practice, no source) and the rest is in one piece; the pieces move accordingly.
class Sawyer {
 public:
  explicit Sawyer(CutSheet& sheet) : sheet_(sheet) {}

  void saw(const SheetStock& size, bool across_x) {
    Task whole{{0, 0, size.length, size.width}, {}, {}, 1, across_x};
    for (std::size_t p = 0; p < sheet_.pieces.size(); ++p) whole.pieces.push_back(p);
    tasks_.push_back(std::move(whole));
    for (std::size_t t = 0; t < tasks_.size(); ++t) {
      const Task task = tasks_[t];
      if (!cut(task, task.across_x)) cut(task, !task.across_x);
    }
  }

 private:
  /// False when nothing is to be cut in this direction.
  bool cut(const Task& task, bool across_x) {
    const std::vector<Group> groups = groups_of(task.pieces, across_x);
    std::int64_t left = across_x ? task.from.length : task.from.width;
    if (groups.size() == 1 && groups.front().extent == left) return false;
    sheet_.stages = std::max(sheet_.stages, task.stage);
    std::int64_t at = across_x ? task.from.x : task.from.y;
    for (const Group& group : groups) {
      move(group, across_x, at);
      const SawnPart name = name_of(group);
      left -= group.extent;
      if (left == 0 && &group == &groups.back()) {
        sheet_.passes.back().rest = name;
      } else {
        sheet_.passes.push_back({task.stage, across_x, task.name, group.extent, name, {}});
      }
      add_task(part(task.from, across_x, at, group.extent), group, name, task.stage, across_x);
      at += group.extent;
    }
    if (left > 0) sheet_.rests.push_back(part(task.from, across_x, at, left));
    return true;
  }

  [[nodiscard]] std::int64_t low(std::size_t p, bool along_x) const {
    return along_x ? sheet_.pieces[p].x : sheet_.pieces[p].y;
  }
  [[nodiscard]] std::int64_t high(std::size_t p, bool along_x) const {
    const CutPiece& piece = sheet_.pieces[p];
    return along_x ? piece.x + piece.length : piece.y + piece.width;
  }

  /// The pieces between cuts, largest group first.
  [[nodiscard]] std::vector<Group> groups_of(std::vector<std::size_t> pieces, bool along_x) const {
    std::sort(pieces.begin(), pieces.end(), [&](std::size_t a, std::size_t b) {
      return std::pair(low(a, along_x), a) < std::pair(low(b, along_x), b);
    });
    std::vector<Group> groups;
    std::int64_t start = 0, reach = 0;
    for (const std::size_t p : pieces) {
      if (groups.empty() || low(p, along_x) >= reach) {
        groups.emplace_back();
        start = low(p, along_x);
        reach = start;
      }
      reach = std::max(reach, high(p, along_x));
      groups.back().extent = reach - start;
      groups.back().pieces.push_back(p);
    }
    std::stable_sort(groups.begin(), groups.end(), [&](const Group& a, const Group& b) {
      return std::pair(b.extent, first_item(a)) < std::pair(a.extent, first_item(b));
    });
    return groups;
  }

  [[nodiscard]] std::size_t first_item(const Group& group) const {
    std::size_t first = sheet_.pieces[group.pieces.front()].item;
    for (const std::size_t p : group.pieces) first = std::min(first, sheet_.pieces[p].item);
    return first;
  }

  void move(const Group& group, bool along_x, std::int64_t to) {
    std::int64_t start = low(group.pieces.front(), along_x);
    for (const std::size_t p : group.pieces) start = std::min(start, low(p, along_x));
    for (const std::size_t p : group.pieces) {
      (along_x ? sheet_.pieces[p].x : sheet_.pieces[p].y) += to - start;
    }
  }

  SawnPart name_of(const Group& group) {
    if (group.pieces.size() == 1) return {group.pieces.front(), 0};
    return {std::nullopt, ++strips_};
  }

  void add_task(const CutRest& from, const Group& group, const SawnPart& name, int stage,
                bool across_x) {
    const CutPiece& first = sheet_.pieces[group.pieces.front()];
    const bool done =
        group.pieces.size() == 1 && first.length == from.length && first.width == from.width;
    if (!done) tasks_.push_back({from, group.pieces, name, stage + 1, !across_x});
  }

  static CutRest part(const CutRest& from, bool across_x, std::int64_t at, std::int64_t size) {
    if (across_x) return {at, from.y, size, from.width};
    return {from.x, at, from.length, size};
  }

  CutSheet& sheet_;
  std::vector<Task> tasks_;  // by stage
  int strips_ = 0;
};

/// The pieces from the lower left on.
void sort_pieces(CutSheet& sheet) {
  std::vector<std::size_t> order(sheet.pieces.size()), place(sheet.pieces.size());
  std::iota(order.begin(), order.end(), std::size_t{});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const CutPiece &p = sheet.pieces[a], &q = sheet.pieces[b];
    return std::tie(p.y, p.x) < std::tie(q.y, q.x);
  });
  std::vector<CutPiece> pieces;
  for (const std::size_t p : order) {
    place[p] = pieces.size();
    pieces.push_back(sheet.pieces[p]);
  }
  sheet.pieces = std::move(pieces);
  for (SawPass& pass : sheet.passes) {
    for (SawnPart* named : {&pass.from, &pass.off, &pass.rest}) {
      if (named->piece) named->piece = place[*named->piece];
    }
  }
}

CutSheet sawn_across(std::size_t stock, const SheetStock& size, const std::vector<CutPiece>& pieces,
                     bool x) {
  CutSheet sheet{stock, pieces, {}, {}, 0};
  Sawyer(sheet).saw(size, x);
  sort_pieces(sheet);
  std::sort(sheet.rests.begin(), sheet.rests.end(), [](const CutRest& a, const CutRest& b) {
    return std::tuple(-area_of(a), a.x, a.y) < std::tuple(-area_of(b), b.x, b.y);
  });
  return sheet;
}

}  // namespace

std::size_t settings_of(const CutSheet& sheet) {
  std::set<std::tuple<int, bool, std::int64_t>> settings;
  for (const SawPass& pass : sheet.passes) settings.insert({pass.stage, pass.across_x, pass.size});
  return settings.size();
}

double area_of(const CutRest& rest) {
  return static_cast<double>(rest.length) * static_cast<double>(rest.width);
}

CutSheet sawn(std::size_t stock, const SheetStock& size, std::vector<CutPiece> pieces) {
  std::sort(pieces.begin(), pieces.end(), [](const CutPiece& a, const CutPiece& b) {
    return std::tie(a.y, a.x) < std::tie(b.y, b.x);
  });
  CutSheet x = sawn_across(stock, size, pieces, true);
  CutSheet y = sawn_across(stock, size, pieces, false);
  const auto worth = [](const CutSheet& s) {
    const double rest = s.rests.empty() ? 0 : area_of(s.rests.front());
    return std::tuple(s.stages > 3, -rest, s.stages, settings_of(s));
  };
  return worth(y) < worth(x) ? y : x;
}

}  // namespace strikeoff
