// SPDX-License-Identifier: MIT
#include "job/json_text.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "job/json_scanner.h"

namespace strikeoff {
namespace {

/// Bytes of the UTF-8 sequence at the start (RFC 3629), or 0 when it is not one.
std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  const auto follows = [&](std::size_t n, unsigned low, unsigned high) -> std::size_t {
    if (byte(1) < low || byte(1) > high) return 0;
    for (std::size_t i = 2; i < n; ++i) {
      if ((byte(i) & 0xC0U) != 0x80U) return 0;
    }
    return n;
  };
  if (lead >= 0xC2U && lead <= 0xDFU) return follows(2, 0x80, 0xBF);
  if (lead == 0xE0U) return follows(3, 0xA0, 0xBF);
  if (lead == 0xEDU) return follows(3, 0x80, 0x9F);
  if (lead >= 0xE1U && lead <= 0xEFU) return follows(3, 0x80, 0xBF);
  if (lead == 0xF0U) return follows(4, 0x90, 0xBF);
  if (lead >= 0xF1U && lead <= 0xF3U) return follows(4, 0x80, 0xBF);
  if (lead == 0xF4U) return follows(4, 0x80, 0x8F);
  return 0;
}

Diagnostic at_byte(std::string_view text, std::size_t byte, std::string code, std::string message,
                   std::string help) {
  const std::string_view before = text.substr(0, std::min(byte, text.size()));
  const std::size_t line_start = before.find_last_of('\n') + 1;  // npos + 1 is 0
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto column =
      1 + std::count_if(before.begin() + static_cast<std::ptrdiff_t>(line_start), before.end(),
                        [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
  return {std::move(code),
          std::move(message),
          std::move(help),
          "",
          static_cast<int>(line),
          static_cast<int>(column),
          1};
}

std::optional<Diagnostic> not_plain_text(std::string_view text) {
  if (text.size() > most_bytes) {
    return at_byte(text, 0, "file-too-large",
                   fmt::format("a job file may have 4 MiB, this one has {} bytes", text.size()),
                   "");
  }
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = utf8_length(text.substr(i));
    if (length == 0 || text[i] == '\0') {
      return at_byte(text, i, "not-utf-8", "this is not text in UTF-8",
                     "save the file as UTF-8 in the editor");
    }
    i += length;
  }
  return std::nullopt;
}

}  // namespace

std::string pointer_to(const std::string& parent, std::string_view key) {
  std::string pointer = parent + "/";
  for (const char c : key) {
    if (c == '~')
      pointer += "~0";
    else if (c == '/')
      pointer += "~1";
    else
      pointer += c;
  }
  return pointer;
}

std::string pointer_to(const std::string& parent, std::size_t index) {
  return parent + "/" + std::to_string(index);
}

JsonResult read_json(std::string_view text) {
  if (auto problem = not_plain_text(text)) return {std::nullopt, {*problem}};
  JsonScanner scanner(text);
  if (!scanner.scan()) return {std::nullopt, scanner.problems};
  auto root = parse_json(text);
  // Not seen yet: the scanner accepts nothing that the parser does not.
  if (!root)
    return {std::nullopt, {at_byte(text, 0, "bad-json", "this cannot be read as JSON", "")}};
  return {JsonText{*std::move(root), std::move(scanner.places)}, std::move(scanner.problems)};
}

}  // namespace strikeoff
