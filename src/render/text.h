// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "render/text_table.h"
#include "strikeoff/render.h"

namespace strikeoff::text {

/// What is made to stand out on a terminal. The words say it too: colour is never alone.
enum class Emphasis { none, heading, stop, caution };

/// A label and a text that hangs under it.
struct Paragraph {
  std::string label;
  std::string text;
  Emphasis emphasis = Emphasis::none;  // of the label
  bool operator==(const Paragraph&) const = default;
};

/// An underlined line, with an empty line before it except at the very top.
struct Heading {
  std::string title;
  char underline = '-';
  bool operator==(const Heading&) const = default;
};

/// A table so many columns from the left.
struct PlacedTable {
  Table table;
  std::size_t indent = 0;
  bool operator==(const PlacedTable&) const = default;
};

/// Lines of our own, or one of those.
using Block = std::variant<std::string, Paragraph, Heading, PlacedTable>;

/// Whole lines, not laid out yet: how wide the page is and whether it has colours is only known
/// where they are printed. Text of a job file loses its control characters on the way.
class Text {
 public:
  Text() = default;
  /// Lines of the program's own that fit any page.
  Text(const char* lines) : Text(std::string(lines)) {}
  Text(std::string lines);
  explicit Text(Paragraph paragraph) : blocks_{std::move(paragraph)} {}
  explicit Text(Heading heading) : blocks_{std::move(heading)} {}
  explicit Text(PlacedTable table) : blocks_{std::move(table)} {}

  Text& operator+=(Text more);
  friend Text operator+(Text first, Text second) {
    first += std::move(second);
    return first;
  }
  [[nodiscard]] bool empty() const { return blocks_.empty(); }
  [[nodiscard]] const std::vector<Block>& blocks() const { return blocks_; }
  bool operator==(const Text&) const = default;

  /// The lines, each ended.
  [[nodiscard]] std::string str(const TextPage& page = {}) const;

 private:
  std::vector<Block> blocks_;
};

/// A wrapped paragraph within the page: `label` stands before the first line and as many spaces
/// before the others.
[[nodiscard]] Text paragraph(std::string_view label, std::string_view text,
                             Emphasis emphasis = Emphasis::none);

/// "SHOP" underlined, with an empty line before it.
[[nodiscard]] Text heading(std::string_view title);

[[nodiscard]] Text placed(Table table, std::size_t indent = 2);

}  // namespace strikeoff::text
