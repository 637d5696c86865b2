// SPDX-License-Identifier: MIT
#include "why/expression.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace strikeoff;

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

double value(std::string_view formula, const FormulaSymbols& symbols = {}) {
  const FormulaValue result = evaluate(formula, symbols);
  REQUIRE_FALSE(result.is_list);
  return result.numbers.front();
}

const FormulaSymbols symbols = {{"a", FormulaValue::of(3)},
                                {"missing", FormulaValue::of(nothing)},
                                {"list", FormulaValue::list({4, 1, 7})},
                                {"gaps", FormulaValue::list({4, nothing, 7})},
                                {"none", FormulaValue::list({})}};

}  // namespace

TEST_CASE("a formula follows the order of operations", "[why]") {
  CHECK(value("1 + 2 * 3 ^ 2 / 6 - 4") == 0);  // 1 + 18/6 - 4
  CHECK(value("2 ^ 3 ^ 2") == 512);            // from the right
  CHECK(value("-2 ^ 2") == -4);                // the sign comes last
  CHECK(value("2 * -3 + (1 - 5) * 2") == -14);
  CHECK(value("1.5e-3 * 1000") == 1.5);
  CHECK(value("8 / 4 / 2") == 1);
}

TEST_CASE("functions give what a table gives", "[why]") {
  CHECK(value("ln(exp(2.5))") == Approx(2.5));
  CHECK(value("sqrt(2) ^ 2") == Approx(2));
  CHECK(value("abs(-3) + abs(3)") == 6);
  CHECK(value("floor(-1.5)") == -2);
  CHECK(value("round(2.5)") == 3);
  CHECK(value("if(1 < 2, 10, 20) + if(2 <= 1, 1, 2) + if(3 == 3, 100, 0)") == 112);
  CHECK(value("max(1, 7, 3) - min(4, 2)") == 5);
}

TEST_CASE("rounding errors do not make another whole", "[why]") {
  CHECK(value("ceil(0.1 * 3 / 0.1)") == 3);  // 3.0000000000000004
  CHECK(value("ceil(3.00001)") == 4);
  CHECK(value("floor(2.9999999999)") == 3);
  CHECK(value("floor(2.99999)") == 2);
  CHECK(value("round(1.005 * 100) / 100") == 1.01);  // 100.49999999999999
}

TEST_CASE("a list is taken element by element", "[why]") {
  CHECK(value("sum(list * 2 + a)", symbols) == 33);  // 24 + 9
  CHECK(value("sum(if(list > a, list, 0))", symbols) == 11);
  CHECK(value("max(list - list) + count(list)", symbols) == 3);
  CHECK(value("sum(none) + max(none) + count(none)", symbols) == 0);
  CHECK_THROWS_AS(evaluate("list + none", symbols), FormulaError);
}

TEST_CASE("what is not given leaves no result unless the formula asks", "[why]") {
  CHECK(std::isnan(value("a + missing", symbols)));
  CHECK(std::isnan(value("if(missing > 2, 1, 2)", symbols)));
  CHECK(value("if(given(missing), missing, a)", symbols) == 3);
  CHECK(value("min(a + 1, missing)", symbols) == 4);
  CHECK(value("max(gaps) + count(gaps)", symbols) == 9);
  CHECK(std::isnan(value("sum(gaps)", symbols)));
}

TEST_CASE("a formula that cannot be read is an error", "[why]") {
  for (const char* const wrong : {"", "1 +", "(1", "1)", "b", "a b", "sine(1)", "if(1, 2)",
                                  "sqrt(1, 2)", "1 $ 2", "()", "max()", "1 < 2 < 3"}) {
    CAPTURE(wrong);
    CHECK_THROWS_AS(evaluate(wrong, symbols), FormulaError);
  }
}

TEST_CASE("a formula nested without end is an error and no crash", "[why]") {
  CHECK_THROWS_AS(evaluate(std::string(100000, '('), {}), FormulaError);
  CHECK_THROWS_AS(evaluate(std::string(100000, '-') + "1", {}), FormulaError);
  std::string powers = "1";
  for (int i = 0; i < 100; ++i) powers += "^1";
  CHECK_THROWS_AS(evaluate(powers, {}), FormulaError);
}

TEST_CASE("symbols are found and replaced and functions are not", "[why]") {
  const char* const formula = "max(wait_1) + max * (wait_1 - b2)";
  CHECK(symbols_of(formula) == std::vector<std::string>{"wait_1", "max", "b2"});
  CHECK(put_in(formula, {{"wait_1", "[1; 2]"}, {"max", "5"}, {"b2", "(-3)"}}) ==
        "max([1; 2]) + 5 * ([1; 2] - (-3))");
}
