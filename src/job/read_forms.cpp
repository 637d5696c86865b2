// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <string>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> saw_kerf{Length{}, Length::mm(20), "0 mm and 20 mm (3/4 in)"};
constexpr Range<Length> oversize{Length{}, Length::mm(200), "0 mm and 200 mm (8 in)"};
constexpr Range<Length> end_trim{Length{}, Length::mm(500), "0 mm and 500 mm (20 in)"};
constexpr Range<Length> reusable{Length::mm(10), Length::m(10), "10 mm (3/8 in) and 10 m (32 ft)"};
constexpr Range<Length> spacing{Length::mm(20), Length::m(2), "20 mm (3/4 in) and 2 m (79 in)"};

/// The shortest board worth cutting; it also bounds how many pieces a long strip takes. Assumption.
constexpr Length least_board = Length::mm(100);

std::optional<Stock> read_board(Context& c, const Node& node) {
  if (node.text()) {
    const Stock* found = find_in_catalogue(c.reader, node, c.catalogue.boards, "board", "boards");
    if (found == nullptr) return std::nullopt;
    return *found;
  }
  Object o(c.reader, node, "a board");
  Stock stock = read_stock_facts(o);
  o.finish();
  return stock;
}

void read_strip_stock(Context& c, const Node& node, const std::string& path, Forms& forms) {
  if (!node) {
    forms.strip_stock.push_back(default_stock(c.catalogue.boards, c.units));
    c.reader.assume(weight_strip_stock, path, forms.strip_stock.front().name,
                    default_stock_reason("board", c.units) + ", its price invented (assumption)");
    return;
  }
  const auto boards = read_list(c.reader, node, "boards");
  if (!boards) return;
  if (boards->empty()) {
    c.reader.error(node.pointer, {"no-boards", "strips need at least one board to be cut from",
                                  "leave the key out for the catalogue's usual board"});
  }
  for (const Node& entry : *boards) {
    const std::size_t before = c.reader.errors();
    auto stock = read_board(c, entry);
    if (!stock || c.reader.errors() != before) continue;
    if (stock->bends_to) {
      c.reader.error(
          entry.pointer,
          {"board-bends",
           fmt::format("{} bends: it would not keep a straight edge", in_quotes(stock->name)),
           "name it under \"bend_stock\", for rounded edges, and give strips a stiff "
           "board"});
    }
    for (const Stock& other : forms.strip_stock) {
      if (other.id == stock->id) {
        c.reader.error(
            entry.pointer,
            {"duplicate-name", fmt::format("two boards are named {}", in_quotes(stock->name)),
             "give each its own name"});
      }
    }
    if (!forms.strip_stock.empty() && forms.strip_stock.front().thickness != stock->thickness) {
      c.reader.error(
          entry.pointer,
          {"mixed-thickness",
           fmt::format("this board is {} thick, the first one {}", show(stock->thickness, c.units),
                       show(forms.strip_stock.front().thickness, c.units)),
           "all strips of a form are cut from boards of one thickness"});
    }
    forms.strip_stock.push_back(std::move(*stock));
  }
}

void read_bend_stock(Context& c, const Node& node, Forms& forms) {
  if (!node) return;
  const std::size_t before = c.reader.errors();
  const auto stock = read_board(c, node);
  if (!stock || c.reader.errors() != before) return;
  if (!stock->bends_to) {
    c.reader.error(node.pointer,
                   {"board-does-not-bend",
                    fmt::format("{} does not say how far it bends", in_quotes(stock->name)),
                    R"(give a thin board with "bends_to", the least radius, as in "100 mm")"});
  } else if (std::any_of(forms.strip_stock.begin(), forms.strip_stock.end(),
                         [&](const Stock& board) { return board.id == stock->id; })) {
    c.reader.error(node.pointer, {"duplicate-name",
                                  fmt::format("two boards are named {}", in_quotes(stock->name)),
                                  "give each its own name"});
  }
  forms.bend_stock = stock;
}

void check_end_trim(Context& c, const std::string& at, const Forms& forms) {
  for (const Stock& stock : forms.strip_stock) {
    const Length left = stock.length - forms.end_trim * 2;
    if (left >= least_board) continue;
    c.reader.error(at, {"end-trim-too-long",
                        fmt::format("trimmed {} at both ends, {} keeps less than {}",
                                    show(forms.end_trim, c.units), in_quotes(stock.name),
                                    show(least_board, c.units)),
                        "give a smaller end trim, or longer boards"});
  }
}

Reusable read_reusable(Context& c, const Node& node, const std::string& path) {
  Reusable least;
  if (c.units == Units::us) least = {Length::inches(12), Length::inches(1.5)};
  if (!node) {
    c.reader.assume(weight_reusable, path,
                    fmt::format("{} x {}", show(least.length, c.units), show(least.width, c.units)),
                    "smaller left-overs are waste (assumption)");
    return least;
  }
  Object o(c.reader, node, "the least left-over");
  const auto read = [&](const char* key, const char* example) {
    return read_quantity(c.reader, o.need(key, example), reusable).value_or(Length{});
  };
  least.length = read("length", R"("length": "300 mm")");
  least.width = read("width", R"("width": "40 mm")");
  o.finish();
  return least;
}

}  // namespace

Forms read_forms(Context& c, const Node& node) {
  Object o(c.reader, node, "forms");
  // Without `forms` the defaults still count, and their places are the same.
  const auto path = [](const char* key) { return "/forms/" + std::string(key); };
  const auto length = [&](const char* key, const Range<Length>& range, Length usual, int weight,
                          const char* reason) {
    const Node value = o.find(key);
    if (!value) c.reader.assume(weight, path(key), show(usual, c.units), reason);
    return read_quantity(c.reader, value, range).value_or(usual);
  };
  Forms forms;
  read_strip_stock(c, o.find("strip_stock"), path("strip_stock"), forms);
  read_bend_stock(c, o.find("bend_stock"), forms);
  forms.kerf = length("kerf", saw_kerf, Length::inches(0.125), weight_kerf,
                      "the saw's cut; measure yours (common practice, no source)");
  forms.oversize = length("oversize", oversize, Length{}, weight_oversize,
                          "edge strips are no higher than needed (assumption)");
  forms.end_trim = length("end_trim", end_trim, Length{}, weight_end_trim,
                          "boards are used to their ends (assumption)");
  forms.screw_spacing =
      length("screw_spacing", spacing, Length::mm(200), weight_screws,
             "between screws of a strip, closer where the mix pushes harder (common "
             "practice, no source)");
  forms.screws_may_tighten = !o.find("screw_spacing");
  const Node corner = o.find("corner");
  forms.corner = read_choice<CornerStyle>(c.reader, corner,
                                          {{"through", CornerStyle::through},
                                           {"pinwheel", CornerStyle::pinwheel},
                                           {"mitre", CornerStyle::mitre}})
                     .value_or(CornerStyle::through);
  if (!corner) {
    c.reader.assume(weight_corner, path("corner"), "through",
                    "at each corner the longer strip passes (assumption)");
  }
  forms.reusable = read_reusable(c, o.find("reusable"), path("reusable"));
  o.finish();
  check_end_trim(c, path("end_trim"), forms);
  return forms;
}

void set_bend_stock(Context& c, Job& job) {
  const Stock* usual = default_bend_stock(c.catalogue.boards, c.units);
  if (job.forms.bend_stock || usual == nullptr) return;
  job.forms.bend_stock = *usual;
  const bool is_used = std::any_of(job.slabs.begin(), job.slabs.end(), [](const Slab& slab) {
    return std::any_of(slab.corner_cuts.begin(), slab.corner_cuts.end(),
                       [](const CornerCut& cut) { return cut.round; });
  });
  if (!is_used) return;
  c.reader.assume(weight_bend_stock, "/forms/bend_stock", usual->name,
                  default_stock_reason("board that bends", c.units) + ", to a radius of " +
                      show(*usual->bends_to, c.units) + "; its price invented (assumption)");
}

}  // namespace strikeoff
