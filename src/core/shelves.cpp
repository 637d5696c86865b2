// SPDX-License-Identifier: MIT
#include "core/shelves.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

namespace strikeoff {
namespace {

/// A piece as it is laid: `along` the shelf and `deep` across it.
struct Laid {
  Length along, deep;
};

class ShelfPacker {
 public:
  ShelfPacker(const std::vector<SheetSource>& sources, Length kerf, bool shelves_along_length)
      : kerf_(kerf), along_length_(shelves_along_length) {
    for (const SheetSource& s : sources) {
      const Laid size = along_length_ ? Laid{s.length, s.width} : Laid{s.width, s.length};
      sources_.push_back({size, s.count});
    }
  }

  /// Lays the piece in one of these ways, the first that fits, on what is open before what is new.
  void place(std::size_t item, const std::vector<Laid>& ways) {
    for (const Laid& way : ways) {
      if (on_shelf(item, way)) return;
    }
    for (const Laid& way : ways) {
      if (on_open_sheet(way) && on_shelf(item, way)) return;
    }
    for (std::size_t source = 0; source < sources_.size(); ++source) {
      for (const Laid& way : ways) {
        if (on_new_sheet(source, way) && on_shelf(item, way)) return;
      }
    }
    packing_.unplaced.push_back(item);
  }

  [[nodiscard]] SheetPacking take() { return std::move(packing_); }

 private:
  struct Source {
    Laid size;
    std::optional<int> count;
  };
  struct Shelf {
    std::size_t sheet;
    Length at, deep, used;
  };

  bool on_shelf(std::size_t item, const Laid& way) {
    // Fullest shelf first.
    int looked_at = 0;
    for (auto it = by_rest_.lower_bound({way.along, 0});
         it != by_rest_.end() && ++looked_at <= most_looked_at; ++it) {
      const auto [rest, index] = *it;
      Shelf& shelf = shelves_[index];
      if (shelf.deep < way.deep) continue;
      const Rectangle lying{{shelf.used, shelf.at}, way.along, way.deep};
      const Rectangle standing{{shelf.at, shelf.used}, way.deep, way.along};
      packing_.sheets[shelf.sheet].items.push_back({item, along_length_ ? lying : standing});
      by_rest_.erase(it);
      shelf.used += way.along + kerf_;
      by_rest_.insert({rest - way.along - kerf_, index});
      return true;
    }
    return false;
  }

  bool on_open_sheet(const Laid& way) {
    int looked_at = 0;
    for (auto it = sheets_by_rest_.lower_bound({way.deep, 0});
         it != sheets_by_rest_.end() && ++looked_at <= most_looked_at; ++it) {
      const auto [rest, sheet] = *it;
      const Laid& size = sources_[packing_.sheets[sheet].source].size;
      if (size.along < way.along) continue;
      sheets_by_rest_.erase(it);
      open_shelf(sheet, size, rest, way.deep);
      return true;
    }
    return false;
  }

  bool on_new_sheet(std::size_t source, const Laid& way) {
    Source& from = sources_[source];
    if (from.count && *from.count <= 0) return false;
    if (from.size.along < way.along || from.size.deep < way.deep) return false;
    if (from.count) --*from.count;
    packing_.sheets.push_back({source, {}});
    open_shelf(packing_.sheets.size() - 1, from.size, from.size.deep, way.deep);
    return true;
  }

  void open_shelf(std::size_t sheet, const Laid& size, Length rest, Length deep) {
    by_rest_.insert({size.along, shelves_.size()});
    shelves_.push_back({sheet, size.deep - rest, deep, {}});
    sheets_by_rest_.insert({rest - deep - kerf_, sheet});
  }

  static constexpr int most_looked_at = 100;  // keeps thousands of pieces quick
  Length kerf_;
  bool along_length_;
  std::vector<Source> sources_;
  std::vector<Shelf> shelves_;
  std::set<std::pair<Length, std::size_t>> by_rest_;         // shelves, by length left
  std::set<std::pair<Length, std::size_t>> sheets_by_rest_;  // sheets, by depth left
  SheetPacking packing_;
};

Laid lay(const SheetItem& item, bool flat) {
  const Length longer = std::max(item.length, item.width);
  const Length shorter = std::min(item.length, item.width);
  return flat ? Laid{longer, shorter} : Laid{shorter, longer};
}

SheetPacking pack(const std::vector<SheetItem>& items, const std::vector<SheetSource>& sources,
                  Length kerf, bool shelves_along_length, bool flat) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < items.size(); ++i) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const Laid la = lay(items[a], flat), lb = lay(items[b], flat);
    return std::pair(lb.deep, lb.along) < std::pair(la.deep, la.along);
  });
  ShelfPacker packer(sources, kerf, shelves_along_length);
  for (const std::size_t i : order) {
    for (int n = 0; n < items[i].quantity; ++n) {
      packer.place(i, {lay(items[i], flat), lay(items[i], !flat)});
    }
  }
  return packer.take();
}

}  // namespace

SheetPacking pack_on_shelves(const std::vector<SheetItem>& items,
                             const std::vector<SheetSource>& sources, Length kerf) {
  std::optional<SheetPacking> best;
  const auto worth = [](const SheetPacking& p) {
    return std::pair(p.unplaced.size(), p.sheets.size());
  };
  for (const bool along : {true, false}) {
    for (const bool flat : {true, false}) {
      SheetPacking packing = pack(items, sources, kerf, along, flat);
      if (!best || worth(packing) < worth(*best)) best = std::move(packing);
    }
  }
  return std::move(*best);
}

}  // namespace strikeoff
