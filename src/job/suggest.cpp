// SPDX-License-Identifier: MIT
#include "job/suggest.h"

#include <algorithm>
#include <array>
#include <utility>

namespace strikeoff {
namespace {

/// Words people use for sizes, and ours, the likeliest first.
constexpr std::array<std::pair<std::string_view, std::string_view>, 9> other_words{{
    {"width", "depth"},
    {"breadth", "depth"},
    {"deep", "depth"},
    {"wide", "depth"},
    {"long", "length"},
    {"depth", "thickness"},
    {"height", "thickness"},
    {"thick", "thickness"},
    {"height", "depth"},
}};

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replace});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
  // A word of any length may come in; beyond 80 letters it resembles no key of ours.
  if (word.size() > 80) return {};
  const std::size_t limit = word.size() < 3 ? 0 : std::clamp<std::size_t>(word.size() / 3, 1, 3);
  std::string best;
  std::size_t least = limit + 1;
  for (const std::string& candidate : known) {
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

std::string meant_by(std::string_view word, const std::vector<std::string>& known) {
  const std::string near = nearest(word, known);
  if (!near.empty()) return near;
  const auto is_known = [&](std::string_view key) {
    return std::find(known.begin(), known.end(), key) != known.end();
  };
  for (const auto& [other, key] : other_words) {
    if (word == other && is_known(key)) return std::string(key);
  }
  return {};
}

std::string quoted_list(const std::vector<std::string>& words, std::string_view last) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " " + std::string(last) + " " : ", ";
    list += '"' + words[i] + '"';
  }
  return list;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known,
                         const std::string& otherwise) {
  const std::string meant = meant_by(word, known);
  return meant.empty() ? otherwise : "did you mean \"" + meant + "\"?";
}

}  // namespace strikeoff
