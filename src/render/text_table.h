// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff::text {

/// No line of the text plan is wider than this.
inline constexpr std::size_t page_width = 100;

/// Text from a job file made safe to print: control characters and the invisible characters that
/// turn the direction of a line become a space, bytes that are not UTF-8 become "?".
[[nodiscard]] std::string clean(std::string_view text);

/// Columns the text takes on a terminal: a wide East Asian character takes two.
[[nodiscard]] std::size_t columns(std::string_view text);

/// The text, cleaned, in lines of at most `width` columns, broken at spaces; a word longer than a
/// line is broken anywhere. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// A wrapped paragraph within the page, each line ended: `first` stands before the first line and
/// as many spaces before the others.
[[nodiscard]] std::string paragraph(std::string_view first, std::string_view text);

/// "SHOP" underlined, with an empty line before it.
[[nodiscard]] std::string heading(std::string_view title);

enum class Align { left, right };

struct Column {
  std::string title;  // a table whose titles are all empty has no title line
  Align align = Align::left;
};

/// A table that always fits the page: while it is too wide its widest column gives way, and the
/// cells there wrap.
class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// Precondition: as many cells as columns.
  void add(std::vector<std::string> cells);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  [[nodiscard]] std::string str(std::size_t indent = 2) const;

 private:
  [[nodiscard]] std::vector<std::size_t> widths(std::size_t room) const;

  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace strikeoff::text
