// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json cost_line(const CostLine& line) {
  return {{"item", line.item},
          {"packs", line.packs},
          {"price", number(line.price.si())},
          {"total", number(line.total.si())}};
}

const char* level_name(Level level) {
  switch (level) {
    case Level::ok:
      return "ok";
    case Level::caution:
      return "caution";
    case Level::stop:
      return "stop";
  }
  return "";
}

}  // namespace

Json material(const Material& material) {
  Json result = {{"item", material.item},
                 {"stock", material.stock},
                 {"needed", number(material.needed)},
                 {"unit", material.unit},
                 {"on_hand", number(material.on_hand)},
                 {"packs", material.packs},
                 {"pack", material.pack}};
  if (material.price) result["price"] = number(material.price->si());
  if (material.cost) result["cost"] = number(material.cost->si());
  result["basis"] = material.basis;
  if (!material.note.empty()) result["note"] = material.note;
  return result;
}

Json cost(const Cost& cost) {
  return {{"lines", array(cost.lines, cost_line)},
          {"subtotal", number(cost.subtotal.si())},
          {"tax", number(cost.tax.si())},
          {"total", number(cost.total.si())},
          {"currency", cost.currency},
          {"unpriced", cost.unpriced}};
}

Json task(const Task& task) {
  Json result = {{"phase", task.phase}, {"task", task.task}, {"who", task.who}};
  if (task.start) result["start_min"] = number(in_minutes(*task.start));
  if (task.end) result["end_min"] = number(in_minutes(*task.end));
  if (task.start_local) result["start"] = *task.start_local;
  if (task.end_local) result["end"] = *task.end_local;
  result["after"] = task.after;
  return result;
}

Json check(const Check& check) {
  Json result = {{"code", check.code}, {"level", level_name(check.level)}, {"title", check.title}};
  if (!check.about.empty()) result["about"] = check.about;
  if (check.value) result["value"] = number(*check.value);
  if (check.limit) result["limit"] = number(*check.limit);
  result["unit"] = check.unit;
  result["advice"] = check.advice;
  result["basis"] = check.basis;
  return result;
}

}  // namespace strikeoff::json
