// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "slab/marks.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Pieces of one strip in their order from the left; more than one where it is spliced.
struct StripRun {
  std::string role;
  char letter = 'E';
  Length width;
  std::vector<Length> pieces;
  double left_cut_deg = 0, right_cut_deg = 0;
  std::string place;
  bool reads_from_left = false;                    // left is as seen from outside the slab
  std::optional<std::size_t> side = std::nullopt;  // that it runs along, where it is a side's
};

[[nodiscard]] Length total(const StripRun& run);

/// Parts of one slab, grouped by what makes them alike, in the order they first came.
class PartList {
 public:
  PartList(std::string slab, std::string stock, MarkCounter& marks);

  /// The run's pieces, cut from the list's stock. Returns their marks: "E1, E3".
  std::string add(const StripRun& run);
  /// Returns its mark.
  std::string add(Part part, char letter);
  [[nodiscard]] std::vector<Part> take() { return std::move(parts_); }

 private:
  using Key =
      std::tuple<std::string, std::string, Length, Length, std::optional<Length>, double, double>;
  std::string slab_, stock_;
  MarkCounter& marks_;
  std::map<Key, std::size_t> index_;
  std::vector<Part> parts_;
  std::vector<std::string> last_place_;
};

}  // namespace strikeoff
