// SPDX-License-Identifier: MIT
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

namespace strikeoff {

/// A JSON value (RFC 8259). An object keeps its members in the order they came.
class Json {
 public:
  struct Member;
  using List = std::vector<Json>;
  using Object = std::vector<Member>;
  using Value = std::variant<std::monostate, bool, std::int64_t, std::uint64_t, double, std::string,
                             List, Object>;

  Json();  // null
  Json(std::nullptr_t) = delete;
  Json(bool flag);
  Json(double number);
  Json(const char* text);
  Json(std::string_view text);
  Json(std::string text);
  Json(List list);
  Json(Object members);
  Json(std::initializer_list<Member> members);
  template <std::integral T>
  Json(T number) : value_(Whole<T>{number}) {}
  template <class T>
  Json(const std::vector<T>& items) : Json(List(items.begin(), items.end())) {}

  Json(const Json&);
  Json(Json&&) noexcept;
  Json& operator=(const Json&);
  Json& operator=(Json&&) noexcept;
  ~Json();

  [[nodiscard]] const Value& value() const { return value_; }
  // What it is; nothing where it is something else.
  [[nodiscard]] const bool* flag() const { return std::get_if<bool>(&value_); }
  [[nodiscard]] std::optional<double> number() const;
  [[nodiscard]] bool is_whole() const;  // a number written without point and exponent
  [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&value_); }
  [[nodiscard]] const List* list() const { return std::get_if<List>(&value_); }
  [[nodiscard]] const Object* object() const { return std::get_if<Object>(&value_); }

  /// A member's value; null where there is no such member, or no object.
  [[nodiscard]] const Json* find(std::string_view key) const;
  /// A member of an object, made where there is none; null becomes an object.
  Json& operator[](std::string_view key);
  /// Adds the members of another object.
  void add(const Json& object);

 private:
  template <class T>
  using Whole = std::conditional_t<std::signed_integral<T>, std::int64_t, std::uint64_t>;
  Value value_;
};

struct Json::Member {
  std::string key;
  Json value;
};

/// The value of a text, which may have comments and a byte order mark; nothing where it is no
/// JSON. Of a key that stands twice the last value counts.
[[nodiscard]] std::optional<Json> parse_json(std::string_view text);

/// On one line, as short as can be.
[[nodiscard]] std::string written(const Json& json);

enum class BeyondAscii { as_it_is, escaped };
/// As a file: indented, with a line end. Bytes that are no UTF-8 cannot stand in one: they are
/// replaced, never a reason to fail.
[[nodiscard]] std::string json_file(const Json& json, BeyondAscii beyond = BeyondAscii::as_it_is);

}  // namespace strikeoff
