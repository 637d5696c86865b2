// SPDX-License-Identifier: MIT
#include <iostream>

#include "cli/run.h"

int main(int argc, char** argv) {
  return strikeoff::cli::run({argv + 1, argv + argc}, std::cin, std::cout, std::cerr);
}
