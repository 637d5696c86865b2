# SPDX-License-Identifier: MIT
# How every target of the project is compiled. Consumers never see these flags.
add_library(strikeoff_options INTERFACE)
target_compile_features(strikeoff_options INTERFACE cxx_std_20)
target_compile_options(strikeoff_options INTERFACE
  -ffp-contract=off            # the same bytes on every machine: no fused multiply-add
  -Wall -Wextra -Wpedantic
  # A name that hides another; in a unity build also one of another file, which does no harm. Nor
  # does it there that a type of a header is completed in a file that is included.
  $<IF:$<BOOL:${CMAKE_UNITY_BUILD}>,$<$<CXX_COMPILER_ID:GNU>:-Wno-subobject-linkage>,-Wshadow>
  -Wconversion -Wsign-conversion -Wdouble-promotion  # a value that changes on the way
  -Wold-style-cast -Wcast-align
  -Wnon-virtual-dtor -Woverloaded-virtual
  -Wformat=2 -Wimplicit-fallthrough -Wundef
  $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond;-Wduplicated-branches;-Wlogical-op;-Wuseless-cast;-Wsuggest-override>
  # With optimization g++ 12 warns of overlaps in std::string (GCC bug 105651) and of members of
  # std::variant and std::optional that cannot be; the sanitizer build looks for real ones.
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict;-Wno-maybe-uninitialized>
  $<$<BOOL:${STRIKEOFF_WARNINGS_AS_ERRORS}>:-Werror>)
if(STRIKEOFF_SANITIZE)
  target_compile_options(strikeoff_options INTERFACE
    -fsanitize=${STRIKEOFF_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(strikeoff_options INTERFACE -fsanitize=${STRIKEOFF_SANITIZE})
endif()
if(STRIKEOFF_BUILD_FUZZER)  # tells libFuzzer which ways the code has gone
  target_compile_options(strikeoff_options INTERFACE -fsanitize=fuzzer-no-link)
endif()
