// SPDX-License-Identifier: MIT
#include "basis/basis.h"

#include <stdexcept>

namespace strikeoff {

std::vector<const BasisEntry*> all_basis() {
  std::vector<const BasisEntry*> entries;
  for (const auto& subject :
       {slab_basis(), form_basis(), cutting_basis(), mix_basis(), pour_basis(), site_basis(),
        hardening_basis(), load_basis(), handling_basis(), finish_basis(), buying_basis()}) {
    for (const BasisEntry& entry : subject) entries.push_back(&entry);
  }
  return entries;
}

const BasisEntry& basis_entry(std::string_view name) {
  for (const BasisEntry* entry : all_basis()) {
    if (entry->name == name) return *entry;
  }
  throw std::logic_error("no basis is named " + std::string(name));
}

std::string_view known_words(Known known) {
  switch (known) {
    case Known::read:
      return "read";
    case Known::second_hand:
      return "read in a page that quotes it";
    case Known::recalled:
      return "from memory";
    case Known::practice:
      return "common practice, no source";
    case Known::assumption:
      return "assumption";
    case Known::definition:
      return "";
  }
  return "";
}

std::string basis(std::string_view name) {
  const BasisEntry& entry = basis_entry(name);
  std::string text(entry.words);
  if (!entry.source.empty()) text.append("; ").append(entry.source);
  const std::string_view known = known_words(entry.known);
  if (known.empty()) return text;
  return entry.source.empty() ? text.append(" (").append(known).append(")")
                              : text.append(", ").append(known);
}

std::string basis(std::string_view name, std::string_view worked) {
  return basis(name).append(": ").append(worked);
}

}  // namespace strikeoff
