// SPDX-License-Identifier: MIT
#include "render/html_blocks.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>
#include <vector>

#include "core/markup.h"
#include "core/unicode.h"

namespace strikeoff::html {
namespace {

constexpr std::string_view box = "<span class=\"box\" role=\"img\" aria-label=\"to tick\"></span>";
constexpr std::string_view tick_title = "<th scope=\"col\" class=\"tick\">Done</th>";

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \n") - first + 1);
}

/// Text of a cell or a paragraph. A word that is too long for a column may break after a slash and
/// every so many letters.
std::string words(std::string_view text) {
  constexpr std::size_t most = 20;
  std::string result;
  std::u32string run;
  std::size_t letters = 0;
  for (const char32_t point : code_points(text)) {
    run += point;
    letters = point == U' ' ? 0 : letters + 1;
    if (letters == most || (point == U'/' && letters > 1)) {
      result += markup(utf8(run)) + "<wbr>";
      run.clear();
      letters = 0;
    }
  }
  return result + markup(utf8(run));
}

/// Columns that stand on one line: short ones from the left on, as long as they leave room for the
/// rest on paper of A4.
std::vector<bool> narrow_columns(const text::Table& table) {
  constexpr std::size_t most = 18, room = 44;  // letters
  std::vector<bool> result;
  std::size_t used = 0;
  for (std::size_t k = 0; k < table.columns().size(); ++k) {
    std::size_t widest = 0;
    for (const auto& row : table.rows()) widest = std::max(widest, text::columns(row[k]));
    result.push_back(widest <= most && used + widest <= room);
    if (result.back()) used += widest;
  }
  return result;
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
  const std::vector<bool> narrow = narrow_columns(table);
  std::vector<std::string> classes;
  for (std::size_t k = 0; k < table.columns().size(); ++k) {
    const bool right = table.columns()[k].align == text::Align::right;
    classes.emplace_back(narrow[k] && right ? " class=\"right narrow\""
                         : right            ? " class=\"right\""
                         : narrow[k]        ? " class=\"narrow\""
                                            : "");
  }
  std::string body;
  for (const auto& row : table.rows()) {
    body += ticks == Ticks::rows ? fmt::format("<tr><td class=\"tick\">{}</td>", box) : "<tr>";
    for (std::size_t k = 0; k < row.size(); ++k) {
      if (row[k] == "[ ]") {
        body += fmt::format("<td class=\"tick\">{}</td>", box);
      } else if (k == head) {
        body += fmt::format("<th scope=\"row\"{}>{}</th>", classes[k], words(row[k]));
      } else {
        body += fmt::format("<td{}>{}</td>", classes[k], words(row[k]));
      }
    }
    body += "</tr>\n";
  }
  return fmt::format("<table>\n{}<tbody>\n{}</tbody>\n</table>\n",
                     table.has_titles() ? title_row(table, ticks) : "", body);
}

std::string html(const text::Paragraph& one, Ticks /*ticks*/) {
  const std::string_view label = trimmed(one.label);
  const std::string told = words(one.text);
  if (label == "-") return fmt::format("<p class=\"item\">{}</p>\n", told);
  if (!label.empty()) return fmt::format("<p><b>{}</b> {}</p>\n", words(label), told);
  constexpr std::size_t usual_indent = 2;
  return fmt::format("<p{}>{}</p>\n", one.label.size() > usual_indent ? " class=\"under\"" : "",
                     told);
}

std::string html(const text::Heading& heading, Ticks /*ticks*/) {
  return heading.underline == '=' ? fmt::format("<h1>{}</h1>\n", words(heading.title)) : "";
}

std::string html(const std::string& lines, Ticks /*ticks*/) {
  const std::string_view told = trimmed(lines);
  return told.empty() ? "" : fmt::format("<p>{}</p>\n", words(told));
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
