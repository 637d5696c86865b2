// SPDX-License-Identifier: MIT
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff {

// Where the numbers of a plan come from. This registry is the only place that says so: the plan's
// `basis` strings and the command `why` both read it.

/// How well a source is known.
enum class Known {
  read,         // the page was read
  second_hand,  // a page that quotes it was read
  recalled,     // from memory
  practice,     // common practice, no source
  assumption,   // ours; the job can change it or the plan lists it
  definition,   // arithmetic, geometry or the job's own words: there is nothing to look up
};

/// A symbol of a formula and where its value is found: `plan:`, `job:` or `catalogue:` and a JSON
/// Pointer. Values are in the unit of the plan's key; of the job in mm, kg, L, C, min, MPa. A
/// segment of the pointer may be
///
/// - `*`, the next of the indices of the number asked for; `*1` the first of them, `*2` the second
/// - `#`, every element of a list: the symbol is then a list, for sum(), max(), min(), count()
/// - `$`, the last element of a list; `.`, the segment that the number has in the same place
/// - `@key`, the element that the number's own object names by that key: `@second` of a joint is
///   the second batch, `@about` of a check its slab or additive
/// - a name, of a list of objects: the one with that name, code, stock, step, number, …
struct BasisInput {
  std::string_view symbol;
  std::string_view from;
};

/// One number of the plan, or a family of them.
struct BasisEntry {
  std::string_view name;  // as `why` takes it: "evaporation"
  /// JSON Pointers of the plan file, with blanks between: `*` is any index; a check is named by its
  /// code, a material by its stock, a milestone by its step: "/checks/evaporation/value". Where two
  /// patterns fit a number the one with fewer `*` is meant.
  std::string_view numbers;
  std::string_view words;  // how it comes about, one sentence without a full stop
  /// In the symbols of `inputs`, which may be lists; empty: found by a search or a count.
  /// Functions: sum max min count, ceil floor round (rounding errors do not count), exp ln sqrt
  /// abs, if(condition, then, else), and given(symbol), 1 where the job or plan has that value.
  /// max, min and count leave out what is not given; else a formula that needs it has no result.
  std::string_view formula;
  std::initializer_list<BasisInput> inputs;
  std::string_view source = {};  // author or body, title or number, edition, clause; may be empty
  Known known = Known::definition;
};

/// Every entry, by subject.
[[nodiscard]] std::span<const BasisEntry> slab_basis();
[[nodiscard]] std::span<const BasisEntry> form_basis();
[[nodiscard]] std::span<const BasisEntry> cutting_basis();
[[nodiscard]] std::span<const BasisEntry> mix_basis();
[[nodiscard]] std::span<const BasisEntry> pour_basis();
[[nodiscard]] std::span<const BasisEntry> site_basis();
[[nodiscard]] std::span<const BasisEntry> hardening_basis();
[[nodiscard]] std::span<const BasisEntry> load_basis();
[[nodiscard]] std::span<const BasisEntry> handling_basis();
[[nodiscard]] std::span<const BasisEntry> finish_basis();
[[nodiscard]] std::span<const BasisEntry> buying_basis();

/// All of them.
[[nodiscard]] std::vector<const BasisEntry*> all_basis();
/// The entry of that name. Throws std::logic_error for an unknown one.
[[nodiscard]] const BasisEntry& basis_entry(std::string_view name);
/// The entry in one line, as the plan's `basis` keys have it: its words, then its source and how
/// well that is known.
[[nodiscard]] std::string basis(std::string_view name);
/// The same with the numbers of this plan after a colon.
[[nodiscard]] std::string basis(std::string_view name, std::string_view worked);
/// "read", "read in a page that quotes it", "from memory", …
[[nodiscard]] std::string_view known_words(Known known);

}  // namespace strikeoff
