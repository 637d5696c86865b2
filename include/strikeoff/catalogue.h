// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// A thing bought by the pack beside mix, boards and sheets: screws, tape, sealant.
struct Supply {
  std::string id;
  std::string item;       // what the shop calls it, generic
  std::string use;        // what it is for, one line
  std::string unit;       // of `pack`: "screws", "m", "L", "cartridges"
  double pack = 1;        // units in one pack
  std::string pack_name;  // as it stands on the shelf: "box of 100", "roll of 49 ft (15 m)"
  /// Units used for one metre or one square metre of the work `use` names (or for one of it);
  /// 1 where the need is counted directly.
  double rate = 1;
  std::string rate_per;         // "m", "m2", "each"
  std::optional<double> price;  // per pack
  bool operator==(const Supply&) const = default;
};

/// Where a catalogue value comes from: "invented" or "common practice, no source", by key of the
/// entry; the key "" marks every value not named.
using Marks = std::map<std::string, std::string>;

template <class Item>
struct CatalogueEntry {
  Item item;
  Marks marks;
  /// Of a board or a panel: the first one marked for a job's units is that job's default.
  std::optional<Units> units = std::nullopt;
};

/// Generic, invented goods shipped with the program. A job can give every one of them inline.
struct Catalogue {
  std::vector<CatalogueEntry<Mix>> mixes;
  std::vector<CatalogueEntry<Stock>> boards;
  std::vector<CatalogueEntry<Stock>> panels;
  std::vector<CatalogueEntry<Additive>> additives;
  std::vector<CatalogueEntry<Sealer>> sealers;
  std::vector<CatalogueEntry<Supply>> supplies;
};

/// The shipped catalogue, read once from the text embedded in the library.
[[nodiscard]] const Catalogue& shipped_catalogue();

/// The supply with this id. Precondition: the catalogue has it.
[[nodiscard]] const Supply& supply(const Catalogue& catalogue, std::string_view id);

}  // namespace strikeoff
