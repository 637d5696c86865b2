// SPDX-License-Identifier: MIT
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job/json_text.h"
#include "job/quantity_text.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// A JSON value with its place; empty when the job does not give it.
struct Node {
  const Json* json = nullptr;
  std::string pointer;
  explicit operator bool() const { return json != nullptr; }
  /// The text it is; null where it is none.
  [[nodiscard]] const std::string* text() const { return json ? json->text() : nullptr; }
  [[nodiscard]] bool is(std::string_view word) const { return text() && *text() == word; }
};

/// Bounds of a value, both allowed, and how they read: "5 mm (3/16 in) and 1 m (39 in)".
template <class T>
struct Range {
  T least, most;
  std::string_view words;
};

/// What reading a job gathers beside the job: problems and defaults used.
class Reader {
 public:
  explicit Reader(const JsonText& text) : text_(text) {}

  enum class Mark { value, key };

  [[nodiscard]] Node root() const { return {&text_.root, ""}; }
  void error(const std::string& pointer, TextError error, Mark mark = Mark::value);
  /// Rises with every error, so that a caller can tell whether a part was read well.
  [[nodiscard]] std::size_t errors() const { return errors_.size() + withheld_; }
  /// An error that is certain, but reported later or as part of another.
  void withhold_error() { ++withheld_; }

  void assume(int weight, std::string path, std::string value, std::string reason);

  /// The errors and `others`, in file order; the 101st and later only counted.
  [[nodiscard]] std::vector<Diagnostic> diagnostics(std::vector<Diagnostic> others) const;
  /// Heaviest first, then by path.
  [[nodiscard]] std::vector<Assumption> assumptions() const;

 private:
  [[nodiscard]] Span span_of(const std::string& pointer, Mark mark) const;

  const JsonText& text_;
  std::vector<Diagnostic> errors_;
  std::size_t withheld_ = 0;
  std::vector<Assumption> assumptions_;
};

// Each of these gives nothing for an empty node, and nothing after reporting a wrong value.

template <class T>
[[nodiscard]] std::optional<T> read_quantity(Reader& reader, const Node& node,
                                             const Range<T>& limits);
[[nodiscard]] std::optional<double> read_number(Reader& reader, const Node& node,
                                                const Range<double>& limits);
[[nodiscard]] std::optional<int> read_count(Reader& reader, const Node& node,
                                            const Range<int>& limits);
/// A text of 1 to 200 characters.
[[nodiscard]] std::optional<std::string> read_text(Reader& reader, const Node& node);
[[nodiscard]] std::optional<bool> read_flag(Reader& reader, const Node& node);
/// The entries of a list; nothing when it is no list.
[[nodiscard]] std::optional<std::vector<Node>> read_list(Reader& reader, const Node& node,
                                                         std::string_view what);
/// Reports a value of the wrong JSON kind: "a list is needed here, not a number".
void wrong_kind(Reader& reader, const Node& node, std::string_view wanted, std::string help);
/// Reports the word the text is not: the known ones, and the nearest.
void unknown_word(Reader& reader, const Node& node, const std::string& word,
                  const std::vector<std::string>& known);

template <class E>
using Choices = std::initializer_list<std::pair<const char*, E>>;

template <class E>
[[nodiscard]] std::optional<E> read_choice(Reader& reader, const Node& node, Choices<E> choices) {
  const auto text = read_text(reader, node);
  if (!text) return std::nullopt;
  std::vector<std::string> known;
  for (const auto& [name, value] : choices) {
    if (*text == name) return value;
    known.emplace_back(name);
  }
  unknown_word(reader, node, *text, known);
  return std::nullopt;
}

/// The members of one object. It notes every key asked for, so that `finish` can report the
/// rest; keys beginning with "x-" are the user's own.
class Object {
 public:
  /// `what` names it in messages: "a slab".
  Object(Reader& reader, Node node, std::string_view what);

  [[nodiscard]] bool is_object() const { return object_; }
  [[nodiscard]] const std::string& pointer() const { return node_.pointer; }
  [[nodiscard]] std::string path(std::string_view key) const {
    return pointer_to(node_.pointer, key);
  }
  [[nodiscard]] Reader& reader() const { return reader_; }

  [[nodiscard]] Node find(std::string_view key);
  /// Notes the key as missing when it is, for `finish` to report; `example` shows it.
  [[nodiscard]] Node need(std::string_view key, const std::string& example);

  template <class T>
  [[nodiscard]] std::optional<T> quantity(std::string_view key, const Range<T>& limits) {
    return read_quantity<T>(reader_, find(key), limits);
  }
  [[nodiscard]] std::optional<double> number(std::string_view key, const Range<double>& limits) {
    return read_number(reader_, find(key), limits);
  }
  [[nodiscard]] std::optional<int> count(std::string_view key, const Range<int>& limits) {
    return read_count(reader_, find(key), limits);
  }
  [[nodiscard]] std::optional<std::string> text(std::string_view key) {
    return read_text(reader_, find(key));
  }
  [[nodiscard]] std::optional<bool> flag(std::string_view key) {
    return read_flag(reader_, find(key));
  }
  template <class E>
  [[nodiscard]] std::optional<E> choice(std::string_view key, Choices<E> choices) {
    return read_choice<E>(reader_, find(key), choices);
  }

  /// Reports every key not asked for, and every missing one that is not merely misspelt.
  void finish();

 private:
  Reader& reader_;
  Node node_;
  std::string what_;
  bool object_;
  std::vector<std::string> known_;
  std::vector<std::pair<std::string, std::string>> missing_;  // key, example
};

}  // namespace strikeoff
