// SPDX-License-Identifier: MIT
#include "job/json_scanner.h"

#include <fmt/core.h>

#include <array>
#include <charconv>
#include <utility>

#include "core/ascii.h"
#include "job/quantity_text.h"

namespace strikeoff {
namespace {

bool is_of_word(char c) {
  return is_letter(c) || c == '_';
}
bool is_hex(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}
bool starts_value(char c) {
  return c == '"' || c == '{' || c == '[' || c == '-' || is_digit(c) || is_of_word(c);
}

}  // namespace

void JsonScanner::advance() {
  if (text_[at_] == '\n') {
    ++line_;
    column_ = 0;
  }
  ++at_;
  // A character begins at every byte that does not continue one (UTF-8).
  if (at_ >= text_.size() || (static_cast<unsigned char>(text_[at_]) & 0xC0U) != 0x80U) ++column_;
}

Span JsonScanner::since(const Mark& start) const {
  Span span = start.span;
  span.width = line_ == span.line && column_ > span.column ? column_ - span.column : 1;
  return span;
}

void JsonScanner::fail(const Span& span, std::string code, std::string message, std::string help) {
  problems.assign(1, {std::move(code), std::move(message), std::move(help), "", span.line,
                      span.column, span.width});
  throw Failure{};
}

bool JsonScanner::scan() {
  try {
    if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
    skip_blanks();
    if (at_end()) fail({}, "empty-file", "the file is empty", "see: strikeoff new");
    value("", std::nullopt, 1);
    skip_blanks();
    if (!at_end()) {
      fail(mark().span, "text-after-end", "something stands after the end of the job",
           "a job file is one object: from the first \"{\" to its \"}\"");
    }
    return true;
  } catch (const Failure&) {
    return false;
  }
}

void JsonScanner::skip_comment() {
  const Mark start = mark();
  const bool block = peek(1) == '*';
  advance();
  advance();
  while (!at_end() && !(block ? peek() == '*' && peek(1) == '/' : peek() == '\n')) advance();
  if (!block) return;
  if (at_end())
    fail(start.span, "unclosed-comment", "this comment is never closed", "end it with */");
  advance();
  advance();
}

void JsonScanner::skip_blanks() {
  while (!at_end()) {
    const char c = peek();
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      advance();
    } else if (c == '/' && (peek(1) == '/' || peek(1) == '*')) {
      skip_comment();
    } else {
      return;
    }
  }
}

void JsonScanner::value(const std::string& pointer, std::optional<Span> key, int level) {
  const Mark start = mark();
  if (++values_ > most_values) {
    fail(start.span, "too-many-values",
         fmt::format("the job holds more than {} values", most_values), "");
  }
  if (level > most_levels) {
    fail(start.span, "too-deep", fmt::format("more than {} brackets are open here", most_levels),
         "");
  }
  places[pointer] = {start.span, key};
  const char c = peek();
  if (c == '{') return object(pointer, level);
  if (c == '[') return array(pointer, level);
  if (c == '"') {
    string_token();
  } else if (is_digit(c) || c == '-' || c == '+' || c == '.') {
    number();
  } else if (is_of_word(c)) {
    word();
  } else if (c == '\'') {
    fail(start.span, "single-quotes", "a text begins with a double quote, not a single one",
         "write \"76 in\", not '76 in'");
  } else if (static_cast<unsigned char>(c) >= 0x80U) {
    fail(start.span, "missing-value", "a value is missing here",
         "if this is a curly quotation mark, write a straight one: \"");
  } else {
    fail(start.span, "missing-value", "a value is missing here",
         "a value is a text in double quotes, a number, true, false, {...} or [...]");
  }
  places[pointer].value = since(start);
}

void JsonScanner::unclosed(const Mark& open) {
  const char bracket = text_[open.at];
  fail(open.span, "unclosed-bracket", fmt::format("this \"{}\" is never closed", bracket),
       fmt::format("add the missing \"{}\"", bracket == '{' ? '}' : ']'));
}

void JsonScanner::after_member(const Mark& open, char close, const Mark& last) {
  // `last` is the place just after the value, for a missing comma.
  skip_blanks();
  const char c = peek();
  if (at_end()) unclosed(open);
  if (c == close) return;
  if (c == ',') {
    const Mark comma = mark();
    advance();
    skip_blanks();
    if (peek() == close && !at_end()) {
      fail(comma.span, "trailing-comma", fmt::format("a comma before the closing \"{}\"", close),
           "remove this comma");
    }
    if (peek() == ',') fail(mark().span, "double-comma", "two commas in a row", "remove one");
    return;
  }
  if (starts_value(c) || c == '\'') {
    if (c == '"' && last.at == at_ && text_[at_ - 1] == '"') {
      fail(mark().span, "inch-mark", "an inch mark inside a text ends the text",
           R"(write it as \" or as in: "7' 10 1/2\"" or "7 ft 10 1/2 in")");
    }
    if (is_of_word(c) && last.span.line == line_ && is_digit(text_[last.at - 1])) {
      fail(mark().span, "missing-quote", "a value with a unit stands in double quotes",
           R"(as in "76 in")");
    }
    fail(last.span, "missing-comma", "a comma is missing here", "put a comma between two entries");
  }
  if (c == ':') {
    fail(mark().span, "stray-colon", "a colon stands where a comma or a bracket must",
         "a list holds values only; keys stand between \"{\" and \"}\"");
  }
  if (c == '}' || c == ']') {
    fail(mark().span, "wrong-bracket",
         fmt::format("\"{}\" closes the \"{}\" of line {}", c, text_[open.at], open.span.line),
         fmt::format("a \"{}\" is missing before it", close));
  }
  fail(mark().span, "missing-comma", fmt::format("a comma or \"{}\" must stand here", close), "");
}

void JsonScanner::object(const std::string& pointer, int level) {
  const Mark open = mark();
  advance();
  skip_blanks();
  if (peek() == ',')
    fail(mark().span, "double-comma", "a comma before the first entry", "remove it");
  std::map<std::string, int> line_of;
  while (peek() != '}') {
    if (at_end()) unclosed(open);
    const Mark start = mark();
    if (peek() != '"') {
      if (is_of_word(peek())) {
        while (is_of_word(peek()) || is_digit(peek())) advance();
        const std::string name(text_.substr(start.at, at_ - start.at));
        fail(since(start), "key-without-quotes", "a key stands in double quotes",
             fmt::format("write {}", in_quotes(name)));
      }
      fail(start.span, "missing-key-text", "a key in double quotes must stand here",
           R"(as in "thickness": "1 3/4 in")");
    }
    const std::string name = string_token();
    const Span key = since(start);
    const auto [first, is_new] = line_of.try_emplace(name, key.line);
    const std::string member = pointer_to(pointer, name);
    if (!is_new) {
      problems.push_back({"duplicate-key",
                          fmt::format("the key {} stands twice in the same place", in_quotes(name)),
                          fmt::format("the first is on line {}; keep one", first->second), member,
                          key.line, key.column, key.width});
    }
    if (line_of.size() > most_entries) {
      fail(key, "too-many-entries", fmt::format("more than {} keys", most_entries), "");
    }
    skip_blanks();
    if (peek() != ':') {
      fail(key, "missing-colon",
           fmt::format("a colon is missing after the key {}", in_quotes(name)),
           fmt::format("as in {}: \"76 in\"", in_quotes(name)));
    }
    advance();
    skip_blanks();
    value(member, key, level + 1);
    after_member(open, '}', mark());
  }
  advance();
}

void JsonScanner::array(const std::string& pointer, int level) {
  const Mark open = mark();
  advance();
  skip_blanks();
  for (std::size_t i = 0; peek() != ']'; ++i) {
    if (at_end()) unclosed(open);
    if (i == most_entries) {
      fail(mark().span, "too-many-entries",
           fmt::format("a list of more than {} entries", most_entries), "");
    }
    value(pointer_to(pointer, i), std::nullopt, level + 1);
    after_member(open, ']', mark());
  }
  advance();
}

void JsonScanner::escape(const Mark& start) {
  const Mark backslash = mark();
  advance();
  const char c = peek();
  bool good = std::string_view("\"\\/bfnrt").find(c) != std::string_view::npos && c != '\0';
  if (c == 'u') good = is_hex(peek(1)) && is_hex(peek(2)) && is_hex(peek(3)) && is_hex(peek(4));
  if (at_end() || c == '\n') {
    fail(start.span, "missing-quote", "this text has no closing quote", "");
  }
  if (!good) {
    fail(backslash.span, "bad-escape", "a backslash must be followed by \\ or \" in a text",
         "write \\\\ for a backslash, \\\" for an inch mark");
  }
  advance();
}

std::string JsonScanner::string_token() {
  const Mark start = mark();
  advance();
  bool escaped = false;
  while (peek() != '"') {
    if (at_end() || peek() == '\n' || peek() == '\r') {
      fail(start.span, "missing-quote", "this text has no closing quote",
           "a text ends on its own line with \"");
    }
    if (static_cast<unsigned char>(peek()) < 0x20U) {
      fail(mark().span, "control-character", "a tab or control character inside a text",
           "replace it with a space");
    }
    if (peek() == '\\') {
      escaped = true;
      escape(start);
    } else {
      advance();
    }
  }
  advance();
  const std::string_view token = text_.substr(start.at, at_ - start.at);
  if (!escaped) return std::string(token.substr(1, token.size() - 2));
  const auto parsed = parse_json(token);
  if (!parsed || !parsed->text()) {
    fail(since(start), "bad-escape", "a \\u escape in this text is half of a pair", "");
  }
  return *parsed->text();
}

void JsonScanner::number() {
  const Mark start = mark();
  while (is_digit(peek()) || is_of_word(peek()) || peek() == '-' || peek() == '+' ||
         peek() == '.') {
    advance();
  }
  const std::string_view token = text_.substr(start.at, at_ - start.at);
  // The grammar: -?(0|[1-9][0-9]*)(.[0-9]+)?([eE][+-]?[0-9]+)?
  std::size_t i = 0;
  const auto digits = [&] {
    const std::size_t from = i;
    while (i < token.size() && is_digit(token[i])) ++i;
    return i > from;
  };
  if (token[i] == '-') ++i;
  const bool zero = i < token.size() && token[i] == '0';
  bool good = digits() && !(zero && i > (token[0] == '-' ? 2U : 1U));
  const std::size_t plain_end = i;
  if (i < token.size() && token[i] == '.') good = (++i, digits()) && good;
  if (i < token.size() && (token[i] == 'e' || token[i] == 'E')) {
    ++i;
    if (i < token.size() && (token[i] == '-' || token[i] == '+')) ++i;
    good = digits() && good;
  }
  if (good && i == token.size()) {
    double ignored = 0;
    const auto read = std::from_chars(token.data(), token.data() + token.size(), ignored);
    if (read.ec == std::errc{}) return;
    fail(since(start), "number-range", "this number is too large or too small", "");
  }
  // "76 in" without its quotes: the number reads well and letters follow.
  const char after = plain_end < token.size() ? token[plain_end] : ' ';
  if (plain_end > 0 && is_of_word(after) && after != 'e' && after != 'E') {
    fail(since(start), "missing-quote", "a value with a unit stands in double quotes",
         fmt::format("write \"{} {}\"", token.substr(0, plain_end), token.substr(plain_end)));
  }
  fail(since(start), "bad-number",
       fmt::format("{} is not a number as JSON writes it", in_quotes(token)),
       "write 0.5, not .5; 8, not 08; no plus sign");
}

void JsonScanner::word() {
  const Mark start = mark();
  while (is_of_word(peek()) || is_digit(peek())) advance();
  const std::string_view token = text_.substr(start.at, at_ - start.at);
  if (token == "true" || token == "false" || token == "null") return;
  std::string lower(token);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  if (lower == "true" || lower == "false" || lower == "null") {
    fail(since(start), "word-case", "this word is written in small letters", "write " + lower);
  }
  fail(since(start), "missing-quote", "a text stands in double quotes",
       fmt::format("write {}", in_quotes(token)));
}

}  // namespace strikeoff
