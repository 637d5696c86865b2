# SPDX-License-Identifier: MIT
# Tests of the built program and of the source tree. They need Debian's own Python, because that
# is the one python3-jsonschema installs for.
find_program(STRIKEOFF_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH)
if(NOT STRIKEOFF_PYTHON)
  message(FATAL_ERROR "python3 is missing: apt-get install python3 python3-jsonschema")
endif()

function(add_python_test name script)
  add_test(NAME ${name} COMMAND ${STRIKEOFF_PYTHON} -B ${CMAKE_CURRENT_SOURCE_DIR}/${script})
  set_tests_properties(${name} PROPERTIES ENVIRONMENT
    "STRIKEOFF=$<TARGET_FILE:strikeoff_exe>;STRIKEOFF_SOURCE_DIR=${PROJECT_SOURCE_DIR};PYTHONPATH=${CMAKE_CURRENT_SOURCE_DIR}/support")
endfunction()
add_python_test(schemas schema/schema_test.py)
add_python_test(readme docs/readme_test.py)
add_python_test(layers layers/layers_test.py)
add_python_test(golden golden/golden_test.py)
add_python_test(output program/output_test.py)
add_python_test(exit-status program/exit_status_test.py)

set(sanitize "")
if(STRIKEOFF_SANITIZE)
  set(sanitize -fsanitize=${STRIKEOFF_SANITIZE})
endif()
add_test(NAME consumer COMMAND ${CMAKE_COMMAND}
  -DBUILD=${PROJECT_BINARY_DIR} -DSOURCE=${CMAKE_CURRENT_SOURCE_DIR}/consumer
  -DWORK=${CMAKE_CURRENT_BINARY_DIR}/consumer -DCOMPILER=${CMAKE_CXX_COMPILER}
  -DBUILD_TYPE=${CMAKE_BUILD_TYPE} -DFLAGS=${sanitize}
  -P ${CMAKE_CURRENT_SOURCE_DIR}/consumer/run.cmake)

# What the fuzzer has found worth keeping, without libFuzzer. How to run that: DEVELOPERS.md.
add_executable(fuzz_replay fuzz/replay.cpp fuzz/fuzz_plan.cpp)
target_link_libraries(fuzz_replay PRIVATE strikeoff strikeoff_options)
add_test(NAME fuzz-corpus COMMAND fuzz_replay ${CMAKE_CURRENT_SOURCE_DIR}/fuzz/corpus)

add_executable(parse_echo bench/parse_echo.cpp)
target_link_libraries(parse_echo PRIVATE strikeoff_options nlohmann_json::nlohmann_json)
add_executable(bench bench/bench.cpp)
target_link_libraries(bench PRIVATE strikeoff_options)
set(bench_command bench $<TARGET_FILE:strikeoff_exe> $<TARGET_FILE:parse_echo>
  ${PROJECT_SOURCE_DIR}/examples/potting-bench/job.json)
# That it runs, not how fast: a busy machine fails no test.
add_test(NAME bench COMMAND ${bench_command} 3)
# The measurement itself, on a quiet machine: cmake --build build/release --target measure
add_custom_target(measure COMMAND ${bench_command} 501 USES_TERMINAL)
# The same with everything of the pour left to the plan.
set(search_command bench $<TARGET_FILE:strikeoff_exe> $<TARGET_FILE:parse_echo>
  ${CMAKE_CURRENT_SOURCE_DIR}/bench/twelve-batches.json)
add_test(NAME bench-search COMMAND ${search_command} 3)
add_custom_target(measure-search COMMAND ${search_command} 501 USES_TERMINAL)

add_executable(scaling_bench bench/scaling_bench.cpp)
target_link_libraries(scaling_bench PRIVATE strikeoff strikeoff_options)
add_test(NAME scaling-bench COMMAND scaling_bench 2)
add_custom_target(measure-scaling COMMAND scaling_bench 50 USES_TERMINAL)
