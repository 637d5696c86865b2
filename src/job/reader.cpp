// SPDX-License-Identifier: MIT
#include "job/reader.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "job/suggest.h"

namespace strikeoff {
namespace {

constexpr std::size_t most_problems = 100;

std::string kind_of(const Json& json) {
  if (json.object()) return "an object";
  if (json.list()) return "a list";
  if (json.text()) return "a text";
  if (json.flag()) return *json.flag() ? "true" : "false";
  return json.number() ? "a number" : "null";
}

bool is_negative(double v) {
  return v < 0;
}
bool is_negative(Length v) {
  return v < Length{};
}
bool is_negative(Temperature) {
  return false;  // below zero is a temperature like another
}
template <class D>
bool is_negative(Quantity<D> v) {
  return v < Quantity<D>{};
}

double comparable(double v) {
  return v;
}
double comparable(Percent v) {
  return v.fraction;
}
template <class T>
T comparable(T v) {
  return v;
}

/// The key a value stands under, for a message: "thickness" in quotes; an entry of a list is
/// "this".
std::string name_of(const std::string& pointer) {
  const std::string key = pointer.substr(pointer.rfind('/') + 1);
  const bool index = key.find_first_not_of("0123456789") == std::string::npos;
  return index ? "this" : in_quotes(key);
}

/// Reports a value outside its limits as the user wrote it; false when it is.
template <class T>
bool within(Reader& reader, const Node& node, const T& value, const Range<T>& limits) {
  const auto v = comparable(value), least = comparable(limits.least);
  if (v >= least && v <= comparable(limits.most)) return true;
  const std::string shown = node.text() ? in_quotes(*node.text()) : written(*node.json);
  const std::string name = name_of(node.pointer);
  if (is_negative(v) && !is_negative(least)) {
    reader.error(node.pointer,
                 {"negative", fmt::format("{} must not be negative, is {}", name, shown),
                  fmt::format("a value between {} is expected", limits.words)});
  } else {
    reader.error(node.pointer,
                 {"out-of-range",
                  fmt::format("{} must be between {}, is {}", name, limits.words, shown), ""});
  }
  return false;
}

}  // namespace

Span Reader::span_of(const std::string& pointer, Mark mark) const {
  const auto place = text_.places.find(pointer);
  if (place == text_.places.end()) return {};
  if (mark == Mark::key && place->second.key) return *place->second.key;
  return place->second.value;
}

void Reader::error(const std::string& pointer, TextError error, Mark mark) {
  const Span span = span_of(pointer, mark);
  errors_.push_back({std::move(error.code), std::move(error.message), std::move(error.help),
                     pointer, span.line, span.column, span.width});
}

void Reader::assume(int weight, std::string path, std::string value, std::string reason) {
  assumptions_.push_back({std::move(path), std::move(value), std::move(reason), weight});
}

std::vector<Diagnostic> Reader::diagnostics(std::vector<Diagnostic> others) const {
  others.insert(others.end(), errors_.begin(), errors_.end());
  std::stable_sort(others.begin(), others.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return std::tie(a.line, a.column) < std::tie(b.line, b.column);
  });
  if (others.size() > most_problems) {
    const std::size_t hidden = others.size() - most_problems;
    others.resize(most_problems + 1);
    others.back().code = "more-problems";
    others.back().message =
        fmt::format("{} more {} from here on", hidden, hidden == 1 ? "problem" : "problems");
    others.back().help = "mend those above first";
  }
  return others;
}

std::vector<Assumption> Reader::assumptions() const {
  std::vector<Assumption> sorted = assumptions_;
  std::stable_sort(sorted.begin(), sorted.end(), [](const Assumption& a, const Assumption& b) {
    return a.weight != b.weight ? a.weight > b.weight : a.path < b.path;
  });
  return sorted;
}

void wrong_kind(Reader& reader, const Node& node, std::string_view wanted, std::string help) {
  reader.error(node.pointer,
               {"wrong-kind", fmt::format("{} is needed here, not {}", wanted, kind_of(*node.json)),
                std::move(help)});
}

void unknown_word(Reader& reader, const Node& node, const std::string& word,
                  const std::vector<std::string>& known) {
  reader.error(node.pointer, {"unknown-word",
                              fmt::format("{} is not one of the words known here", in_quotes(word)),
                              did_you_mean(word, known, "write " + quoted_list(known, "or"))});
}

template <class T>
std::optional<T> read_quantity(Reader& reader, const Node& node, const Range<T>& limits) {
  if (!node) return std::nullopt;
  const Dimension dimension = dimension_of<T>;
  if (const auto number = node.json->number()) {
    reader.error(node.pointer, bare_number(dimension, *number));
    return std::nullopt;
  }
  if (!node.text()) {
    reader.error(node.pointer, {not_a_quantity(dimension),
                                fmt::format("{} is needed here, not {}", a_quantity(dimension),
                                            kind_of(*node.json)),
                                how_to_write(dimension)});
    return std::nullopt;
  }
  const Parsed<T> parsed = parse_quantity<T>(*node.text());
  if (const auto* error = std::get_if<TextError>(&parsed)) {
    reader.error(node.pointer, *error);
    return std::nullopt;
  }
  const T value = std::get<T>(parsed);
  if (!within(reader, node, value, limits)) return std::nullopt;
  return value;
}

template std::optional<Area> read_quantity(Reader&, const Node&, const Range<Area>&);
template std::optional<Length> read_quantity(Reader&, const Node&, const Range<Length>&);
template std::optional<Volume> read_quantity(Reader&, const Node&, const Range<Volume>&);
template std::optional<Mass> read_quantity(Reader&, const Node&, const Range<Mass>&);
template std::optional<Temperature> read_quantity(Reader&, const Node&, const Range<Temperature>&);
template std::optional<Duration> read_quantity(Reader&, const Node&, const Range<Duration>&);
template std::optional<Pressure> read_quantity(Reader&, const Node&, const Range<Pressure>&);
template std::optional<Speed> read_quantity(Reader&, const Node&, const Range<Speed>&);
template std::optional<Density> read_quantity(Reader&, const Node&, const Range<Density>&);
template std::optional<MolarEnergy> read_quantity(Reader&, const Node&, const Range<MolarEnergy>&);
template std::optional<Percent> read_quantity(Reader&, const Node&, const Range<Percent>&);

std::optional<double> read_number(Reader& reader, const Node& node, const Range<double>& limits) {
  if (!node) return std::nullopt;
  const auto value = node.json->number();
  if (!value) {
    wrong_kind(reader, node, "a plain number", "write it without quotes and without a unit");
    return std::nullopt;
  }
  if (!within(reader, node, *value, limits)) return std::nullopt;
  return value;
}

std::optional<int> read_count(Reader& reader, const Node& node, const Range<int>& limits) {
  const auto value =
      read_number(reader, node, {double(limits.least), double(limits.most), limits.words});
  if (!value) return std::nullopt;
  if (*value != std::floor(*value)) {
    reader.error(node.pointer,
                 {"not-whole", fmt::format("a whole number is needed here, not {}", *value), ""});
    return std::nullopt;
  }
  return static_cast<int>(*value);
}

namespace {

/// C0, DEL and C1 (U+0080 to U+009F, in UTF-8 0xC2 and a byte under 0xA0).
bool has_control(const std::string& text) {
  unsigned char before = 0;
  return std::any_of(text.begin(), text.end(), [&](char c) {
    const auto byte = static_cast<unsigned char>(c);
    const bool found = byte < 0x20U || byte == 0x7FU || (before == 0xC2U && byte < 0xA0U);
    before = byte;
    return found;
  });
}

}  // namespace

std::optional<std::string> read_text(Reader& reader, const Node& node) {
  if (!node) return std::nullopt;
  if (!node.text()) {
    wrong_kind(reader, node, "a text", "write it in double quotes");
    return std::nullopt;
  }
  const std::string& text = *node.text();
  const auto characters = std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  });
  if (text.find_first_not_of(' ') == std::string::npos || characters > 200) {
    reader.error(node.pointer, {"text-length", "a text here has 1 to 200 characters",
                                text.empty() ? "write a text, or leave the key out" : ""});
    return std::nullopt;
  }
  // A name is printed in tables and on parts: no line breaks, no codes a terminal would act on.
  if (has_control(text)) {
    reader.error(node.pointer, {"control-character",
                                "a text here may not hold a line break, a "
                                "tab or another control character",
                                ""});
    return std::nullopt;
  }
  return text;
}

std::optional<bool> read_flag(Reader& reader, const Node& node) {
  if (!node) return std::nullopt;
  if (!node.json->flag()) {
    wrong_kind(reader, node, "true or false", "write it without quotes");
    return std::nullopt;
  }
  return *node.json->flag();
}

std::optional<std::vector<Node>> read_list(Reader& reader, const Node& node,
                                           std::string_view what) {
  if (!node) return std::nullopt;
  const Json::List* const list = node.json->list();
  if (!list) {
    wrong_kind(reader, node, fmt::format("a list of {}", what), "a list stands between [ and ]");
    return std::nullopt;
  }
  std::vector<Node> entries;
  for (std::size_t i = 0; i < list->size(); ++i) {
    entries.push_back({&(*list)[i], pointer_to(node.pointer, i)});
  }
  return entries;
}

Object::Object(Reader& reader, Node node, std::string_view what)
    : reader_(reader), node_(std::move(node)), what_(what), object_(node_ && node_.json->object()) {
  if (node_ && !object_) {
    reader_.error(node_.pointer,
                  {"wrong-kind",
                   fmt::format("{} must be an object, here stands {}", what_, kind_of(*node_.json)),
                   "an object stands between { and }"});
  }
}

Node Object::find(std::string_view key) {
  known_.emplace_back(key);
  const Json* const member = object_ ? node_.json->find(key) : nullptr;
  return member ? Node{member, path(key)} : Node{};
}

Node Object::need(std::string_view key, const std::string& example) {
  Node node = find(key);
  if (!node && object_) {
    missing_.emplace_back(key, example);
    reader_.withhold_error();
  }
  return node;
}

void Object::finish() {
  if (!object_) return;
  std::vector<std::string> meant;
  for (const auto& [key, value] : *node_.json->object()) {
    if (key.starts_with("x-")) continue;
    if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
    meant.push_back(meant_by(key, known_));
    reader_.error(path(key),
                  {"unknown-key", fmt::format("unknown key {} in {}", in_quotes(key), what_),
                   did_you_mean(key, known_, fmt::format("{} has {}", what_, quoted_list(known_)))},
                  Reader::Mark::key);
  }
  for (const auto& [key, example] : missing_) {
    if (std::find(meant.begin(), meant.end(), key) != meant.end()) continue;
    reader_.error(
        node_.pointer,
        {"missing-key", fmt::format("{} needs the key \"{}\"", what_, key), "as in " + example},
        Reader::Mark::key);
  }
}

}  // namespace strikeoff
