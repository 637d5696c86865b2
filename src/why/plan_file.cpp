// SPDX-License-Identifier: MIT
#include "why/plan_file.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include "strikeoff/render.h"

namespace strikeoff {
namespace {

/// What objects of the plan's lists are known by.
constexpr std::array names = {"code",  "stock", "step", "name", "number", "what", "who",
                              "cover", "mark",  "slab", "unit", "grit",   "item"};

/// The suffix of a key and the unit it stands for; of two that fit the first counts.
constexpr std::pair<std::string_view, std::string_view> suffixes[] = {
    {"_kg_m2_h", "kg/m2/h"},
    {"_km_h", "km/h"},
    {"_kg_m3", "kg/m3"},
    {"_per_min", "a minute"},
    {"_mm", "mm"},
    {"_m2", "m2"},
    {"_l", "L"},
    {"_kg", "kg"},
    {"_c", "C"},
    {"_min", "min"},
    {"_h", "h"},
    {"_kpa", "kPa"},
    {"_mpa", "MPa"},
    {"_n", "N"},
    {"_deg", "degrees"},
};

/// A unit that supplies are shown in, and what one of its formula unit is.
struct ShownUnit {
  std::string_view shown, formula;
  double per_formula_unit;
};

// NIST Handbook 44, appendix C: the foot, the square foot, the liquid quart, the fluid ounce.
constexpr ShownUnit shown_units[] = {
    {"ft", "m", 1 / 0.3048},
    {"ft2", "m2", 1 / 0.09290304},
    {"qt", "L", 1 / 0.946352946},
    {"fl oz", "L", 1 / 0.0295735295625},
    {"mL", "L", 1000},
};

const ShownUnit* shown_unit(std::string_view unit) {
  const auto* const found =
      std::find_if(std::begin(shown_units), std::end(shown_units),
                   [&](const ShownUnit& known) { return known.shown == unit; });
  return found == std::end(shown_units) ? nullptr : found;
}

std::optional<std::size_t> index_of(std::string_view segment) {
  std::size_t index = 0;
  const char* const end = segment.data() + segment.size();
  const auto [rest, error] = std::from_chars(segment.data(), end, index);
  if (error != std::errc{} || rest != end) return std::nullopt;
  return index;
}

bool is_money(const Path& path) {
  const std::string& key = path.back();
  return path.front() == "cost" ? key != "packs"
                                : key == "cost" || key == "price" || key == "cost_bound";
}

}  // namespace

Path path_of(std::string_view pointer) {
  Path path;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::size_t end = std::min(pointer.find('/'), pointer.size());
    path.emplace_back(pointer.substr(0, end));
    pointer.remove_prefix(end);
  }
  return path;
}

std::string pointer_of(const Path& path) {
  std::string pointer;
  for (const std::string& segment : path) pointer.append("/").append(segment);
  return pointer;
}

bool is_index_text(std::string_view segment) {
  return index_of(segment).has_value();
}

std::string word_of(const Json& value) {
  return value.text() ? *value.text() : written(value);
}

bool goes_by(const Json& element, std::string_view name) {
  return std::any_of(names.begin(), names.end(), [&](const char* key) {
    const Json* const value = element.find(key);
    return value && (value->text() || value->is_whole()) && word_of(*value) == name;
  });
}

PlanFile::PlanFile(const Plan& plan) : root_(parse_json(render_json(plan)).value()) {
  Path path;
  gather(root_, path);
}

void PlanFile::gather(const Json& node, Path& path) {
  const auto gather_in = [&](const Json& child, std::string segment) {
    path.push_back(std::move(segment));
    gather(child, path);
    path.pop_back();
  };
  if (const auto number = node.number()) {
    numbers_.push_back({path, *number});
  } else if (const auto* const list = node.list()) {
    for (std::size_t i = 0; i < list->size(); ++i) gather_in((*list)[i], std::to_string(i));
  } else if (const auto* const members = node.object()) {
    for (const auto& [key, value] : *members) gather_in(value, key);
  }
}

const Json* PlanFile::find(const Path& path) const {
  const Json* node = &root_;
  for (const std::string& segment : path) {
    if (const auto* const list = node->list()) {
      const auto index = index_of(segment);
      node = index && *index < list->size() ? &(*list)[*index] : nullptr;
    } else {
      node = node->find(segment);
    }
    if (!node) break;
  }
  return node;
}

bool PlanFile::is_index(const Path& path, std::size_t i) const {
  const Json* const list = find(Path(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(i)));
  return list && list->list();
}

std::string PlanFile::unit(const Path& path) const {
  if (path.empty()) return "";
  if (is_money(path)) return *find({"job", "currency"})->text();
  const std::string& key = path.back();
  if (path.size() == 3 && (path.front() == "checks" || path.front() == "materials")) {
    return key == "packs" ? "" : *find({path[0], path[1], "unit"})->text();
  }
  // A list of lengths has the unit in the list's key.
  for (auto segment = path.rbegin(); segment != path.rend(); ++segment) {
    if (index_of(*segment)) continue;
    for (const auto& [suffix, unit] : suffixes) {
      if (segment->ends_with(suffix)) return std::string(unit);
    }
    break;
  }
  return "";
}

std::string PlanFile::formula_unit(const Path& path) const {
  const std::string unit = this->unit(path);
  const ShownUnit* const shown = shown_unit(unit);
  return shown ? std::string(shown->formula) : unit;
}

double PlanFile::per_formula_unit(const Path& path) const {
  const ShownUnit* const shown = shown_unit(unit(path));
  return shown ? shown->per_formula_unit : 1;
}

}  // namespace strikeoff
