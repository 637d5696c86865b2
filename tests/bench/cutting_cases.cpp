// SPDX-License-Identifier: MIT
#include "cutting_cases.h"

#include <algorithm>
#include <fstream>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>
#include <random>
#include <stdexcept>

namespace strikeoff::bench {
namespace {

using Json = nlohmann::json;
constexpr int any_number = std::numeric_limits<int>::max();

int available_of(const Json& stock) {
  const Json& count = stock.at("available");
  return count.is_null() ? any_number : count.get<int>();
}

/// `opt_KEY`, or `bounds_KEY`, or a number under KEY alone.
std::optional<Known> known_of(const Json& instance, const std::string& key) {
  if (instance.contains("bounds_" + key)) {
    const Json& bounds = instance.at("bounds_" + key);
    return Known{bounds.at(0), bounds.at(1)};
  }
  for (const std::string& name : {"opt_" + key, key}) {
    if (instance.contains(name)) return Known{instance.at(name), instance.at(name)};
  }
  return std::nullopt;
}

CuttingCase one_length(const Json& instance) {
  BarProblem problem;
  problem.stocks.push_back({instance.at("capacity"), 1, any_number, 1});
  for (const Json& item : instance.at("items"))
    problem.items.push_back({item.at(0), item.at(1), 1});
  return {
      instance.at("id"), instance.at("set"), std::move(problem), {}, known_of(instance, "optimum")};
}

CuttingCase several_lengths(const Json& instance) {
  BarProblem problem;
  const std::int64_t kerf = instance.at("kerf");
  for (const Json& stock : instance.at("stocks")) {
    problem.stocks.push_back(
        {stock.at("length").get<std::int64_t>() + kerf, stock.at("cost"), available_of(stock), 1});
  }
  for (const Json& item : instance.at("items")) {
    problem.items.push_back({item.at(0).get<std::int64_t>() + kerf, item.at(1), 1});
  }
  return {
      instance.at("id"), "several lengths", std::move(problem), {}, known_of(instance, "optimum")};
}

/// Bars, boards to rip, or sheets, by what the stock and the pieces have.
CuttingCase made_up_job(const Json& job) {
  CuttingCase made{job.at("id"), "made-up jobs", {}, {}, known_of(job, "optimum")};
  const std::int64_t kerf = job.at("kerf");
  const auto size = [&](const Json& number) { return number.get<std::int64_t>() + kerf; };
  if (job.at("kind").get<std::string>().rfind("2D", 0) == 0) {
    GuillotineProblem sheets;
    for (const Json& s : job.at("stock")) {
      sheets.stocks.push_back(
          {size(s.at("length")), size(s.at("width")), s.at("cost"), available_of(s)});
    }
    for (const Json& p : job.at("pieces")) {
      sheets.items.push_back({size(p.at(0)), size(p.at(1)), p.at(2), true});
    }
    made.sheets = std::move(sheets);
    return made;
  }
  BarProblem bars;
  for (const Json& s : job.at("stock")) {
    const std::int64_t width = s.contains("width") ? size(s.at("width")) : 1;
    bars.stocks.push_back({size(s.at("length")), s.at("cost"), available_of(s), width});
  }
  for (const Json& p : job.at("pieces")) {
    const bool wide = p.size() == 3;
    bars.items.push_back({size(p.at(0)), p.at(wide ? 2 : 1), wide ? size(p.at(1)) : 1});
  }
  made.bars = std::move(bars);
  return made;
}

/// Strips along the sheet's width W, stacked in H, or the other way.
BarProblem two_stages(const Json& instance, bool horizontal, bool trim) {
  const std::int64_t along = instance.at(horizontal ? "W" : "H");
  const std::int64_t across = instance.at(horizontal ? "H" : "W");
  BarProblem problem;
  problem.trim = trim;
  problem.stocks.push_back({along, 1, any_number, across});
  for (const Json& item : instance.at("items")) {
    problem.items.push_back({item.at(horizontal ? 0 : 1), item.at(2), item.at(horizontal ? 1 : 0)});
  }
  return problem;
}

void add_sheet_cases(const Json& instance, const std::string& set, std::vector<CuttingCase>& out) {
  const std::string id = instance.at("id");
  for (const bool trim : {false, true}) {
    for (const bool horizontal : {true, false}) {
      const std::string kind = std::string("2stage_") + (trim ? "trim_" : "exact_") +
                               (horizontal ? "horizontal" : "vertical");
      const auto known = known_of(instance, kind);
      if (!known) continue;
      out.push_back({id + "_" + kind,
                     set + (trim ? " 2-stage trimmed" : " 2-stage exact"),
                     two_stages(instance, horizontal, trim),
                     {},
                     known});
    }
  }
  GuillotineProblem sheets;
  sheets.stocks.push_back({instance.at("W"), instance.at("H"), 1, any_number});
  for (const Json& item : instance.at("items")) {
    sheets.items.push_back({item.at(0), item.at(1), item.at(2), false});
  }
  const auto known = known_of(instance, "unlimited_stages");
  if (known) out.push_back({id + "_unlimited_stages", set + " any stages", {}, sheets, known});
}

}  // namespace

std::vector<CuttingCase> read_cases(const std::string& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file);
  const Json all = Json::parse(in);
  std::vector<CuttingCase> cases;
  const bool classes = file.find("class") != std::string::npos;
  for (const Json& instance : all.at(all.contains("jobs") ? "jobs" : "instances")) {
    if (instance.contains("pieces")) {
      cases.push_back(made_up_job(instance));
    } else if (instance.contains("capacity")) {
      cases.push_back(one_length(instance));
    } else if (instance.contains("stocks")) {
      cases.push_back(several_lengths(instance));
    } else {
      add_sheet_cases(instance, classes ? "classes" : "furniture", cases);
    }
  }
  return cases;
}

CuttingCase random_case(int number, int least_parts, int most_parts, std::uint64_t seed) {
  std::mt19937_64 engine(seed * 1'000'003 + static_cast<std::uint64_t>(number));
  const auto draw = [&](int least, int most) {
    return least + static_cast<int>(engine() % static_cast<std::uint64_t>(most - least + 1));
  };
  constexpr std::int64_t kerf = 2;
  BarProblem problem;
  std::vector<BarStock> shop{{1536 + kerf, 428, any_number, 1},
                             {1920 + kerf, 598, any_number, 1},
                             {2304 + kerf, 712, any_number, 1},
                             {3072 + kerf, 988, any_number, 1}};
  for (int left_out = draw(0, 3); left_out > 0; --left_out) {
    shop.erase(shop.begin() + draw(0, static_cast<int>(shop.size()) - 1));
  }
  for (BarStock& stock : shop) {
    stock.cost += draw(-15, 15);
    problem.stocks.push_back(stock);
  }
  for (int kinds = draw(0, 2); kinds > 0; --kinds) {
    problem.stocks.push_back({draw(300, 1200) + kerf, 0, draw(1, 3), 1});
  }
  std::vector<std::int64_t> lengths;
  for (int kinds = draw(4, 15); kinds > 0; --kinds) lengths.push_back(draw(4 * 16, 90 * 16) + kerf);
  std::map<std::int64_t, int> demand;
  for (int parts = draw(least_parts, most_parts); parts > 0; --parts) {
    ++demand[lengths[static_cast<std::size_t>(draw(0, static_cast<int>(lengths.size()) - 1))]];
  }
  for (const auto& [length, count] : demand) problem.items.push_back({length, count, 1});
  return {"random_" + std::to_string(number), "random jobs", std::move(problem), {}, {}};
}

}  // namespace strikeoff::bench
