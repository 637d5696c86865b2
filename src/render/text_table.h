// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff::text {

/// Text from a job file made safe to print: control characters and the invisible characters that
/// turn the direction of a line become a space, bytes that are not UTF-8 become "?".
[[nodiscard]] std::string clean(std::string_view text);

/// Columns the text takes on a terminal: a wide East Asian character takes two.
[[nodiscard]] std::size_t columns(std::string_view text);
/// Without the blanks at its end.
void trim_right(std::string& line);

/// The text, cleaned, in lines of at most `width` columns, broken at spaces; a word longer than a
/// line is broken anywhere. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

enum class Align { left, right };

struct Column {
  std::string title;  // a table whose titles are all empty has no title line
  Align align = Align::left;
  bool operator==(const Column&) const = default;
};

/// A table that always fits the page: while it is too wide its widest column gives way, and the
/// cells there wrap. Words are broken only when no column can give way any more without.
class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// Precondition: as many cells as columns.
  void add(std::vector<std::string> cells);
  [[nodiscard]] bool empty() const { return rows_.empty(); }
  [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }
  [[nodiscard]] const std::vector<std::vector<std::string>>& rows() const { return rows_; }
  [[nodiscard]] bool has_titles() const;
  /// Its lines, each of at most `width` columns, `indent` of them empty.
  [[nodiscard]] std::string str(std::size_t indent, std::size_t width) const;
  bool operator==(const Table&) const = default;

 private:
  [[nodiscard]] std::vector<std::size_t> widths(std::size_t room) const;

  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace strikeoff::text
