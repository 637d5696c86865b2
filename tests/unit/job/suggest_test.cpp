// SPDX-License-Identifier: MIT
#include "job/suggest.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("edit distance counts inserts and deletes and swaps of neighbours", "[job]") {
  CHECK(edit_distance("", "") == 0);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);  // Wagner and Fischer, JACM 21 (1974)
  CHECK(edit_distance("lenght", "length") == 1);
  CHECK(edit_distance("miter", "mitre") == 1);
  CHECK(edit_distance("ca", "abc") == 3);  // optimal string alignment, not full Damerau
}

TEST_CASE("a word is suggested only when it is near", "[job]") {
  const std::vector<std::string> keys{"length", "depth", "overhang", "mix"};
  CHECK(nearest("lenght", keys) == "length");
  CHECK(nearest("overhangs", keys) == "overhang");
  CHECK(nearest("mx", keys).empty());
  CHECK(nearest("mux", keys) == "mix");
  CHECK(nearest("width", keys).empty());
  CHECK(nearest("colour", keys).empty());
  CHECK(nearest(std::string(10000, 'x'), keys).empty());
  CHECK(did_you_mean("dept", keys, "none") == "did you mean \"depth\"?");
  CHECK(did_you_mean("colour", keys, "none") == "none");
  CHECK(quoted_list({"a", "b", "c"}) == "\"a\", \"b\" and \"c\"");
  CHECK(quoted_list({"a"}) == "\"a\"");
}

TEST_CASE("a word for a size is taken for ours where it is no misspelling", "[job]") {
  CHECK(meant_by("width", {"length", "depth"}) == "depth");
  CHECK(meant_by("depth", {"base", "thickness"}) == "thickness");
  CHECK(meant_by("height", {"length", "depth"}) == "depth");
  CHECK(meant_by("height", {"thickness", "depth"}) == "thickness");
  CHECK(meant_by("widht", {"length", "width", "depth"}) == "width");
  CHECK(meant_by("width", {"bag", "yield"}).empty());
  CHECK(did_you_mean("width", {"length", "depth"}, "none") == "did you mean \"depth\"?");
}
