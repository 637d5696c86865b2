// SPDX-License-Identifier: MIT
#include "cutting/sheet_mix.h"

#include <algorithm>
#include <functional>
#include <map>

namespace strikeoff {
namespace {

/// A way to leave a choice uncut: from another node by one sheet, or by leaving out a piece.
struct Node {
  Choice left = 0;
  MixWorth worth;
  double rest = 0;                      // the largest rectangle so far: a preference
  std::int64_t weight = 0, number = 0;  // of what is left, for the bounds
  int from = -1;
  const SheetFilling* filling = nullptr;
};

class MixSearch {
 public:
  MixSearch(const MixProblem& problem, const MixWorth& known, bool equals, long& steps)
      : in_(problem), code_(problem.code), known_(known), equals_(equals), steps_(steps) {
    for (const auto& all : in_.fillings) {
      auto& weights = weights_.emplace_back();
      for (const SheetFilling& f : all) {
        weights.emplace_back(in_.cost.weight(f.counts, code_), in_.number.weight(f.counts, code_));
      }
    }
  }

  std::optional<SheetMix> search() {
    std::int64_t pieces = 0;
    for (const RectangleItem& item : in_.problem.items) pieces += item.demand;
    Node start;
    start.left = code_.all();
    start.weight = in_.cost.weight(start.left, code_);
    start.number = in_.number.weight(start.left, code_);
    const auto& stocks = in_.problem.stocks;
    std::vector<std::size_t> endless, few;
    for (std::size_t s = 0; s < stocks.size(); ++s) {
      if (stocks[s].available >= pieces) {
        endless.push_back(s);
      } else if (stocks[s].available > 0) {
        few.push_back(s);
        extra_cost_ += in_.cost.extra[s] * stocks[s].available;
        extra_number_ += in_.number.extra[s] * stocks[s].available;
      }
    }
    offer(start);
    for (const std::size_t s : few) {
      for (int n = 0; n < stocks[s].available && steps_ >= 0; ++n) {
        if (add_sheet(s)) continue;
        extra_cost_ -= in_.cost.extra[s] * (stocks[s].available - n - 1);
        extra_number_ -= in_.number.extra[s] * (stocks[s].available - n - 1);
        break;
      }
    }
    cut_the_rest(endless);
    const auto end = states_.find(0);
    if (end == states_.end()) return std::nullopt;
    return trace(end->second);
  }

 private:
  /// True when no way on from here can be better than what is known.
  [[nodiscard]] bool is_hopeless(const Node& node) const {
    MixWorth least = node.worth;
    if (known_.unplaced == 0) {
      least.cost += in_.cost.cost(node.weight - extra_cost_);
      least.sheets += std::max<std::int64_t>(in_.number.cost(node.number - extra_number_),
                                             node.left != 0 ? 1 : 0);
    }
    return equals_ ? least > known_ : least >= known_;
  }

  static auto key(const Node& node) { return std::tuple(node.worth, -node.rest); }

  /// Notes the node if it is the best to leave its choice; true if it is.
  bool offer(const Node& node) {
    if (is_hopeless(node)) return false;
    const auto [at, is_new] = states_.try_emplace(node.left, static_cast<int>(nodes_.size()));
    if (!is_new && key(this->node(at->second)) <= key(node)) return false;
    at->second = static_cast<int>(nodes_.size());
    nodes_.push_back(node);
    steps_ -= 10;  // dearer than a look
    return true;
  }

  [[nodiscard]] const Node& node(int index) const {
    return nodes_[static_cast<std::size_t>(index)];
  }

  /// The node after one more sheet.
  [[nodiscard]] Node after(int from, const SheetFilling& filling) const {
    Node next = node(from);
    const auto& all = in_.fillings[filling.stock];
    const auto& [weight, number] =
        weights_[filling.stock][static_cast<std::size_t>(&filling - all.data())];
    next.left -= filling.counts;
    next.weight -= weight;
    next.number -= number;
    next.worth.cost += in_.problem.stocks[filling.stock].cost;
    ++next.worth.sheets;
    next.rest = std::max(next.rest, filling.rest);
    next.from = from;
    next.filling = &filling;
    return next;
  }

  /// Full sheets suffice for the cost; the others leave larger rectangles.
  [[nodiscard]] bool is_of_use(const SheetFilling& filling, Choice left) const {
    if (!code_.is_part(filling.counts, left)) return false;
    return equals_ || is_full(filling, left - filling.counts, code_);
  }

  /// Offers one sheet of a stock of which there are few; false when it is of no use.
  bool add_sheet(std::size_t s) {
    std::vector<int> before;
    for (const auto& [left, from] : states_) {
      if (!is_hopeless(node(from))) before.push_back(from);
    }
    extra_cost_ -= in_.cost.extra[s];
    extra_number_ -= in_.number.extra[s];
    bool used = false;
    for (const int from : before) {
      const Choice left = node(from).left;
      for (const SheetFilling& filling : in_.fillings[s]) {
        if (--steps_ < 0) return false;
        if (!is_of_use(filling, left)) continue;
        used = offer(after(from, filling)) || used;
      }
    }
    return used;
  }

  /// From stocks of which there are enough: by falling choice, so that every way to a state is
  /// known before the ways on from it.
  void cut_the_rest(const std::vector<std::size_t>& endless) {
    std::vector<std::vector<const SheetFilling*>> by_top(code_.items());
    for (const std::size_t s : endless) {
      for (const SheetFilling& filling : in_.fillings[s]) {
        by_top[code_.top(filling.counts)].push_back(&filling);
      }
    }
    for (auto state = states_.begin(); state != states_.end() && state->first != 0; ++state) {
      const auto [left, from] = *state;
      if (is_hopeless(node(from))) continue;
      const std::size_t top = code_.top(left);
      if (known_.unplaced > 0) {
        Node without = node(from);
        ++without.worth.unplaced;
        without.left -= code_.one(top);
        without.from = from;
        without.filling = nullptr;
        offer(without);
      }
      for (const SheetFilling* filling : by_top[top]) {
        if (--steps_ < 0) return;
        if (is_of_use(*filling, left)) offer(after(from, *filling));
      }
    }
  }

  [[nodiscard]] SheetMix trace(int end) const {
    SheetMix mix{{}, node(end).worth};
    for (int n = end; n >= 0; n = node(n).from) {
      if (node(n).filling) mix.loads.push_back(node(n).filling);
    }
    return mix;
  }

  const MixProblem& in_;
  const ChoiceCode& code_;
  MixWorth known_;
  bool equals_;
  long& steps_;
  /// What the sheets still to be offered, of which there are few, may be worth above their cost.
  std::int64_t extra_cost_ = 0, extra_number_ = 0;
  std::vector<std::vector<std::pair<std::int64_t, std::int64_t>>> weights_;  // of the fillings
  std::vector<Node> nodes_;
  std::map<Choice, int, std::greater<>> states_;
};

}  // namespace

std::optional<SheetMix> better_mix(const MixProblem& problem, const MixWorth& known, bool equals,
                                   long& steps) {
  return MixSearch(problem, known, equals, steps).search();
}

}  // namespace strikeoff
