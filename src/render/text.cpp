// SPDX-License-Identifier: MIT
#include "render/text.h"

#include <algorithm>
#include <iterator>

namespace strikeoff::text {
namespace {

/// The words between the escape sequences of ECMA-48 "select graphic rendition".
std::string emphasized(std::string_view words, Emphasis emphasis, const TextPage& page) {
  if (!page.emphasis || emphasis == Emphasis::none) return std::string(words);
  const std::string_view code = emphasis == Emphasis::stop      ? "1;31"  // bold, red
                                : emphasis == Emphasis::caution ? "33"    // yellow
                                                                : "1";
  std::string result = "\x1b[";
  result.append(code).append("m").append(words).append("\x1b[0m");
  return result;
}

/// The label with its words made to stand out and its spaces left alone.
std::string label_of(const Paragraph& paragraph, const TextPage& page) {
  const std::string label = clean(paragraph.label);
  const std::size_t first = label.find_first_not_of(' ');
  if (first == std::string::npos) return label;
  const std::size_t last = label.find_last_not_of(' ') + 1;
  return label.substr(0, first) +
         emphasized(label.substr(first, last - first), paragraph.emphasis, page) +
         label.substr(last);
}

std::string laid_out(const std::string& lines, const TextPage&) {
  return lines;
}

std::string laid_out(const Paragraph& paragraph, const TextPage& page) {
  const std::size_t indent = columns(clean(paragraph.label));
  std::string result;
  for (const std::string& line :
       wrap(paragraph.text, page.width - std::min(indent, page.width / 2))) {
    std::string full =
        (result.empty() ? label_of(paragraph, page) : std::string(indent, ' ')) + line;
    trim_right(full);
    result += full + "\n";
  }
  return result;
}

std::string laid_out(const Heading& heading, const TextPage& page) {
  std::string result;
  std::size_t widest = 0;
  for (const std::string& line : wrap(heading.title, page.width)) {
    result += emphasized(line, Emphasis::heading, page) + "\n";
    widest = std::max(widest, columns(line));
  }
  return result + std::string(widest, heading.underline) + "\n";
}

std::string laid_out(const PlacedTable& placed, const TextPage& page) {
  return placed.table.str(placed.indent, page.width);
}

}  // namespace

Text::Text(std::string lines) {
  if (!lines.empty()) blocks_.emplace_back(std::move(lines));
}

Text& Text::operator+=(Text more) {
  blocks_.insert(blocks_.end(), std::make_move_iterator(more.blocks_.begin()),
                 std::make_move_iterator(more.blocks_.end()));
  return *this;
}

std::string Text::str(const TextPage& page) const {
  std::string result;
  for (const auto& block : blocks_) {
    if (std::holds_alternative<Heading>(block) && !result.empty()) result += "\n";
    result += std::visit([&](const auto& one) { return laid_out(one, page); }, block);
  }
  return result;
}

Text paragraph(std::string_view label, std::string_view text, Emphasis emphasis) {
  return Text(Paragraph{std::string(label), std::string(text), emphasis});
}

Text heading(std::string_view title) {
  return Text(Heading{std::string(title)});
}

Text placed(Table table, std::size_t indent) {
  return Text(PlacedTable{std::move(table), indent});
}

}  // namespace strikeoff::text
