// SPDX-License-Identifier: MIT
#include "support/arc_flow.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <set>
#include <utility>
#include <vector>

namespace strikeoff::test {
namespace {

using Place = std::int64_t;
/// What one column puts into rows.
using Entries = std::map<int, double>;

class Model {
 public:
  Model() : glpk_(glp_create_prob(), glp_delete_prob) {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(glpk_.get(), GLP_MIN);
  }

  int row(int kind, double bound) {
    const int at = glp_add_rows(glpk_.get(), 1);
    glp_set_row_bnds(glpk_.get(), at, kind, bound, bound);
    return at;
  }
  void column(double cost, double most, const Entries& entries) {
    const int at = glp_add_cols(glpk_.get(), 1);
    glp_set_obj_coef(glpk_.get(), at, cost);
    glp_set_col_kind(glpk_.get(), at, GLP_IV);
    // Setting the kind leaves the bounds alone.
    glp_set_col_bnds(glpk_.get(), at, most > 0 ? GLP_DB : GLP_FX, 0, most);
    std::vector<int> rows{0};
    std::vector<double> values{0};
    for (const auto& [row, value] : entries) {
      rows.push_back(row);
      values.push_back(value);
    }
    glp_set_mat_col(glpk_.get(), at, static_cast<int>(entries.size()), rows.data(), values.data());
  }

  ArcFlowAnswer solve(double seconds) {
    glp_iocp how;
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.gmi_cuts = GLP_ON;
    how.mir_cuts = GLP_ON;
    how.tm_lim = static_cast<int>(std::ceil(seconds * 1000));
    const int status = glp_intopt(glpk_.get(), &how);
    ArcFlowAnswer answer;
    answer.variables = glp_get_num_cols(glpk_.get());
    answer.finished =
        status == GLP_ENOPFS || (status == 0 && glp_mip_status(glpk_.get()) != GLP_FEAS);
    if (status == 0 && glp_mip_status(glpk_.get()) == GLP_OPT) {
      answer.least = std::llround(glp_mip_obj_val(glpk_.get()));
    }
    return answer;
  }

 private:
  std::unique_ptr<glp_prob, void (*)(glp_prob*)> glpk_;
};

struct Thing {
  Place size = 1;
  int most = 0;
  int row = 0;  // that counts it
};

struct Arc {
  std::size_t thing = 0;
  Place from = 0;
};

/// Arcs for things put one behind the other by falling size, which loses no choice of them.
std::vector<Arc> arcs_of(const std::vector<Thing>& things, Place end, std::set<Place>& places) {
  std::vector<std::size_t> order(things.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return things[a].size > things[b].size; });
  std::vector<Arc> arcs;
  places = {0};
  for (const std::size_t i : order) {
    std::set<Place> starts;
    for (const Place place : places) {
      for (int n = 0; n < things[i].most; ++n) {
        const Place from = place + n * things[i].size;
        if (from + things[i].size > end || !starts.insert(from).second) continue;
        arcs.push_back({i, from});
      }
    }
    for (const Place from : starts) places.insert(from + things[i].size);
  }
  return arcs;
}

/// A network whose flow goes into `ends`: at each place a row that what comes in goes out. Returns
/// the rows of the places.
std::map<Place, int> add_network(Model& model, const std::vector<Thing>& things,
                                 const std::set<Place>& ends) {
  std::set<Place> places;
  const std::vector<Arc> arcs = arcs_of(things, *ends.rbegin(), places);
  places.insert(ends.begin(), ends.end());
  std::map<Place, int> rows;
  for (const Place place : places) {
    if (place > 0) rows[place] = model.row(GLP_FX, 0);
  }
  for (const Arc& arc : arcs) {
    const Thing& thing = things[arc.thing];
    Entries entries{{thing.row, 1.0}, {rows.at(arc.from + thing.size), 1.0}};
    if (arc.from > 0) entries[rows.at(arc.from)] = -1;
    model.column(0, thing.most, entries);
  }
  // What is left over, from each place to the next.
  for (auto place = rows.begin(); std::next(place) != rows.end(); ++place) {
    model.column(0, 1e6, {{place->second, -1.0}, {std::next(place)->second, 1.0}});
  }
  return rows;
}

}  // namespace

ArcFlowAnswer arc_flow(const BarProblem& problem, double seconds) {
  Model model;
  std::vector<int> demand_rows;
  std::set<std::int64_t> widths, lengths;
  int pieces = 0;
  for (const BarItem& item : problem.items) {
    demand_rows.push_back(model.row(GLP_LO, item.demand));
    widths.insert(item.width);
    pieces += item.demand;
  }
  for (const BarStock& stock : problem.stocks) lengths.insert(stock.length);

  // Strips of each width, along boards of every length.
  std::map<std::pair<std::int64_t, std::int64_t>, int> strip_rows;  // by length and width
  for (const std::int64_t width : widths) {
    std::vector<Thing> things;
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
      const BarItem& item = problem.items[i];
      if (item.width == width || (problem.trim && item.width < width)) {
        things.push_back({item.length, item.demand, demand_rows[i]});
      }
    }
    const auto places = add_network(model, things, lengths);
    for (const std::int64_t length : lengths) strip_rows[{length, width}] = places.at(length);
  }
  // Strips across the boards of each length. A strip cut takes one out of the end of its network.
  for (const std::int64_t length : lengths) {
    std::set<Place> ends;
    for (const BarStock& stock : problem.stocks) {
      if (stock.length == length) ends.insert(stock.width);
    }
    std::vector<Thing> things;
    for (const std::int64_t width : widths) {
      // The number of strips ripped, as a row of its own so that it may be taken from a network.
      things.push_back({width, pieces, model.row(GLP_FX, 0)});
      model.column(0, pieces, {{things.back().row, -1.0}, {strip_rows.at({length, width}), -1.0}});
    }
    const auto places = add_network(model, things, ends);
    for (const BarStock& stock : problem.stocks) {
      if (stock.length != length) continue;
      model.column(static_cast<double>(stock.cost), std::min(stock.available, pieces),
                   {{places.at(stock.width), -1.0}});
    }
  }
  return model.solve(seconds);
}

}  // namespace strikeoff::test
