// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <string>

#include "core/format.h"
#include "core/json.h"
#include "strikeoff/diagnostic.h"

namespace strikeoff {
namespace {

constexpr std::size_t widest_line = 90;  // characters of the user's line shown
constexpr std::size_t lead = 30;         // of them before the marker, in a line cut short

/// A character a terminal shows and does not act on: a blank for a tab or a control, "?" for bytes
/// that are no UTF-8.
std::string printable(const std::string& character) {
  const auto first = static_cast<unsigned char>(character[0]);
  if (first < 0x80U) return first < 0x20U || first == 0x7FU ? " " : character;
  const std::size_t bytes = first >= 0xF0U ? 4 : first >= 0xE0U ? 3 : 2;
  if (first < 0xC2U || character.size() != bytes) return "?";
  const bool control = first == 0xC2U && static_cast<unsigned char>(character[1]) < 0xA0U;
  return control ? " " : character;
}

/// The characters of a text, each as its own; blanks for tabs and controls.
std::vector<std::string> characters_of(std::string_view text) {
  std::vector<std::string> characters;
  for (const char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0U) == 0x80U && !characters.empty()) {
      characters.back() += c;
    } else {
      characters.emplace_back(1, c);
    }
  }
  for (std::string& character : characters) character = printable(character);
  return characters;
}

/// Words that may quote the job file, made safe to print.
std::string shown(std::string_view text) {
  std::string result;
  for (const std::string& character : characters_of(text)) result += character;
  return result;
}

/// The characters of one line (from 1).
std::vector<std::string> characters_of_line(std::string_view text, int line) {
  for (int i = 1; i < line; ++i) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (line == 1 && text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.ends_with('\r')) text.remove_suffix(1);
  return characters_of(text);
}

/// The line with its number, and the marker under it; a long line is cut on both sides.
std::string excerpt(const Diagnostic& d, std::string_view text) {
  auto characters = characters_of_line(text, d.line);
  std::size_t start = static_cast<std::size_t>(std::max(1, d.column)) - 1;
  std::size_t width = static_cast<std::size_t>(std::max(1, d.width));
  std::string before, after;
  if (characters.size() > widest_line) {
    const std::size_t from = start > lead ? start - lead : 0;
    const std::size_t to = std::min(characters.size(), from + widest_line);
    if (from > 0) before = "...";
    if (to < characters.size()) after = "...";
    characters = {characters.begin() + static_cast<std::ptrdiff_t>(std::min(from, to)),
                  characters.begin() + static_cast<std::ptrdiff_t>(to)};
    start = start - from + before.size();
    width = std::min(width, before.size() + (to - from) - std::min(start, to - from));
  }
  std::string line = characters.empty() ? "" : " " + before;
  for (const std::string& character : characters) line += character;
  return fmt::format("{:>5} |{}\n{:>5} | {}{}\n", d.line, line + after, "", std::string(start, ' '),
                     std::string(std::max<std::size_t>(width, 1), '^'));
}

}  // namespace

std::string render_diagnostics(const std::vector<Diagnostic>& diagnostics, std::string_view file,
                               std::string_view text) {
  std::string out;
  for (const Diagnostic& d : diagnostics) {
    out +=
        fmt::format("{}:{}:{}: error: {} [{}]\n", file, d.line, d.column, shown(d.message), d.code);
    out += excerpt(d, text);
    if (!d.pointer.empty()) out += fmt::format("  at {}\n", shown(d.pointer));
    if (!d.help.empty()) out += fmt::format("  help: {}\n", shown(d.help));
  }
  const bool cut_short = !diagnostics.empty() && diagnostics.back().code == "more-problems";
  const int shown = static_cast<int>(diagnostics.size()) - (cut_short ? 1 : 0);
  out += (cut_short ? "more than " : "") + count(shown, "error", "errors") + "; no plan was made\n";
  return out;
}

std::string render_diagnostics_json(const std::vector<Diagnostic>& diagnostics,
                                    std::string_view file) {
  Json::List list;
  for (const Diagnostic& d : diagnostics) {
    list.push_back(Json{{"file", file},
                        {"line", d.line},
                        {"column", d.column},
                        {"pointer", d.pointer},
                        {"severity", "error"},
                        {"code", d.code},
                        {"message", d.message},
                        {"help", d.help}});
  }
  // Escaped beyond ASCII, so that a control character of a quoted key reaches no terminal.
  return json_file(list, BeyondAscii::escaped);
}

}  // namespace strikeoff
