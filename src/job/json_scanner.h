// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/json_text.h"

namespace strikeoff {

/// One walk over a JSON text that checks its grammar, finds every value's place and every
/// duplicate key. The JSON library then reads the values: it has no places, keeps the last of two
/// equal keys in silence, and words its errors for programmers.
class JsonScanner {
 public:
  explicit JsonScanner(std::string_view text) : text_(text) {}

  /// False when the text is no JSON; `problems` then holds the one reason.
  [[nodiscard]] bool scan();

  std::map<std::string, Place, std::less<>> places;
  std::vector<Diagnostic> problems;

 private:
  struct Mark {
    std::size_t at = 0;
    Span span;
  };
  struct Failure {};  // unwinds the walk once a problem is recorded; never leaves scan()

  [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }
  [[nodiscard]] char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }
  void advance();
  [[nodiscard]] Mark mark() const { return {at_, {line_, column_, 1}}; }
  [[nodiscard]] Span since(const Mark& start) const;
  [[noreturn]] void fail(const Span& span, std::string code, std::string message, std::string help);
  void skip_blanks();
  void skip_comment();
  void value(const std::string& pointer, std::optional<Span> key, int level);
  void object(const std::string& pointer, int level);
  void array(const std::string& pointer, int level);
  std::string string_token();
  void escape(const Mark& start);
  void number();
  void word();
  void after_member(const Mark& open, char close, const Mark& last);
  [[noreturn]] void unclosed(const Mark& open);

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
  int values_ = 0;
};

}  // namespace strikeoff
