// SPDX-License-Identifier: MIT
#include "why/inputs.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>

#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
namespace {

/// How to walk through lists: of the plan, or of the job.
struct Walk {
  std::function<std::optional<std::size_t>(const Path&)> size;  // nothing: no list
  std::function<std::optional<std::size_t>(const Path&, const std::string&)> named;
};

Walk through_plan(const PlanFile& file) {
  const auto list = [&file](const Path& path) {
    const Json* const node = file.find(path);
    return node ? node->list() : nullptr;
  };
  return {[list](const Path& path) {
            const auto* const node = list(path);
            return node ? std::optional(node->size()) : std::nullopt;
          },
          [list](const Path& path, const std::string& name) -> std::optional<std::size_t> {
            const auto* const node = list(path);
            if (!node) return std::nullopt;
            const auto found = std::find_if(node->begin(), node->end(), [&](const auto& element) {
              return goes_by(element, name);
            });
            if (found == node->end()) return std::nullopt;
            return static_cast<std::size_t>(found - node->begin());
          }};
}

/// A job's path as the facts' patterns have it, and its indices.
struct JobPlace {
  std::string pattern;
  std::vector<std::size_t> at;
};

JobPlace place_of(const Path& path) {
  JobPlace place;
  for (const std::string& segment : path) {
    if (job_list(place.pattern)) {
      place.at.push_back(std::stoul(segment));
      place.pattern += "/*";
    } else {
      place.pattern += "/" + segment;
    }
  }
  return place;
}

Walk through_job(const Job& job) {
  const auto size = [&job](const Path& path) -> std::optional<std::size_t> {
    const JobPlace place = place_of(path);
    const JobList* const list = job_list(place.pattern);
    return list ? std::optional(list->size(job, place.at)) : std::nullopt;
  };
  return {size,
          [&job, size](const Path& path, const std::string& name) -> std::optional<std::size_t> {
            const JobPlace place = place_of(path);
            const JobList* const list = job_list(place.pattern);
            const std::size_t n = size(path).value_or(0);
            for (std::size_t i = 0; i < n; ++i) {
              if (list->name(job, place.at, i) == name) return i;
            }
            return std::nullopt;
          }};
}

/// What the number's own object says under this key, as text; nothing where it says nothing.
std::optional<std::string> own_word(const Path& number, const std::string& key,
                                    const PlanFile& file) {
  Path object = number;
  while (!object.empty()) {
    object.pop_back();
    const Json* const node = file.find(object);
    if (!node || !node->object()) continue;
    const Json* const value = node->find(key);
    return value ? std::optional(word_of(*value)) : std::nullopt;
  }
  return std::nullopt;
}

/// Replaces `*`, `.`, `@key` and names by what they mean for one number; `#` is every element.
class Expansion {
 public:
  Expansion(const NumberBasis& number, const PlanFile& file, const Walk& walk)
      : number_(number), file_(file), walk_(walk) {}

  std::vector<Path> of(const Path& pattern) {
    std::vector<Path> paths{{}};
    for (std::size_t i = 0; i < pattern.size(); ++i) {
      std::vector<Path> longer;
      const std::string segment = meant(pattern[i], i);
      // A word that the number's own object says may be a number too: that of a batch.
      const bool is_name = pattern[i].starts_with("@") || !is_index_text(segment);
      for (Path& path : paths) add(std::move(path), segment, is_name, longer);
      paths = std::move(longer);
    }
    return paths;
  }

 private:
  const NumberBasis& number_;
  const PlanFile& file_;
  const Walk& walk_;
  std::size_t stars_ = 0;

  /// The segment without reference to the number; empty: there is nothing.
  std::string meant(const std::string& segment, std::size_t i) {
    const Path& own = number_.number->path;
    if (segment == ".") return i < own.size() ? own[i] : "";
    if (segment.starts_with("@")) {
      return own_word(own, segment.substr(1), file_).value_or("");
    }
    if (!segment.starts_with("*")) return segment;
    const std::size_t star = segment == "*" ? stars_++ : std::stoul(segment.substr(1)) - 1;
    if (star >= number_.indices.size()) {
      throw FormulaError("the number has no index for \"" + segment + "\"");
    }
    return std::to_string(number_.indices[star]);
  }

  void add(Path path, const std::string& segment, bool is_name, std::vector<Path>& paths) const {
    const auto with = [](Path from, std::string last) {
      from.push_back(std::move(last));
      return from;
    };
    if (segment.empty()) return;
    const auto size = walk_.size(path);
    if (segment == "$") {
      if (size.value_or(0) > 0) paths.push_back(with(std::move(path), std::to_string(*size - 1)));
    } else if (segment == "#") {
      for (std::size_t i = 0; i < size.value_or(0); ++i) {
        paths.push_back(with(path, std::to_string(i)));
      }
    } else if (!size) {
      paths.push_back(with(std::move(path), segment));
    } else if (is_name) {
      const auto named = walk_.named(path, segment);
      if (named) paths.push_back(with(std::move(path), std::to_string(*named)));
    } else if (std::stoul(segment) < *size) {
      paths.push_back(with(std::move(path), segment));
    }
  }
};

double in_plan(const Path& path, const PlanFile& file) {
  const Json* const node = file.find(path);
  if (!node) return not_given;
  if (node->flag()) return *node->flag() ? 1 : 0;
  const auto number = node->number();
  return number ? *number / file.per_formula_unit(path) : not_given;
}

const JobFact& fact_of(const Path& path) {
  const JobPlace place = place_of(path);
  const JobFact* const fact = job_fact(place.pattern);
  if (!fact) throw FormulaError("no fact of the job is at " + place.pattern);
  return *fact;
}

double in_catalogue(const Path& path, const Catalogue& catalogue) {
  if (path.size() != 3 || path[0] != "supplies") throw FormulaError("only supplies are looked up");
  for (const auto& entry : catalogue.supplies) {
    if (entry.item.id != path[1]) continue;
    if (path[2] == "pack") return entry.item.pack;
    if (path[2] == "rate") return entry.item.rate;
    if (path[2] == "price") return plain(entry.item.price);
  }
  return not_given;
}

/// The unit that all these values have.
std::string unit_of(const FoundInput& input, const std::vector<Path>& paths,
                    const WhyFacts& facts) {
  if (paths.empty() || input.from == InputFrom::catalogue) return "";
  if (input.from == InputFrom::plan) return facts.file.formula_unit(paths.front());
  const std::string_view unit = fact_of(paths.front()).unit;
  return unit == "money" ? facts.job.currency : std::string(unit);
}

}  // namespace

FoundInput find_input(const BasisInput& input, const NumberBasis& number, const WhyFacts& facts) {
  const std::size_t colon = input.from.find(':');
  if (colon == std::string_view::npos) throw FormulaError("an input names no file");
  const std::string_view from = input.from.substr(0, colon);
  const Path pattern = path_of(input.from.substr(colon + 1));
  FoundInput found;
  found.from = from == "job"    ? InputFrom::job
               : from == "plan" ? InputFrom::plan
                                : InputFrom::catalogue;
  const Walk walk =
      found.from == InputFrom::job ? through_job(facts.job) : through_plan(facts.file);
  const std::vector<Path> paths = Expansion(number, facts.file, walk).of(pattern);
  for (const Path& path : paths) {
    found.pointers.push_back(pointer_of(path));
    switch (found.from) {
      case InputFrom::plan:
        found.value.numbers.push_back(in_plan(path, facts.file));
        break;
      case InputFrom::job:
        found.value.numbers.push_back(fact_of(path).value(facts.job, place_of(path).at));
        break;
      case InputFrom::catalogue:
        found.value.numbers.push_back(in_catalogue(path, facts.catalogue));
        break;
    }
  }
  found.value.is_list = std::find(pattern.begin(), pattern.end(), "#") != pattern.end();
  if (!found.value.is_list && paths.empty()) found.value = FormulaValue::of(not_given);
  found.unit = unit_of(found, paths, facts);
  return found;
}

std::optional<double> formula_result(const NumberBasis& number, const WhyFacts& facts) {
  if (!number.entry || number.entry->formula.empty()) return std::nullopt;
  FormulaSymbols symbols;
  for (const BasisInput& input : number.entry->inputs) {
    symbols[std::string(input.symbol)] = find_input(input, number, facts).value;
  }
  const FormulaValue value = evaluate(number.entry->formula, symbols);
  if (value.is_list) throw FormulaError("the formula gives a list");
  const double result = value.numbers.front() * facts.file.per_formula_unit(number.number->path);
  return std::isnan(result) ? std::nullopt : std::optional(result);
}

}  // namespace strikeoff
