// SPDX-License-Identifier: MIT
#include "slab/strips.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <tuple>

#include <fmt/format.h>

#include "core/outlines.h"
#include "slab/corners.h"
#include "slab/splice.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr Length lap = Length::mm(50);  // of an edge strip over the base's face
constexpr Length stake_spacing = Length::mm(600);
constexpr Length panel_from = Length::mm(75);     // a wider soffit is a panel on props
constexpr Length least_rim = Length::mm(12);      // of panel that a screw can bite into
constexpr Length least_splice = Length::mm(300);  // shortest piece of a spliced strip
constexpr Length splices_apart = Length::mm(150);
constexpr Length cleat_length = Length::mm(300);

/// Pieces of one strip in their order from the left; more than one where it is spliced.
struct StripRun {
  std::string role;
  char letter = 'E';
  Length width;
  std::vector<Length> pieces;
  double left_cut_deg = 0, right_cut_deg = 0;
  std::string place;
  bool reads_from_left = false;  // left is as seen from outside the slab
};

/// Parts grouped by what makes them alike, in the order they first came.
class PartList {
 public:
  PartList(std::string slab, std::string stock, MarkCounter& marks)
      : slab_(std::move(slab)), stock_(std::move(stock)), marks_(marks) {}

  void add(const StripRun& run) {
    for (std::size_t i = 0; i < run.pieces.size(); ++i) {
      Part part;
      part.role = run.role;
      part.stock = stock_;
      part.width = run.width;
      part.length = run.pieces[i];
      if (i == 0) part.left_cut_deg = run.left_cut_deg;
      if (i + 1 == run.pieces.size()) part.right_cut_deg = run.right_cut_deg;
      part.place = run.place;
      if (run.reads_from_left && run.pieces.size() > 1) {
        part.place += fmt::format(" (piece {} of {} from the left)", i + 1, run.pieces.size());
      }
      add(std::move(part), run.letter);
    }
  }

  void add(Part part, char letter) {
    const Key key{part.role,   part.stock,        part.width,
                  part.length, part.left_cut_deg, part.right_cut_deg};
    const auto [at, is_new] = index_.try_emplace(key, parts_.size());
    if (is_new) {
      part.mark = marks_.next(letter);
      part.slab = slab_;
      last_place_.push_back(part.place);
      parts_.push_back(std::move(part));
      return;
    }
    Part& known = parts_[at->second];
    known.quantity += part.quantity;
    std::string& last = last_place_[at->second];
    if (last == part.place) return;  // a second piece of the same side
    known.place += ", " + part.place;
    last = part.place;
  }

  [[nodiscard]] std::vector<Part> take() { return std::move(parts_); }

 private:
  using Key = std::tuple<std::string, std::string, Length, Length, double, double>;
  std::string slab_, stock_;
  MarkCounter& marks_;
  std::map<Key, std::size_t> index_;
  std::vector<Part> parts_;
  std::vector<std::string> last_place_;
};

/// The longest strip of this width that can be cut, or nothing when no board is wide enough.
std::optional<Length> longest_piece(const Forms& forms, Length width) {
  std::optional<Length> longest;
  for (const Stock& board : forms.strip_stock) {
    const Length usable = board.length - forms.end_trim * 2;
    if (board.width >= width && usable > Length{} && (!longest || usable > *longest)) {
      longest = usable;
    }
  }
  return longest;
}

std::vector<Length> pieces_of(const Forms& forms, Length width, Length length) {
  const auto longest = longest_piece(forms, width);
  if (!longest) return {length};
  return split(length, *longest, {*longest, {}, least_splice});
}

Length edge_height(const Slab& slab, const Side& side, const Forms& forms) {
  const Length plain = slab.thickness + forms.oversize;
  if (slab.support == Support::ground) return plain;
  if (side.overhang > Length{}) return forms.strip_stock.front().thickness + plain;
  return plain + lap;
}

StripRun edge_strip(const Slab& slab, const Side& side, const Forms& forms, Length side_length,
                    const SideEnds& ends) {
  StripRun run;
  run.role = "edge strip";
  run.width = edge_height(slab, side, forms);
  run.left_cut_deg = ends.left_cut_deg;
  run.right_cut_deg = ends.right_cut_deg;
  run.place = side.name;
  run.reads_from_left = true;
  const Length length = side_length + ends.edge_left + ends.edge_right;
  // A step shallower than a strip, or a recess as wide as two, is closed by the strips beside it.
  if (length > Length{}) run.pieces = pieces_of(forms, run.width, length);
  return run;
}

/// The soffit strip, its joints away from those of the edge strip that is screwed to it.
StripRun soffit_strip(const Side& side, const Forms& forms, Length side_length,
                      const SideEnds& ends, const StripRun& edge) {
  StripRun run;
  run.role = side.overhang > panel_from ? "soffit panel" : "soffit strip";
  run.letter = 'S';
  run.width = side.overhang;
  run.place = side.name;
  run.reads_from_left = true;
  const Length length = side_length + ends.soffit_left + ends.soffit_right;
  const auto longest = longest_piece(forms, run.width);
  if (!longest || length <= *longest) {
    run.pieces = {length};
  } else {
    run.pieces =
        split_apart(length, {*longest, {}, least_splice},
                    {-ends.soffit_left, splices_apart, joints(edge.pieces, -ends.edge_left, {})});
  }
  return run;
}

Length total(const StripRun& run) {
  Length sum;
  for (const Length piece : run.pieces) sum += piece;
  return sum;
}

int stakes_along(Length strip) {
  return std::max(2, static_cast<int>(std::ceil(strip / stake_spacing)) + 1);
}

/// One opening's knock-outs. Their outer faces stand on the opening, so the short pair goes
/// between the long pair. Never oversize: the straightedge passes over them.
std::vector<StripRun> knock_outs(const Slab& slab, const Opening& opening, const Forms& forms) {
  const Length s = forms.strip_stock.front().thickness;
  const Length longer = std::max(opening.at.length, opening.at.depth);
  const Length between = std::min(opening.at.length, opening.at.depth) - s * 2;
  const bool on_panel = slab.panel && !opening.through;
  const Length height = on_panel ? slab.thickness - slab.panel->thickness : slab.thickness;
  std::vector<StripRun> runs;
  for (const Length length : {longer, longer, between, between}) {
    StripRun& run = runs.emplace_back();
    run.role = "knock-out strip";
    run.letter = 'K';
    run.width = height;
    run.pieces = pieces_of(forms, height, length);
    run.place = opening.name;
  }
  return runs;
}

Part knock_out_block(const Opening& opening) {
  Part block;
  block.role = "knock-out block";  // stacked sheet, made on site: no stock
  block.length = std::max(opening.at.length, opening.at.depth);
  block.width = std::min(opening.at.length, opening.at.depth);
  block.place = opening.name;
  return block;
}

/// Form faces the mix touches: the inside of the edge strips, the soffits beyond the panel's
/// rim, and the knock-outs above the panel.
Area formed_area(const Slab& slab, const SlabPlan& shape) {
  Area sum;
  const Polygon sharp = sharp_outline(slab);
  std::vector<Length> covered;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    if (!side.wall) sum += edge_length(sharp, k) * slab.thickness;
    covered.push_back(slab.panel ? std::max(side.panel_overhang, Length{}) : Length{});
  }
  if (slab.support == Support::base) {
    sum += shape.area - signed_area(offset_edges(slab.base, covered));
  }
  for (const Opening& opening : slab.openings) {
    sum += (opening.at.length + opening.at.depth) * 2 * shape.least_thickness;
  }
  return sum;
}

void add_ledger(Length length, FormQuantities& quantities) {
  quantities.ledger += length;
  quantities.ledger_pieces.push_back(length);
}

void count_side(const Slab& slab, const Side& side, const StripRun& edge, const StripRun& soffit,
                FormQuantities& quantities) {
  quantities.edge += total(edge);
  quantities.soffit += total(soffit);
  if (slab.support == Support::ground) quantities.stakes += stakes_along(total(edge));
  const bool on_ledger = !slab.panel || side.panel_overhang < least_rim;
  if (on_ledger && !soffit.pieces.empty()) add_ledger(total(soffit), quantities);
}

/// The soft strip between the slab and a wall; cut from a roll, so of no stock.
Part isolation_strip(const Slab& slab, const Side& side, Length length) {
  Part part;
  part.role = "isolation strip";
  part.width = slab.thickness;
  part.length = length;
  part.place = side.name;
  return part;
}

/// True at the end of a recess with no room for the strips of its sides: it takes one thickness
/// beside each side that is no wall.
bool is_too_narrow(const Slab& slab, const Polygon& outline, std::size_t k, Length s) {
  const std::size_t n = slab.sides.size(), before = (k + n - 1) % n, after = (k + 1) % n;
  if (is_convex_corner(outline, k) || is_convex_corner(outline, after)) return false;
  const int strips = int{!slab.sides[before].wall} + int{!slab.sides[after].wall};
  return edge_length(outline, k) < s * strips;
}

/// Stands for the strip of a recess too narrow for it: an edge strip without a stock, which the
/// cut list names as unplaced.
Part strip_without_room(const StripRun& edge, Length length) {
  Part part;
  part.role = edge.role;
  part.width = edge.width;
  part.length = length;
  part.place = edge.place + " (a recess too narrow for its strips)";
  return part;
}

void add_openings(const Slab& slab, const Forms& forms, FormQuantities& quantities,
                  std::vector<StripRun>& runs, PartList& parts) {
  const Length s = forms.strip_stock.front().thickness;
  for (const Opening& opening : slab.openings) {
    const Length longer = std::max(opening.at.length, opening.at.depth);
    // A through knock-out has nothing under it but a batten along each long side.
    if (opening.through && slab.support == Support::base) {
      for (int side = 0; side < 2; ++side) add_ledger(longer, quantities);
    }
    if (std::min(opening.at.length, opening.at.depth) <= s * 2) {
      parts.add(knock_out_block(opening), 'K');
      continue;
    }
    for (StripRun& run : knock_outs(slab, opening, forms)) {
      quantities.knock_out += total(run);
      parts.add(run);
      runs.push_back(std::move(run));
    }
  }
}

}  // namespace

FormWork form_work(const Slab& slab, const SlabPlan& shape, const Forms& forms,
                   MarkCounter& marks) {
  FormWork work;
  const Stock& stock = forms.strip_stock.front();
  const Polygon outline = sharp_outline(slab);
  const auto ends = strip_ends(slab, outline, forms.corner, stock.thickness);
  std::vector<StripRun> soffits, edges, others;
  std::vector<Part> isolation, without_room;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    const Length length = edge_length(outline, k);
    if (side.wall) {
      work.quantities.isolation += length;
      isolation.push_back(isolation_strip(slab, side, length));
      continue;
    }
    StripRun edge = edge_strip(slab, side, forms, length, ends[k]), soffit;
    if (is_too_narrow(slab, outline, k, stock.thickness)) {
      edge.pieces.clear();
      without_room.push_back(strip_without_room(edge, length));
    }
    if (slab.support == Support::base && side.overhang > Length{}) {
      soffit = soffit_strip(side, forms, length, ends[k], edge);
      soffits.push_back(soffit);
    }
    count_side(slab, side, edge, soffit, work.quantities);
    edges.push_back(std::move(edge));
  }

  PartList parts(slab.name, stock.id, marks);
  for (const StripRun& run : soffits) parts.add(run);
  for (const StripRun& run : edges) parts.add(run);
  for (Part& part : without_room) parts.add(std::move(part), 'E');
  add_openings(slab, forms, work.quantities, others, parts);
  for (const auto* runs : {&soffits, &edges, &others}) {
    for (const StripRun& run : *runs) {
      for (std::size_t joint = 1; joint < run.pieces.size(); ++joint) {
        StripRun cleat;
        cleat.role = "cleat";
        cleat.letter = 'C';
        cleat.width = run.width;
        cleat.pieces = {cleat_length};
        cleat.place = run.place;
        parts.add(cleat);
      }
    }
  }
  for (Part& part : isolation) parts.add(std::move(part), 'I');
  work.parts = parts.take();
  work.quantities.formed = formed_area(slab, shape);
  return work;
}

}  // namespace strikeoff
