// SPDX-License-Identifier: MIT
#include "cutting/sheet_cuts.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace strikeoff {
namespace {

class BoxReader {
 public:
  explicit BoxReader(const BoxTable& table) : table_(table) {}

  void read(int choice, int index, std::int64_t x, std::int64_t y) {
    const Box& box = box_of(choice, index);
    if (box.left == 0) {
      const auto item = std::find(table_.worth.begin(), table_.worth.end(), choice);
      pieces_.push_back({static_cast<std::size_t>(item - table_.worth.begin()), x, y, box.length,
                         box.width, box.turned});
      return;
    }
    const Box& first = box_of(box.left, box.left_box);
    read(box.left, box.left_box, x, y);
    if (box.beside) {
      read(box.right, box.right_box, x + first.length, y);
    } else {
      read(box.right, box.right_box, x, y + first.width);
    }
  }

  [[nodiscard]] std::vector<CutPiece> take() { return std::move(pieces_); }

 private:
  [[nodiscard]] const Box& box_of(int choice, int index) const {
    return table_.boxes[static_cast<std::size_t>(choice)][static_cast<std::size_t>(index)];
  }

  const BoxTable& table_;
  std::vector<CutPiece> pieces_;
};

using Pieces = std::vector<CutPiece>;

/// Parts a rectangle of the sheet by every cut across one direction, then each part by those across
/// the other, and so on. Cutting all that can be cut at once never costs a stage.
class Sawyer {
 public:
  /// Stages from here on.
  int saw(const CutRest& from, Pieces pieces, bool across_x) {
    if (pieces.size() == 1 && fills(pieces.front(), from)) return 0;
    const auto low = [&](const CutPiece& p) { return across_x ? p.x : p.y; };
    const auto high = [&](const CutPiece& p) { return across_x ? p.x + p.length : p.y + p.width; };
    std::sort(pieces.begin(), pieces.end(), [&](const CutPiece& a, const CutPiece& b) {
      return std::tuple(low(a), a.x, a.y) < std::tuple(low(b), b.x, b.y);
    });
    const std::int64_t end = across_x ? from.x + from.length : from.y + from.width;
    std::int64_t at = across_x ? from.x : from.y;
    int deepest = 0;
    bool cut = false;
    for (std::size_t i = 0; i < pieces.size();) {
      const std::int64_t start = low(pieces[i]);
      std::int64_t reach = start;
      Pieces group;
      for (; i < pieces.size() && (group.empty() || low(pieces[i]) < reach); ++i) {
        reach = std::max(reach, high(pieces[i]));
        group.push_back(pieces[i]);
      }
      cut = cut || start > at || reach < end;
      if (start > at) rests_.push_back(part(from, across_x, at, start));
      deepest = std::max(deepest, saw(part(from, across_x, start, reach), group, !across_x));
      at = reach;
    }
    if (at < end) rests_.push_back(part(from, across_x, at, end));
    // Nothing to cut this way: the other way comes first.
    return cut ? 1 + deepest : deepest;
  }

  [[nodiscard]] std::vector<CutRest> take() { return std::move(rests_); }

 private:
  static bool fills(const CutPiece& piece, const CutRest& from) {
    return piece.length == from.length && piece.width == from.width;
  }

  static CutRest part(const CutRest& from, bool across_x, std::int64_t start, std::int64_t end) {
    if (across_x) return {start, from.y, end - start, from.width};
    return {from.x, start, from.length, end - start};
  }

  std::vector<CutRest> rests_;
};

CutSheet sawn_across(std::size_t stock, const SheetStock& size, const Pieces& pieces, bool x) {
  Sawyer sawyer;
  CutSheet sheet{stock, pieces, {}, 0};
  sheet.stages = sawyer.saw({0, 0, size.length, size.width}, pieces, x);
  sheet.rests = sawyer.take();
  std::sort(sheet.rests.begin(), sheet.rests.end(), [](const CutRest& a, const CutRest& b) {
    return std::tuple(-area_of(a), a.x, a.y) < std::tuple(-area_of(b), b.x, b.y);
  });
  return sheet;
}

}  // namespace

double area_of(const CutRest& rest) {
  return static_cast<double>(rest.length) * static_cast<double>(rest.width);
}

std::vector<CutPiece> pieces_of(const BoxTable& table, int choice, int box) {
  BoxReader reader(table);
  reader.read(choice, box, 0, 0);
  return reader.take();
}

CutSheet sawn(std::size_t stock, const SheetStock& size, std::vector<CutPiece> pieces) {
  std::sort(pieces.begin(), pieces.end(), [](const CutPiece& a, const CutPiece& b) {
    return std::tie(a.y, a.x) < std::tie(b.y, b.x);
  });
  CutSheet x = sawn_across(stock, size, pieces, true);
  CutSheet y = sawn_across(stock, size, pieces, false);
  const auto worth = [](const CutSheet& s) {
    const double rest = s.rests.empty() ? 0 : area_of(s.rests.front());
    return std::tuple(s.stages > 3, -rest, s.stages);
  };
  return worth(y) < worth(x) ? y : x;
}

}  // namespace strikeoff
