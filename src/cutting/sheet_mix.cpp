// SPDX-License-Identifier: MIT
#include "cutting/sheet_mix.h"

#include <algorithm>
#include <bit>
#include <numeric>
#include <tuple>

namespace strikeoff {
namespace {

/// What the sheets so far come to; less is better. The last three add up by their largest, not by
/// their sum: a preference, not an optimum.
struct Worth {
  int unplaced = 0;
  std::int64_t cost = 0;
  int sheets = 0;
  bool hard = false;
  double rest = 0;
  int stages = 0;
};

auto key(const Worth& w) {
  return std::make_tuple(w.unplaced, w.cost, w.sheets, w.hard, -w.rest, w.stages);
}

/// A choice that one sheet holds.
struct Filling {
  int choice = 0;
  std::uint64_t counts = 0;
  std::size_t top = 0;  // its last item
  int box = 0;
  Seat seat;
};

/// The states of the search are the choices still to be cut.
struct State {
  bool reached = false;
  Worth worth;
};

/// How a state was reached: by a filling of the layer, by leaving out a piece of the last item
/// (-2), or not in this layer (-1).
using Steps = std::vector<int>;

class MixSearch {
 public:
  MixSearch(const BoxTable& table, const std::vector<SheetStock>& stocks, long& steps)
      : table_(table), stocks_(stocks), steps_(steps) {
    int shift = 0;
    for (const int demand : table.demand) {
      shifts_.push_back(shift);
      // A guard bit above each count shows a borrow when counts are subtracted. The product of
      // (demand + 1) is below 2^31, and so 64 bits suffice for it with every guard.
      const int bits = static_cast<int>(std::bit_width(static_cast<unsigned>(demand)));
      guards_ |= std::uint64_t{1} << (shift + bits);
      shift += bits + 1;
    }
    counts_.push_back(0);
    tops_.push_back(0);
    for (int choice = 1; choice <= table.all; ++choice) {
      std::size_t top = tops_.back();
      if (top + 1 < shifts_.size() && choice == table.worth[top + 1]) ++top;
      const int less = choice - table.worth[top];
      counts_.push_back(counts_[static_cast<std::size_t>(less)] +
                        (std::uint64_t{1} << shifts_[top]));
      tops_.push_back(top);
    }
  }

  std::optional<SheetMix> search() {
    const int pieces = std::accumulate(table_.demand.begin(), table_.demand.end(), 0);
    states_.resize(counts_.size());
    states_.back().reached = true;
    std::vector<std::size_t> plenty;
    for (std::size_t s = 0; s < stocks_.size(); ++s) {
      fillings_.push_back(fillings_of(stocks_[s]));
      if (stocks_[s].available >= pieces) {
        plenty.push_back(s);
        continue;
      }
      for (int n = 0; n < stocks_[s].available; ++n) {
        if (steps_ < 0) return std::nullopt;
        if (!add_sheet(s)) break;
      }
    }
    cut_the_rest(plenty);
    if (steps_ < 0) return std::nullopt;
    return trace();
  }

 private:
  struct Layer {
    std::size_t stock = 0;
    Steps steps;
  };

  [[nodiscard]] bool is_part(std::uint64_t part, std::uint64_t whole) const {
    return (((whole | guards_) - part) & guards_) == guards_;
  }

  std::vector<Filling> fillings_of(const SheetStock& stock) {
    std::vector<Filling> fillings;
    for (int choice = 1; choice <= table_.all; ++choice) {
      std::optional<Filling> best;
      const auto& boxes = table_.boxes[static_cast<std::size_t>(choice)];
      steps_ -= 1 + static_cast<long>(boxes.size());
      for (std::size_t b = 0; b < boxes.size(); ++b) {
        if (boxes[b].length > stock.length || boxes[b].width > stock.width) continue;
        const Seat seat = seat_of(boxes[b], stock);
        if (best && key(with(Worth{}, stock, best->seat)) <= key(with(Worth{}, stock, seat)))
          continue;
        best = Filling{choice, counts_[static_cast<std::size_t>(choice)],
                       tops_[static_cast<std::size_t>(choice)], static_cast<int>(b), seat};
      }
      if (best) fillings.push_back(*best);
    }
    return fillings;
  }

  static Worth with(Worth worth, const SheetStock& stock, const Seat& seat) {
    worth.cost += stock.cost;
    ++worth.sheets;
    worth.hard = worth.hard || seat.stages > 3;
    worth.rest = std::max(worth.rest, seat.rest);
    worth.stages = std::max(worth.stages, seat.stages);
    return worth;
  }

  static bool improve(State& state, const Worth& worth) {
    if (state.reached && key(state.worth) <= key(worth)) return false;
    state = {true, worth};
    return true;
  }

  /// Offers one sheet of a stock of which there are few; false when it is of no use.
  bool add_sheet(std::size_t s) {
    Layer layer{s, Steps(states_.size(), -1)};
    std::vector<State> next = states_;
    bool used = false;
    for (std::size_t v = states_.size(); v-- > 1;) {
      --steps_;
      if (!states_[v].reached) continue;
      for (std::size_t f = 0; f < fillings_[s].size(); ++f) {
        const Filling& filling = fillings_[s][f];
        if (filling.choice > static_cast<int>(v)) break;
        --steps_;
        if (!is_part(filling.counts, counts_[v])) continue;
        const std::size_t to = v - static_cast<std::size_t>(filling.choice);
        if (!improve(next[to], with(states_[v].worth, stocks_[s], filling.seat))) continue;
        layer.steps[to] = static_cast<int>(f);
        used = true;
      }
      if (steps_ < 0) return false;
    }
    states_ = std::move(next);
    layers_.push_back(std::move(layer));
    return used;
  }

  /// Cuts what is left from stocks of which there are enough: in every state a sheet that holds a
  /// piece of the last item, or else that piece is left out.
  void cut_the_rest(const std::vector<std::size_t>& plenty) {
    std::vector<std::vector<std::pair<std::size_t, const Filling*>>> by_top(shifts_.size());
    for (const std::size_t s : plenty) {
      for (const Filling& filling : fillings_[s]) by_top[filling.top].emplace_back(s, &filling);
    }
    last_.assign(states_.size(), -1);
    last_stock_.assign(states_.size(), 0);
    for (std::size_t v = states_.size(); v-- > 1 && steps_ >= 0;) {
      if (!states_[v].reached) continue;
      const std::size_t top = tops_[v];
      Worth without = states_[v].worth;
      ++without.unplaced;
      const std::size_t less = v - static_cast<std::size_t>(table_.worth[top]);
      if (improve(states_[less], without)) last_[less] = -2 - static_cast<int>(top);
      for (const auto& [s, filling] : by_top[top]) {
        --steps_;
        if (!is_part(filling->counts, counts_[v])) continue;
        const std::size_t to = v - static_cast<std::size_t>(filling->choice);
        if (!improve(states_[to], with(states_[v].worth, stocks_[s], filling->seat))) continue;
        last_[to] = static_cast<int>(filling - fillings_[s].data());
        last_stock_[to] = s;
      }
    }
  }

  /// Follows the steps back from nothing left to everything left.
  SheetMix trace() const {
    const Worth& worth = states_[0].worth;
    SheetMix mix{{}, worth.cost, worth.unplaced};
    std::size_t v = 0;
    while (last_[v] != -1) {
      if (last_[v] <= -2) {
        v += static_cast<std::size_t>(table_.worth[static_cast<std::size_t>(-2 - last_[v])]);
      } else {
        v += load(mix, last_stock_[v], last_[v]);
      }
    }
    for (auto layer = layers_.rbegin(); layer != layers_.rend(); ++layer) {
      if (layer->steps[v] >= 0) v += load(mix, layer->stock, layer->steps[v]);
    }
    return mix;
  }

  [[nodiscard]] std::size_t load(SheetMix& mix, std::size_t s, int f) const {
    const Filling& filling = fillings_[s][static_cast<std::size_t>(f)];
    mix.loads.push_back({s, filling.choice, filling.box});
    return static_cast<std::size_t>(filling.choice);
  }

  const BoxTable& table_;
  const std::vector<SheetStock>& stocks_;
  long& steps_;
  std::vector<int> shifts_;
  std::uint64_t guards_ = 0;
  std::vector<std::uint64_t> counts_;  // of each choice
  std::vector<std::size_t> tops_;      // the last item in each choice
  std::vector<std::vector<Filling>> fillings_;
  std::vector<State> states_;
  std::vector<Layer> layers_;
  Steps last_;
  std::vector<std::size_t> last_stock_;
};

}  // namespace

std::optional<SheetMix> best_mix(const BoxTable& table, const std::vector<SheetStock>& stocks,
                                 long& steps) {
  return MixSearch(table, stocks, steps).search();
}

}  // namespace strikeoff
