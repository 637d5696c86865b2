// SPDX-License-Identifier: MIT
#include "why/origin.h"

#include <algorithm>
#include <optional>

#include "why/plan_file.h"

namespace strikeoff {
namespace {

/// True when `path` is the pointer or what holds it.
bool covers_pointer(const std::string& path, const std::string& pointer) {
  return pointer.starts_with(path) &&
         (pointer.size() == path.size() || pointer[path.size()] == '/');
}

/// The entry with the longest path that covers the pointer; null where there is none.
template <class Entry>
const Entry* nearest_entry(const std::vector<Entry>& entries, const std::string& pointer) {
  const Entry* best = nullptr;
  for (const Entry& entry : entries) {
    if (!covers_pointer(entry.path, pointer)) continue;
    if (!best || entry.path.size() > best->path.size()) best = &entry;
  }
  return best;
}

template <class Item>
std::optional<std::string> mark_of(const std::vector<CatalogueEntry<Item>>& entries,
                                   const std::string& id, const std::string& key) {
  for (const auto& entry : entries) {
    if (entry.item.id != id) continue;
    const auto own = entry.marks.find(key), all = entry.marks.find("");
    if (own == entry.marks.end() && all == entry.marks.end()) return std::nullopt;
    return "the catalogue's " + id + ": " + (own == entry.marks.end() ? all->second : own->second);
  }
  return std::nullopt;
}

/// Of goods that the job names by their id, or leaves to the catalogue.
std::optional<std::string> of_catalogue(const Path& path, const Job& job,
                                        const Catalogue& catalogue) {
  if (path.size() < 2) return std::nullopt;
  if (path[0] == "mix") return mark_of(catalogue.mixes, job.mix.id, path[1]);
  if (path[0] == "slabs" && path.size() > 4 && path[2] == "panel") {
    const Slab& slab = job.slabs[std::stoul(path[1])];
    return slab.panel ? mark_of(catalogue.panels, slab.panel->id, path.back()) : std::nullopt;
  }
  if (path[0] == "additives" && path.size() > 2) {
    return mark_of(catalogue.additives, job.additives[std::stoul(path[1])].id, path[2]);
  }
  if (path[0] == "forms" && path[1] == "strip_stock" && path.size() > 3) {
    return mark_of(catalogue.boards, job.forms.strip_stock[std::stoul(path[2])].id, path[3]);
  }
  return std::nullopt;
}

}  // namespace

std::string origin_of(const std::string& pointer, const Job& job,
                      const std::vector<SettledValue>& choices, const Catalogue& catalogue) {
  if (const SettledValue* choice = nearest_entry(choices, pointer)) {
    return "chosen by the plan: " + choice->reason;
  }
  const Assumption* const assumed = nearest_entry(job.assumptions, pointer);
  const auto goods = of_catalogue(path_of(pointer), job, catalogue);
  // What the job leaves to a catalogue entry as a whole is that entry's.
  if (assumed && (!goods || assumed->path == pointer)) {
    return "assumption, " + assumed->path + ": " + assumed->reason;
  }
  return goods.value_or("the job, " + pointer);
}

}  // namespace strikeoff
