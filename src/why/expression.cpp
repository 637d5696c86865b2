// SPDX-License-Identifier: MIT
#include "why/expression.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <optional>

#include "core/ascii.h"

namespace strikeoff {
namespace {

constexpr int deepest = 40;

enum class Kind { number, name, sign, end };

struct Token {
  Kind kind = Kind::end;
  std::string_view text;
};

bool is_of_name(char c) {
  return is_letter(c) || c == '_';
}

/// How many characters from the start of `text` one token takes.
std::size_t token_length(std::string_view text, Kind kind) {
  std::size_t n = 1;
  if (kind == Kind::name) {
    while (n < text.size() && (is_of_name(text[n]) || is_digit(text[n]))) ++n;
  } else if (kind == Kind::number) {
    const auto more = [&] {
      const char c = text[n], before = text[n - 1];
      return is_digit(c) || c == '.' || c == 'e' || ((c == '-' || c == '+') && before == 'e');
    };
    while (n < text.size() && more()) ++n;
  } else if (n < text.size() && text[n] == '=') {
    ++n;  // <= >= ==
  }
  return n;
}

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> tokens;
  while (!text.empty()) {
    const char c = text.front();
    if (c == ' ') {
      text.remove_prefix(1);
      continue;
    }
    const Kind kind = is_of_name(c) ? Kind::name : is_digit(c) ? Kind::number : Kind::sign;
    const std::size_t n = token_length(text, kind);
    tokens.push_back({kind, text.substr(0, n)});
    text.remove_prefix(n);
  }
  return tokens;
}

using Value = FormulaValue;
using Two = double (*)(double, double);
using One = double (*)(double);

/// The digits of a token; `std::stod` would ask the locale.
double read(std::string_view digits) {
  double number = not_given;
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return number;
}

/// Rounding errors do not count: what is over a whole number by a billionth is that number.
double slack(double x) {
  return 1e-9 * std::max(1.0, std::abs(x));
}

const std::map<std::string_view, One>& functions_of_one() {
  static const std::map<std::string_view, One> functions = {
      {"ceil", [](double x) { return std::ceil(x - slack(x)); }},
      {"floor", [](double x) { return std::floor(x + slack(x)); }},
      {"round", [](double x) { return std::round(x + std::copysign(slack(x), x)); }},
      {"exp", [](double x) { return std::exp(x); }},
      {"ln", [](double x) { return std::log(x); }},
      {"sqrt", [](double x) { return std::sqrt(x); }},
      {"abs", [](double x) { return std::abs(x); }},
      {"given", [](double x) { return std::isnan(x) ? 0.0 : 1.0; }},
  };
  return functions;
}

/// Whether something holds of a value that is not given is not known.
template <class Compare>
double compare(double a, double b, Compare holds) {
  if (std::isnan(a) || std::isnan(b)) return not_given;
  return holds(a, b) ? 1 : 0;
}

const std::map<std::string_view, Two>& operators() {
  static const std::map<std::string_view, Two> all = {
      {"+", [](double a, double b) { return a + b; }},
      {"-", [](double a, double b) { return a - b; }},
      {"*", [](double a, double b) { return a * b; }},
      {"/", [](double a, double b) { return a / b; }},
      {"^", [](double a, double b) { return std::pow(a, b); }},
      {"<", [](double a, double b) { return compare(a, b, std::less<>()); }},
      {"<=", [](double a, double b) { return compare(a, b, std::less_equal<>()); }},
      {">", [](double a, double b) { return compare(a, b, std::greater<>()); }},
      {">=", [](double a, double b) { return compare(a, b, std::greater_equal<>()); }},
      {"==", [](double a, double b) { return compare(a, b, std::equal_to<>()); }},
  };
  return all;
}

/// The length of the lists among these; 1 where there are only numbers.
std::size_t common_length(const std::vector<const Value*>& values) {
  std::size_t length = 1;
  bool any = false;
  for (const Value* value : values) {
    if (!value->is_list) continue;
    if (any && value->numbers.size() != length) throw FormulaError("lists of different lengths");
    length = value->numbers.size();
    any = true;
  }
  return length;
}

double element(const Value& value, std::size_t i) {
  return value.is_list ? value.numbers[i] : value.numbers.front();
}

template <class Function>
Value each(const std::vector<const Value*>& values, Function function) {
  Value result;
  result.is_list =
      std::any_of(values.begin(), values.end(), [](const Value* v) { return v->is_list; });
  const std::size_t length = common_length(values);
  for (std::size_t i = 0; i < length; ++i) result.numbers.push_back(function(i));
  return result;
}

Value each_of_two(Two two, const Value& a, const Value& b) {
  return each({&a, &b}, [&](std::size_t i) { return two(element(a, i), element(b, i)); });
}

Value choose(const Value& condition, const Value& then, const Value& otherwise) {
  return each({&condition, &then, &otherwise}, [&](std::size_t i) {
    const double holds = element(condition, i);
    if (std::isnan(holds)) return not_given;
    return holds != 0 ? element(then, i) : element(otherwise, i);
  });
}

/// The sum of all numbers; max, min or count of those that are given; nothing for another name.
std::optional<double> gathered(std::string_view name, const std::vector<Value>& arguments) {
  std::vector<double> all;
  for (const Value& argument : arguments) {
    for (const double x : argument.numbers) {
      if (!std::isnan(x)) all.push_back(x);
    }
  }
  if (name == "count") return static_cast<double>(all.size());
  if (name == "sum") {
    double sum = 0;
    for (const Value& argument : arguments) {
      for (const double x : argument.numbers) sum += x;
    }
    return sum;
  }
  if (name == "max") return all.empty() ? 0 : *std::max_element(all.begin(), all.end());
  if (name == "min") return all.empty() ? 0 : *std::min_element(all.begin(), all.end());
  return std::nullopt;
}

/// Recursive descent over the tokens; computes as it reads.
class Calculation {
 public:
  Calculation(std::string_view formula, const FormulaSymbols& symbols)
      : tokens_(tokens_of(formula)), symbols_(symbols) {}

  Value result() {
    Value value = comparison();
    if (at_ < tokens_.size()) fail("is not expected");
    return value;
  }

 private:
  std::vector<Token> tokens_;
  const FormulaSymbols& symbols_;
  std::size_t at_ = 0;
  int depth_ = 0;

  [[nodiscard]] std::string_view next() const {
    return at_ < tokens_.size() ? tokens_[at_].text : std::string_view{};
  }
  [[noreturn]] void fail(const std::string& what) const {
    throw FormulaError("\"" + std::string(next()) + "\" " + what);
  }
  bool take(std::string_view sign) {
    if (next() != sign) return false;
    ++at_;
    return true;
  }
  void need(std::string_view sign) {
    if (!take(sign)) fail("stands where \"" + std::string(sign) + "\" should");
  }

  Value comparison() {
    if (++depth_ > deepest) fail("is nested too deep");
    Value value = sum();
    for (const std::string_view sign : {"<", "<=", ">", ">=", "=="}) {
      if (!take(sign)) continue;
      value = each_of_two(operators().at(sign), value, sum());
      break;
    }
    --depth_;
    return value;
  }

  Value sum() {
    Value value = product();
    while (next() == "+" || next() == "-") {
      const Two two = operators().at(tokens_[at_++].text);
      value = each_of_two(two, value, product());
    }
    return value;
  }

  Value product() {
    Value value = sign();
    while (next() == "*" || next() == "/") {
      const Two two = operators().at(tokens_[at_++].text);
      value = each_of_two(two, value, sign());
    }
    return value;
  }

  Value sign() {
    if (!take("-")) return power();
    if (++depth_ > deepest) fail("is nested too deep");
    Value value = each_of_two(operators().at("-"), Value::of(0), sign());
    --depth_;
    return value;
  }

  Value power() {
    Value value = atom();
    if (!take("^")) return value;
    if (++depth_ > deepest) fail("is nested too deep");
    value = each_of_two(operators().at("^"), value, sign());
    --depth_;
    return value;
  }

  Value atom() {
    if (take("(")) {
      Value value = comparison();
      need(")");
      return value;
    }
    if (at_ >= tokens_.size()) throw FormulaError("the formula ends too early");
    const Token token = tokens_[at_];
    if (token.kind == Kind::sign) fail("is not expected");
    ++at_;
    if (token.kind == Kind::number) return Value::of(read(token.text));
    if (next() == "(") return call(token.text);
    const auto symbol = symbols_.find(token.text);
    if (symbol == symbols_.end()) {
      throw FormulaError("no symbol is named \"" + std::string(token.text) + "\"");
    }
    return symbol->second;
  }

  Value call(std::string_view name) {
    need("(");
    std::vector<Value> arguments{comparison()};
    while (take(",")) arguments.push_back(comparison());
    need(")");
    if (name == "if" && arguments.size() == 3) {
      return choose(arguments[0], arguments[1], arguments[2]);
    }
    if (const auto gather = gathered(name, arguments)) return Value::of(*gather);
    const auto one = functions_of_one().find(name);
    if (one == functions_of_one().end() || arguments.size() != 1) {
      throw FormulaError("no function is named \"" + std::string(name) + "\" with so many values");
    }
    const Value& value = arguments.front();
    return each({&value}, [&](std::size_t i) { return one->second(element(value, i)); });
  }
};

bool is_symbol(const std::vector<Token>& tokens, std::size_t i) {
  if (tokens[i].kind != Kind::name) return false;
  return i + 1 == tokens.size() || tokens[i + 1].text != "(";
}

}  // namespace

FormulaValue evaluate(std::string_view formula, const FormulaSymbols& symbols) {
  return Calculation(formula, symbols).result();
}

std::vector<std::string> symbols_of(std::string_view formula) {
  const std::vector<Token> tokens = tokens_of(formula);
  std::vector<std::string> symbols;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    std::string name(tokens[i].text);
    if (!is_symbol(tokens, i)) continue;
    if (std::find(symbols.begin(), symbols.end(), name) == symbols.end()) {
      symbols.push_back(std::move(name));
    }
  }
  return symbols;
}

std::string put_in(std::string_view formula,
                   const std::map<std::string, std::string, std::less<>>& texts) {
  const std::vector<Token> tokens = tokens_of(formula);
  std::string result;
  std::size_t from = 0;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const auto start = static_cast<std::size_t>(tokens[i].text.data() - formula.data());
    result += formula.substr(from, start - from);
    from = start + tokens[i].text.size();
    const auto text = is_symbol(tokens, i) ? texts.find(tokens[i].text) : texts.end();
    result += text == texts.end() ? std::string(tokens[i].text) : text->second;
  }
  return result.append(formula.substr(from));
}

}  // namespace strikeoff
