// SPDX-License-Identifier: MIT
#include "render/text.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::text;

namespace {

constexpr TextPage narrow{60, false};
constexpr TextPage colored{100, true};

/// What a terminal shows: the text without its escape sequences.
std::string seen(std::string text) {
  for (std::size_t at = text.find('\x1b'); at != std::string::npos; at = text.find('\x1b')) {
    text.erase(at, text.find('m', at) + 1 - at);
  }
  return text;
}

}  // namespace

TEST_CASE("a paragraph hangs under its label") {
  CHECK(paragraph("!! ", std::string(95, 'a') + " b").str() ==
        "!! " + std::string(95, 'a') + " b\n");
  CHECK(paragraph("!! ", std::string(96, 'a') + " b").str() ==
        "!! " + std::string(96, 'a') + "\n   b\n");
}

TEST_CASE("a text is laid out for the width it is printed in") {
  const Text text = paragraph("- ", std::string(40, 'a') + " " + std::string(40, 'b'));
  CHECK(text.str() == "- " + std::string(40, 'a') + " " + std::string(40, 'b') + "\n");
  CHECK(text.str(narrow) == "- " + std::string(40, 'a') + "\n  " + std::string(40, 'b') + "\n");
}

TEST_CASE("a heading stands apart from what is before it and never begins with an empty line") {
  CHECK((heading("CUT") + "  one\n" + heading("POUR")).str() == "CUT\n---\n  one\n\nPOUR\n----\n");
}

TEST_CASE("emphasis adds escape sequences around words and changes none of them") {
  const Text text = heading("CHECKS") + paragraph("  STOP     ", "too thin", Emphasis::stop) +
                    paragraph("  caution  ", "wind", Emphasis::caution) +
                    paragraph("  ok       ", "water");
  CHECK(text.str(colored) ==
        "\x1b[1mCHECKS\x1b[0m\n------\n"
        "  \x1b[1;31mSTOP\x1b[0m     too thin\n"
        "  \x1b[33mcaution\x1b[0m  wind\n"
        "  ok       water\n");
  CHECK(seen(text.str(colored)) == text.str());
}

TEST_CASE("control characters reach no block of a text") {
  const std::string evil = "a\x1b]0;x\x07\r\b\xc2\x9b";
  Table table({{"t"}});
  table.add({evil});
  const Text text = Text(Heading{evil}) + paragraph(evil + ": ", evil) + placed(table);
  const std::string shown = text.str();
  CHECK(std::none_of(shown.begin(), shown.end(), [](char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == '\x7f';
  }));
  CHECK(shown.find("\xc2\x9b") == std::string::npos);
}

TEST_CASE("nothing added to nothing is empty") {
  CHECK((Text("") + Text()).empty());
  CHECK(Text("").str().empty());
  CHECK_FALSE(heading("CUT").empty());
}
