// SPDX-License-Identifier: MIT
#include "render/icalendar.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "render/text_table.h"

namespace strikeoff::icalendar {
namespace {

std::string escaped_line(std::string_view text) {
  std::string result;
  for (const char c : text::clean(text)) {
    if (c == '\\' || c == ';' || c == ',') result += '\\';
    result += c;
  }
  return result;
}

bool continues_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

/// FNV-1a of 32 bits, with its published offset basis and prime (from memory).
std::uint32_t hash(std::string_view text) {
  std::uint32_t value = 2166136261U;
  for (const char c : text) {
    value = (value ^ static_cast<unsigned char>(c)) * 16777619U;
  }
  return value;
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string result;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
    result += escaped_line(text.substr(0, end)) + "\\n";
    text.remove_prefix(end + 1);
  }
  return result + escaped_line(text);
}

std::string line(std::string_view content) {
  constexpr std::size_t most = 75;
  std::string result;
  std::size_t room = most;
  while (content.size() > room) {
    std::size_t end = room;
    while (continues_character(content[end])) --end;
    result += std::string(content.substr(0, end)) + "\r\n ";
    content.remove_prefix(end);
    room = most - 1;  // the blank that marks a folded line counts
  }
  return result + std::string(content) + "\r\n";
}

std::string slug(std::string_view text) {
  constexpr std::size_t most = 40;
  std::string result;
  for (const char c : text) {
    const bool upper = c >= 'A' && c <= 'Z';
    if (upper || (c >= 'a' && c <= 'z')) {
      result += upper ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!result.empty() && result.back() != '-') {
      result += '-';
    }
  }
  result.resize(std::min(result.size(), most));
  while (!result.empty() && result.back() == '-') result.pop_back();
  return result.empty() ? "x" : result;
}

std::string name_slug(std::string_view name) {
  return fmt::format("{}-{:08x}", slug(name), hash(name));
}

}  // namespace strikeoff::icalendar
