// SPDX-License-Identifier: MIT
#include "odds/philox.h"

#include <catch2/catch.hpp>

namespace strikeoff {
namespace {

using Bits = std::array<std::uint32_t, 4>;

// The known answers for philox4x32-10 that come with Random123 (Salmon et al. 2011), from memory:
// all three cannot come out right by chance.
TEST_CASE("philox gives its published known answers") {
  CHECK(philox({0, 0, 0, 0}, {0, 0}) == Bits{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8});
  CHECK(philox({0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff}, {0xffffffff, 0xffffffff}) ==
        Bits{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd});
  // The digits of pi.
  CHECK(philox({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}) ==
        Bits{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1});
}

TEST_CASE("bits become numbers strictly between 0 and 1") {
  CHECK(unit_interval(0) > 0);
  CHECK(unit_interval(0xffffffff) < 1);
  CHECK(unit_interval(0x80000000) == 0.5 + 0x1p-33);
}

}  // namespace
}  // namespace strikeoff
