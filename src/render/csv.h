// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace strikeoff::csv {

/// Text as a cell, not quoted yet: without control characters, so that a row stays on its line;
/// with an apostrophe before a text that a spreadsheet would take for a formula, which begins with
/// one of = + - @ after blanks.
[[nodiscard]] std::string cell(std::string_view text);
/// The shortest number that reads back as the same double, decimal point, never -0. Throws
/// std::logic_error for NaN and infinity: a plan holds none.
[[nodiscard]] std::string cell(double number);
[[nodiscard]] std::string cell(int number);

/// A table as RFC 4180 writes it.
class CsvSheet {
 public:
  explicit CsvSheet(std::vector<std::string> header) { add(std::move(header)); }
  /// Precondition: as many cells as the header.
  void add(const std::vector<std::string>& cells);
  [[nodiscard]] std::string str() const { return text_; }

 private:
  std::string text_;
};

}  // namespace strikeoff::csv
