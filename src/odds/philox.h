// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstdint>

namespace strikeoff {

/// Philox 4x32-10: 128 random bits from a counter and a key, with no state between calls, so that
/// a pour's numbers depend on its number alone and not on which thread pours it. Salmon, Moraes,
/// Dror, Shaw: Parallel random numbers: as easy as 1, 2, 3, SC'11 (2011); constants from memory,
/// held by its published known answers in the tests.
[[nodiscard]] constexpr std::array<std::uint32_t, 4> philox(std::array<std::uint32_t, 4> counter,
                                                            std::array<std::uint32_t, 2> key) {
  for (int round = 0; round < 10; ++round) {
    const std::uint64_t a = std::uint64_t{0xD2511F53} * counter[0];
    const std::uint64_t b = std::uint64_t{0xCD9E8D57} * counter[2];
    counter = {
        static_cast<std::uint32_t>(b >> 32U) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(b),
        static_cast<std::uint32_t>(a >> 32U) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(a)};
    key[0] += 0x9E3779B9;
    key[1] += 0xBB67AE85;
  }
  return counter;
}

/// The middle of one of 2^32 equal parts of (0, 1).
[[nodiscard]] constexpr double unit_interval(std::uint32_t bits) {
  return (bits + 0.5) * 0x1p-32;
}

}  // namespace strikeoff
