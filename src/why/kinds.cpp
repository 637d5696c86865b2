// SPDX-License-Identifier: MIT
#include "why/kinds.h"

#include <algorithm>
#include <map>
#include <set>

namespace strikeoff {
namespace {

std::size_t stars(const Path& pattern) {
  return static_cast<std::size_t>(std::count(pattern.begin(), pattern.end(), "*"));
}

}  // namespace

std::vector<BasisPattern> basis_patterns() {
  std::vector<BasisPattern> patterns;
  for (const BasisEntry* entry : all_basis()) {
    std::string_view rest = entry->numbers;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      if (end > 0) patterns.push_back({entry, path_of(rest.substr(0, end))});
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }
  return patterns;
}

Kinds::Kinds(const PlanFile& file) : file_(file) {
  // Only patterns of a number's length and last key can fit it.
  std::map<std::pair<std::size_t, std::string>, std::vector<BasisPattern>> by_end;
  for (BasisPattern& pattern : basis_patterns()) {
    by_end[{pattern.path.size(), pattern.path.back()}].push_back(std::move(pattern));
  }
  numbers_.reserve(file.numbers().size());
  for (const PlanFile::Number& number : file.numbers()) {
    NumberBasis basis;
    basis.number = &number;
    const std::size_t size = number.path.size();
    const bool in_list = file.is_index(number.path, size - 1);
    const auto patterns = by_end.find({size, in_list ? "*" : number.path.back()});
    if (patterns != by_end.end()) set_entry(patterns->second, basis);
    numbers_.push_back(std::move(basis));
  }
  set_names();
}

bool Kinds::fits(const Path& pattern, const Path& path) const {
  if (pattern.size() != path.size()) return false;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (pattern[i] == path[i]) continue;
    if (!file_.is_index(path, i)) return false;
    if (pattern[i] == "*") continue;
    if (is_index_text(pattern[i])) return false;
    const Path to(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    const Json* const element = file_.find(to);
    if (!element || !goes_by(*element, pattern[i])) return false;
  }
  return true;
}

void Kinds::set_entry(const std::vector<BasisPattern>& patterns, NumberBasis& number) const {
  const BasisPattern* best = nullptr;
  for (const BasisPattern& pattern : patterns) {
    if (best && stars(pattern.path) >= stars(best->path)) continue;
    if (fits(pattern.path, number.number->path)) best = &pattern;
  }
  if (!best) return;
  number.entry = best->entry;
  for (std::size_t i = 0; i < best->path.size(); ++i) {
    if (best->path[i] == "*") number.indices.push_back(std::stoul(number.number->path[i]));
  }
}

std::vector<const NumberBasis*> Kinds::of(const BasisEntry& entry) const {
  std::vector<const NumberBasis*> numbers;
  for (const NumberBasis& number : numbers_) {
    if (number.entry == &entry) numbers.push_back(&number);
  }
  return numbers;
}

/// "edge-wait/2" by its indices; "lift/2" as the second of several without; alone just the name.
void Kinds::set_names() {
  std::map<const BasisEntry*, std::size_t> sizes, seen;
  for (const NumberBasis& number : numbers_) ++sizes[number.entry];
  std::set<std::string> taken;
  for (NumberBasis& number : numbers_) {
    number.name = pointer_of(number.number->path);
    if (!number.entry) continue;
    std::string name(number.entry->name);
    const std::size_t place = ++seen[number.entry];
    if (sizes[number.entry] > 1) {
      if (number.indices.empty()) name += "/" + std::to_string(place);
      for (const std::size_t index : number.indices) name += "/" + std::to_string(index + 1);
    }
    if (taken.insert(name).second) number.name = std::move(name);
  }
}

const NumberBasis* Kinds::at(std::string_view pointer) const {
  const Path path = path_of(pointer);
  const auto found = std::find_if(numbers_.begin(), numbers_.end(), [&](const auto& number) {
    return number.number->path.back() == path.back() && fits(path, number.number->path);
  });
  return found == numbers_.end() ? nullptr : &*found;
}

const NumberBasis* Kinds::named(std::string_view name) const {
  const NumberBasis* first = nullptr;
  for (const NumberBasis& number : numbers_) {
    if (number.name == name) return &number;
    if (!first && number.entry && number.entry->name == name) first = &number;
  }
  return first;
}

}  // namespace strikeoff
