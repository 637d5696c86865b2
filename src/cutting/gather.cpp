// SPDX-License-Identifier: MIT
#include "cutting/gather.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <utility>

#include "cutting/fill.h"

namespace strikeoff {
namespace {

/// How good a plan is among those of the same boards: the largest re-usable left-over, in m2, then
/// how often the fence is set, board by board, which counts against it.
std::pair<double, int> merit(const BoardPacking& packing, const std::vector<BoardSource>& sources,
                             const Saw& saw) {
  double largest = 0;
  int settings = 0;
  for (const PackedBoard& board : packing.boards) {
    const auto rests = left_over_of(board, sources[board.source], saw);
    if (!rests.empty()) {
      largest = std::max(largest, (rests.front().length * rests.front().width).si());
    }
    std::set<Length> widths;
    for (const PackedStrip& strip : board.strips) widths.insert(strip.width);
    settings += static_cast<int>(widths.size());
  }
  return {largest, -settings};
}

/// Fills the strips of one source and width anew, one after another. Strips that then stay empty
/// leave their board wider.
BoardPacking fill_strips(BoardPacking packing, const std::map<std::size_t, Length>& length_of,
                         const Saw& saw) {
  std::map<std::pair<std::size_t, Length>, std::vector<PackedStrip*>> alike;
  for (PackedBoard& board : packing.boards) {
    for (PackedStrip& strip : board.strips) alike[{board.source, strip.width}].push_back(&strip);
  }
  for (auto& [key, strips] : alike) {
    std::vector<std::size_t> parts;
    for (PackedStrip* strip : strips) {
      parts.insert(parts.end(), strip->parts.begin(), strip->parts.end());
    }
    std::sort(parts.begin(), parts.end(), [&](std::size_t a, std::size_t b) {
      return std::pair(length_of.at(b), a) < std::pair(length_of.at(a), b);
    });
    std::vector<Length> sizes;
    for (const std::size_t p : parts) sizes.push_back(length_of.at(p) + saw.kerf);
    Length room = strips.front()->rest;
    for (const std::size_t p : strips.front()->parts) room += length_of.at(p) + saw.kerf;
    const auto groups = fill_bins(sizes, room);
    if (groups.size() > strips.size()) continue;
    for (std::size_t s = 0; s < strips.size(); ++s) {
      strips[s]->parts.clear();
      strips[s]->rest = room;
      if (s >= groups.size()) continue;
      for (const std::size_t i : groups[s]) {
        strips[s]->parts.push_back(parts[i]);
        strips[s]->rest -= sizes[i];
      }
    }
  }
  for (PackedBoard& board : packing.boards) {
    for (const PackedStrip& strip : board.strips) {
      if (strip.parts.empty()) board.rest += strip.width + saw.kerf;
    }
    std::erase_if(board.strips, [](const PackedStrip& strip) { return strip.parts.empty(); });
  }
  std::erase_if(packing.boards, [](const PackedBoard& board) { return board.strips.empty(); });
  return packing;
}

/// Fills the boards of one source with their strips anew, one after another.
BoardPacking fill_boards(BoardPacking packing, std::size_t sources, const Saw& saw) {
  for (std::size_t source = 0; source < sources; ++source) {
    std::vector<PackedBoard*> boards;
    std::vector<PackedStrip> strips;
    for (PackedBoard& board : packing.boards) {
      if (board.source != source) continue;
      boards.push_back(&board);
      strips.insert(strips.end(), board.strips.begin(), board.strips.end());
    }
    if (boards.empty()) continue;
    std::stable_sort(strips.begin(), strips.end(), [](const PackedStrip& a, const PackedStrip& b) {
      return std::pair(b.width, a.rest) < std::pair(a.width, b.rest);
    });
    std::vector<Length> widths;
    for (const PackedStrip& strip : strips) widths.push_back(strip.width + saw.kerf);
    Length room = boards.front()->rest;
    for (const PackedStrip& strip : boards.front()->strips) room += strip.width + saw.kerf;
    const auto groups = fill_bins(widths, room);
    if (groups.size() > boards.size()) continue;
    for (std::size_t b = 0; b < boards.size(); ++b) {
      boards[b]->strips.clear();
      boards[b]->rest = room;
      if (b >= groups.size()) continue;
      for (const std::size_t i : groups[b]) {
        boards[b]->strips.push_back(strips[i]);
        boards[b]->rest -= widths[i];
      }
    }
  }
  std::erase_if(packing.boards, [](const PackedBoard& board) { return board.strips.empty(); });
  return packing;
}

}  // namespace

std::vector<LeftOver> left_over_of(const PackedBoard& board, const BoardSource& source,
                                   const Saw& saw) {
  std::vector<LeftOver> rests{{source.length, board.rest - saw.kerf}};
  for (const PackedStrip& strip : board.strips) {
    rests.push_back({strip.rest - saw.kerf, strip.width});
  }
  std::erase_if(rests, [&](const LeftOver& rest) {
    return rest.length < saw.reusable.length || rest.width < saw.reusable.width;
  });
  std::stable_sort(rests.begin(), rests.end(), [](const LeftOver& a, const LeftOver& b) {
    const double area = (a.length * a.width).si(), other = (b.length * b.width).si();
    return std::pair(other, b.length) < std::pair(area, a.length);
  });
  return rests;
}

void gather(BoardPacking& packing, const std::vector<BoardItem>& items,
            const std::vector<BoardSource>& sources, const Saw& saw) {
  std::map<std::size_t, Length> length_of;
  for (const BoardItem& item : items) length_of[item.part] = item.length;
  const auto keep_better = [&](BoardPacking other) {
    if (merit(other, sources, saw) > merit(packing, sources, saw)) packing = std::move(other);
  };
  // A narrower part in a strip stays where it is.
  std::map<std::size_t, Length> width_of;
  for (const BoardItem& item : items) width_of[item.part] = item.width;
  bool trimmed = false;
  for (const PackedBoard& board : packing.boards) {
    for (const PackedStrip& strip : board.strips) {
      trimmed = trimmed || std::any_of(strip.parts.begin(), strip.parts.end(), [&](std::size_t p) {
                  return width_of.at(p) != strip.width;
                });
    }
  }
  if (!trimmed) keep_better(fill_strips(packing, length_of, saw));
  keep_better(fill_boards(packing, sources.size(), saw));
  for (PackedBoard& board : packing.boards) {
    std::stable_sort(board.strips.begin(), board.strips.end(),
                     [](const PackedStrip& a, const PackedStrip& b) { return a.width > b.width; });
  }
}

}  // namespace strikeoff
