// SPDX-License-Identifier: MIT
#include "render/csv.h"

#include <fmt/core.h>

#include <cmath>
#include <stdexcept>

#include "render/text_table.h"

namespace strikeoff::csv {
namespace {

/// RFC 4180, 2.6 and 2.7.
std::string quoted(const std::string& cell) {
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string result = "\"";
  for (const char c : cell) {
    if (c == '"') result += '"';
    result += c;
  }
  return result + '"';
}

}  // namespace

std::string cell(std::string_view text) {
  const std::string safe = text::clean(text);
  const std::size_t first = safe.find_first_not_of(' ');
  const bool formula = first != std::string::npos &&
                       std::string_view("=+-@").find(safe[first]) != std::string_view::npos;
  return formula ? "'" + safe : safe;
}

std::string cell(double number) {
  if (!std::isfinite(number)) throw std::logic_error("a number of the plan is not finite");
  return fmt::format("{}", number + 0.0);  // -0 + 0 is 0
}

std::string cell(int number) {
  return fmt::format("{}", number);
}

void CsvSheet::add(const std::vector<std::string>& cells) {
  for (std::size_t k = 0; k < cells.size(); ++k) {
    text_ += (k == 0 ? "" : ",") + quoted(cells[k]);
  }
  text_ += "\r\n";
}

}  // namespace strikeoff::csv
