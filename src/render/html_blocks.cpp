// SPDX-License-Identifier: MIT
#include "render/html_blocks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <vector>

#include "core/markup.h"

namespace strikeoff::html {
namespace {

constexpr std::string_view box = "<span class=\"box\" role=\"img\" aria-label=\"to tick\"></span>";
constexpr std::string_view tick_title = "<th scope=\"col\" class=\"tick\">Done</th>";

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \n") - first + 1);
}

/// A column of figures that may stand on one line in a page of A4.
bool is_narrow(const text::Table& table, std::size_t column) {
  constexpr std::size_t most = 18;  // letters
  return table.columns()[column].align == text::Align::right &&
         std::all_of(table.rows().begin(), table.rows().end(),
                     [&](const auto& row) { return text::columns(row[column]) <= most; });
}

bool has_boxes(const text::Table& table) {
  return table.columns().front().title == "[ ]";
}

std::string title_row(const text::Table& table, Ticks ticks) {
  std::string row = ticks == Ticks::rows ? std::string(tick_title) : "";
  for (const text::Column& column : table.columns()) {
    if (column.title == "[ ]") {
      row += tick_title;
    } else {
      row += fmt::format("<th scope=\"col\"{}>{}</th>",
                         column.align == text::Align::right ? " class=\"right\"" : "",
                         markup(column.title));
    }
  }
  return "<thead><tr>" + row + "</tr></thead>\n";
}

std::string html(const text::PlacedTable& placed, Ticks ticks) {
  const text::Table& table = placed.table;
  const std::size_t head = has_boxes(table) ? 1 : 0;  // the column that names the row
  std::vector<std::string> classes;
  for (std::size_t k = 0; k < table.columns().size(); ++k) {
    const bool right = table.columns()[k].align == text::Align::right;
    classes.emplace_back(is_narrow(table, k) ? " class=\"right narrow\""
                         : right             ? " class=\"right\""
                                             : "");
  }
  std::string body;
  for (const auto& row : table.rows()) {
    body += ticks == Ticks::rows ? fmt::format("<tr><td class=\"tick\">{}</td>", box) : "<tr>";
    for (std::size_t k = 0; k < row.size(); ++k) {
      if (row[k] == "[ ]") {
        body += fmt::format("<td class=\"tick\">{}</td>", box);
      } else if (k == head) {
        body += fmt::format("<th scope=\"row\"{}>{}</th>", classes[k], markup(row[k]));
      } else {
        body += fmt::format("<td{}>{}</td>", classes[k], markup(row[k]));
      }
    }
    body += "</tr>\n";
  }
  return fmt::format("<table>\n{}<tbody>\n{}</tbody>\n</table>\n",
                     table.has_titles() ? title_row(table, ticks) : "", body);
}

std::string html(const text::Paragraph& one, Ticks /*ticks*/) {
  const std::string_view label = trimmed(one.label);
  const std::string words = markup(one.text);
  if (label == "-") return fmt::format("<p class=\"item\">{}</p>\n", words);
  if (!label.empty()) return fmt::format("<p><b>{}</b> {}</p>\n", markup(label), words);
  constexpr std::size_t usual_indent = 2;
  return fmt::format("<p{}>{}</p>\n", one.label.size() > usual_indent ? " class=\"under\"" : "",
                     words);
}

std::string html(const text::Heading& heading, Ticks /*ticks*/) {
  return heading.underline == '=' ? fmt::format("<h1>{}</h1>\n", markup(heading.title)) : "";
}

std::string html(const std::string& lines, Ticks /*ticks*/) {
  const std::string_view words = trimmed(lines);
  return words.empty() ? "" : fmt::format("<p>{}</p>\n", markup(words));
}

}  // namespace

std::string blocks(const text::Text& text, Ticks ticks) {
  std::string result;
  for (const text::Block& block : text.blocks()) {
    result += std::visit([&](const auto& one) { return html(one, ticks); }, block);
  }
  return result;
}

std::string section(std::string_view id, std::string_view title, const std::string& content) {
  if (content.empty()) return "";
  return fmt::format(
      "<section id=\"{0}\" aria-labelledby=\"{0}-title\">\n<h2 id=\"{0}-title\">"
      "{1}</h2>\n{2}</section>\n",
      id, markup(title), content);
}

}  // namespace strikeoff::html
