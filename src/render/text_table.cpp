// SPDX-License-Identifier: MIT
#include "render/text_table.h"

#include <algorithm>
#include <numeric>

#include "core/ascii.h"
#include "core/unicode.h"

namespace strikeoff::text {
namespace {

constexpr std::size_t column_gap = 2;

/// A hyphen between letters, as in "cold-joint"; not one of a date or a sign.
bool is_hyphen(std::string_view word, std::size_t i) {
  return word[i] == '-' && i > 0 && i + 1 < word.size() && is_letter(word[i - 1]) &&
         is_letter(word[i + 1]);
}

/// Columns of the longest piece of a text that needs no break inside a word.
std::size_t longest_piece(std::string_view text) {
  std::size_t longest = 0, start = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool hyphen = i < text.size() && is_hyphen(text, i);
    if (i < text.size() && text[i] != ' ' && !hyphen) continue;
    longest = std::max(longest, columns(text.substr(start, i - start + (hyphen ? 1 : 0))));
    start = i + 1;
  }
  return longest;
}

/// The longest start of the text that fits in `width` columns, up to a hyphen if there is one; at
/// least one character.
std::string_view prefix(std::string_view text, std::size_t width) {
  std::size_t used = 0;
  std::size_t end = 0;
  while (end < text.size()) {
    const Character c = first_character(text.substr(end));
    used += is_wide(c.code) ? 2U : 1U;
    if (used > width && end > 0) break;
    end += std::max<std::size_t>(c.bytes, 1);
  }
  if (end < text.size()) {
    for (std::size_t i = end; i-- > 1;) {
      if (is_hyphen(text, i)) return text.substr(0, i + 1);
    }
  }
  return text.substr(0, end);
}

std::string padded(std::string_view cell, std::size_t width, Align align) {
  const std::string space(width - std::min(width, columns(cell)), ' ');
  return align == Align::left ? std::string(cell) + space : space + std::string(cell);
}

}  // namespace

std::string clean(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const Character c = first_character(text);
    if (c.bytes == 0) {
      result += '?';
    } else if (is_unprintable(c.code)) {
      result += ' ';
    } else {
      result += text.substr(0, c.bytes);
    }
    text.remove_prefix(std::max<std::size_t>(c.bytes, 1));
  }
  return result;
}

void trim_right(std::string& line) {
  line.erase(line.find_last_not_of(' ') + 1);
}

std::size_t columns(std::string_view text) {
  std::size_t used = 0;
  while (!text.empty()) {
    const Character c = first_character(text);
    used += is_wide(c.code) ? 2U : 1U;
    text.remove_prefix(std::max<std::size_t>(c.bytes, 1));
  }
  return used;
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  const std::string safe = clean(text);
  std::vector<std::string> lines(1);
  std::string_view rest = safe;
  while (true) {
    rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
    if (rest.empty()) return lines;
    std::string_view word = rest.substr(0, rest.find(' '));
    const std::size_t gap = lines.back().empty() ? 0 : 1;
    if (columns(lines.back()) + gap + columns(word) > width) {
      if (gap == 1) {
        lines.emplace_back();
        continue;
      }
      word = prefix(word, width);
    }
    lines.back().append(gap, ' ').append(word);
    rest.remove_prefix(word.size());
  }
}

void Table::add(std::vector<std::string> cells) {
  for (std::string& cell : cells) cell = clean(cell);
  rows_.push_back(std::move(cells));
}

bool Table::has_titles() const {
  return std::any_of(columns_.begin(), columns_.end(),
                     [](const Column& column) { return !column.title.empty(); });
}

std::vector<std::size_t> Table::widths(std::size_t room) const {
  std::vector<std::size_t> result, whole;  // `whole`: no word is broken
  for (std::size_t k = 0; k < columns_.size(); ++k) {
    std::size_t widest = std::max<std::size_t>(text::columns(columns_[k].title), 1);
    std::size_t piece = std::max<std::size_t>(longest_piece(columns_[k].title), 1);
    for (const auto& row : rows_) {
      widest = std::max(widest, text::columns(row[k]));
      piece = std::max(piece, longest_piece(row[k]));
    }
    result.push_back(widest);
    whole.push_back(piece);
  }
  const std::size_t gaps = column_gap * (result.size() - 1);
  std::size_t total = std::accumulate(result.begin(), result.end(), gaps);
  const auto narrow = [&](const std::vector<std::size_t>& least) {
    while (total > room) {
      std::size_t widest = result.size();
      for (std::size_t k = 0; k < result.size(); ++k) {
        if (result[k] <= least[k]) continue;
        if (widest == result.size() || result[k] > result[widest]) widest = k;
      }
      if (widest == result.size()) return;
      --result[widest];
      --total;
    }
  };
  narrow(whole);
  narrow(std::vector<std::size_t>(result.size(), 1));
  return result;
}

std::string Table::str(std::size_t indent, std::size_t page) const {
  const std::vector<std::size_t> width = widths(page - indent);
  std::string result;
  const auto print = [&](const std::vector<std::string>& cells) {
    std::vector<std::vector<std::string>> wrapped;
    std::size_t height = 1;
    for (std::size_t k = 0; k < cells.size(); ++k) {
      wrapped.push_back(wrap(cells[k], width[k]));
      height = std::max(height, wrapped.back().size());
    }
    for (std::size_t i = 0; i < height; ++i) {
      std::string line(indent, ' ');
      for (std::size_t k = 0; k < cells.size(); ++k) {
        const std::string cell = i < wrapped[k].size() ? wrapped[k][i] : "";
        line += padded(cell, width[k], columns_[k].align) + std::string(column_gap, ' ');
      }
      trim_right(line);
      result += line + "\n";
    }
  };
  if (has_titles()) {
    std::vector<std::string> titles;
    for (const Column& column : columns_) titles.push_back(column.title);
    print(titles);
  }
  for (const auto& row : rows_) print(row);
  return result;
}

}  // namespace strikeoff::text
