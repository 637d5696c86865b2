// SPDX-License-Identifier: MIT
// The one file that knows the JSON library, whose header takes longer to compile than most of our
// sources.
#include "core/json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

namespace strikeoff {
namespace {

using Library = nlohmann::ordered_json;

/// Makes our value of what the library's parser finds.
class Builder final : public nlohmann::json_sax<Library> {
 public:
  Json root;

  bool null() override { return put({}); }
  bool boolean(bool value) override { return put(value); }
  bool number_integer(number_integer_t value) override { return put(value); }
  bool number_unsigned(number_unsigned_t value) override { return put(value); }
  bool number_float(number_float_t value, const string_t&) override { return put(value); }
  bool string(string_t& value) override { return put(std::move(value)); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(false); }
  bool start_array(std::size_t) override { return open(true); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    open_.back().key = std::move(name);
    return true;
  }
  bool parse_error(std::size_t, const std::string&, const Library::exception&) override {
    return false;
  }

 private:
  /// A list or object whose end has not come yet.
  struct Open {
    bool is_list;
    Json::List list;
    Json object = Json::Object{};
    std::string key;  // of the member that comes next
  };
  std::vector<Open> open_;

  bool put(Json value) {
    if (open_.empty()) {
      root = std::move(value);
    } else if (open_.back().is_list) {
      open_.back().list.push_back(std::move(value));
    } else {
      open_.back().object[open_.back().key] = std::move(value);
    }
    return true;
  }
  bool open(bool is_list) {
    open_.push_back({.is_list = is_list, .list = {}, .key = {}});
    return true;
  }
  bool close() {
    Open done = std::move(open_.back());
    open_.pop_back();
    return put(done.is_list ? Json(std::move(done.list)) : std::move(done.object));
  }
};

/// As the library has it.
struct ToLibrary {
  Library operator()(std::monostate) const { return nullptr; }
  Library operator()(const Json::List& items) const {
    Library result = Library::array();
    for (const Json& item : items) result.push_back(std::visit(*this, item.value()));
    return result;
  }
  Library operator()(const Json::Object& members) const {
    Library result = Library::object();
    for (const auto& [key, value] : members) result[key] = std::visit(*this, value.value());
    return result;
  }
  template <class Other>
  Library operator()(const Other& other) const {
    return other;
  }
};

std::string dumped(const Json& json, int indent, bool ascii) {
  return std::visit(ToLibrary{}, json.value())
      .dump(indent, ' ', ascii, Library::error_handler_t::replace);
}

}  // namespace

Json::Json() = default;
Json::Json(bool flag) : value_(flag) {}
Json::Json(double number) : value_(number) {}
Json::Json(const char* text) : value_(std::string(text)) {}
Json::Json(std::string_view text) : value_(std::string(text)) {}
Json::Json(std::string text) : value_(std::move(text)) {}
Json::Json(List list) : value_(std::move(list)) {}
Json::Json(Object members) : value_(std::move(members)) {}
Json::Json(std::initializer_list<Member> members) : value_(Object(members)) {}
Json::Json(const Json&) = default;
Json::Json(Json&&) noexcept = default;
Json& Json::operator=(const Json&) = default;
Json& Json::operator=(Json&&) noexcept = default;
Json::~Json() = default;

bool Json::is_whole() const {
  return std::holds_alternative<std::int64_t>(value_) ||
         std::holds_alternative<std::uint64_t>(value_);
}

std::optional<double> Json::number() const {
  if (const auto* whole = std::get_if<std::int64_t>(&value_)) return static_cast<double>(*whole);
  if (const auto* whole = std::get_if<std::uint64_t>(&value_)) return static_cast<double>(*whole);
  if (const auto* number = std::get_if<double>(&value_)) return *number;
  return std::nullopt;
}

const Json* Json::find(std::string_view key) const {
  const Object* const members = object();
  if (!members) return nullptr;
  const auto found = std::find_if(members->begin(), members->end(),
                                  [&](const Member& member) { return member.key == key; });
  return found == members->end() ? nullptr : &found->value;
}

Json& Json::operator[](std::string_view key) {
  if (value_.index() == 0) value_ = Object{};
  Object& members = std::get<Object>(value_);
  const auto found = std::find_if(members.begin(), members.end(),
                                  [&](const Member& member) { return member.key == key; });
  if (found != members.end()) return found->value;
  members.push_back({std::string(key), {}});
  return members.back().value;
}

void Json::add(const Json& object) {
  for (const auto& [key, value] : std::get<Object>(object.value_)) (*this)[key] = value;
}

std::optional<Json> parse_json(std::string_view text) {
  constexpr bool whole_text = true, with_comments = true;
  Builder builder;
  if (!Library::sax_parse(text, &builder, Library::input_format_t::json, whole_text,
                          with_comments)) {
    return std::nullopt;
  }
  return std::move(builder.root);
}

std::string written(const Json& json) {
  return dumped(json, -1, false);
}

std::string json_file(const Json& json, BeyondAscii beyond) {
  return dumped(json, 2, beyond == BeyondAscii::escaped) + "\n";
}

}  // namespace strikeoff
