// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// What every pour has to be told, whatever the level; a hazard that is not there is none.
bool is_safety(const Check& check) {
  if (check.level == Level::ok && check.advice.empty()) return false;
  constexpr std::array<std::string_view, 7> codes = {
      "silica", "caustic", "electric", "ventilation", "hearth", "lift", "handling-day"};
  return std::find(codes.begin(), codes.end(), check.code) != codes.end();
}

std::string finding(const Check& check) {
  const std::string value = found(check);
  return fmt::format("{}{} [{}]", check.title, value.empty() ? "" : " (" + value + ")", check.code);
}

Text with_advice(std::string_view label, const Check& check, Emphasis emphasis = {}) {
  Text result = paragraph(label, finding(check), emphasis);
  if (!check.advice.empty()) result += paragraph(std::string(label.size(), ' '), check.advice);
  return result;
}

}  // namespace

Text checks(const Plan& plan) {
  if (plan.checks.empty()) return "";
  Text stop;
  Text caution;
  Text safety;
  Text ok;
  for (const Check& check : plan.checks) {
    if (check.level == Level::stop) {
      stop += with_advice("  STOP     ", check, Emphasis::stop);
    } else if (is_safety(check)) {
      safety += with_advice("  safety   ", check);
    } else if (check.level == Level::caution) {
      caution += with_advice("  caution  ", check, Emphasis::caution);
    } else {
      ok += paragraph("  ok       ", finding(check));
    }
  }
  return heading("CHECKS") + stop + caution + ok + safety;
}

}  // namespace strikeoff::text
