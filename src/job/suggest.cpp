// SPDX-License-Identifier: MIT
#include "job/suggest.h"

#include <algorithm>

namespace strikeoff {

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
  const std::string near = nearest(word, known);
  return near.empty() ? otherwise : "did you mean \"" + near + "\"?";
}

}  // namespace strikeoff
