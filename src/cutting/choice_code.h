// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace strikeoff {

/// How many of each item, packed in one number: counts side by side, each with a guard bit above
/// it that is clear. Choices add and subtract as numbers, and one that holds another is the larger.
using Choice = std::uint64_t;

class ChoiceCode {
 public:
  /// Nothing when the counts need more than 64 bits.
  static std::optional<ChoiceCode> for_demands(const std::vector<int>& demands);

  [[nodiscard]] std::size_t items() const { return shifts_.size(); }
  [[nodiscard]] Choice one(std::size_t item) const { return Choice{1} << shifts_[item]; }
  [[nodiscard]] Choice all() const { return all_; }
  [[nodiscard]] int count(Choice choice, std::size_t item) const {
    return static_cast<int>((choice >> shifts_[item]) & (guard(item) / one(item) - 1));
  }
  /// The last item of a choice that is not empty.
  [[nodiscard]] std::size_t top(Choice choice) const;
  /// A borrow clears the guard of a count that is too small.
  [[nodiscard]] bool is_part(Choice part, Choice whole) const {
    return (((whole | guards_) - part) & guards_) == guards_;
  }
  /// The guards of the items in the choice.
  [[nodiscard]] Choice present(Choice choice) const {
    return ((choice | guards_) - ones_) & guards_;
  }
  [[nodiscard]] Choice guard(std::size_t item) const { return guard_of_[item]; }

 private:
  std::vector<int> shifts_;
  std::vector<Choice> guard_of_;
  Choice guards_ = 0, ones_ = 0, all_ = 0;
};

}  // namespace strikeoff
