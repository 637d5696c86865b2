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
add_python_test(terminal program/terminal_test.py)
add_python_test(manual program/manual_test.py)
find_program(STRIKEOFF_SHLIBDEPS dpkg-shlibdeps)
if(STRIKEOFF_SHLIBDEPS)
  add_python_test(package program/package_test.py)
  set_property(TEST package APPEND PROPERTY ENVIRONMENT STRIKEOFF_CPACK=${CMAKE_CPACK_COMMAND})
endif()

set(sanitize "")
if(STRIKEOFF_SANITIZE)
  set(sanitize -fsanitize=${STRIKEOFF_SANITIZE})
endif()
find_program(STRIKEOFF_PKG_CONFIG pkg-config)
add_test(NAME consumer COMMAND ${CMAKE_COMMAND}
  -DBUILD=${PROJECT_BINARY_DIR} -DSOURCE=${CMAKE_CURRENT_SOURCE_DIR}/consumer
  -DWORK=${CMAKE_CURRENT_BINARY_DIR}/consumer -DCOMPILER=${CMAKE_CXX_COMPILER}
  -DBUILD_TYPE=${CMAKE_BUILD_TYPE} -DFLAGS=${sanitize}
  "-DPKG_CONFIG=$<IF:$<BOOL:${STRIKEOFF_PKG_CONFIG}>,${STRIKEOFF_PKG_CONFIG},>"
  -DLIBDIR=${CMAKE_INSTALL_LIBDIR}
  -P ${CMAKE_CURRENT_SOURCE_DIR}/consumer/run.cmake)

# What the fuzzer has found worth keeping, without libFuzzer. How to run that: DEVELOPERS.md.
add_executable(fuzz_replay fuzz/replay.cpp fuzz/fuzz_plan.cpp)
target_link_libraries(fuzz_replay PRIVATE strikeoff strikeoff_options)
add_test(NAME fuzz-corpus COMMAND fuzz_replay ${CMAKE_CURRENT_SOURCE_DIR}/fuzz/corpus)

add_executable(fuzz_log_replay fuzz/replay.cpp fuzz/fuzz_log.cpp)
target_link_libraries(fuzz_log_replay PRIVATE strikeoff strikeoff_options)
add_test(NAME fuzz-logs COMMAND fuzz_log_replay ${CMAKE_CURRENT_SOURCE_DIR}/fuzz/logs)

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
# The same for every form the program has.
add_test(NAME bench-forms COMMAND ${bench_command} 3 all)
add_custom_target(measure-forms COMMAND ${bench_command} 101 all USES_TERMINAL)
# The same with everything of the pour left to the plan.
set(search_command bench $<TARGET_FILE:strikeoff_exe> $<TARGET_FILE:parse_echo>
  ${CMAKE_CURRENT_SOURCE_DIR}/bench/twelve-batches.json)
add_test(NAME bench-search COMMAND ${search_command} 3)
add_custom_target(measure-search COMMAND ${search_command} 501 USES_TERMINAL)

add_executable(scaling_bench bench/scaling_bench.cpp)
target_link_libraries(scaling_bench PRIVATE strikeoff strikeoff_options)
add_test(NAME scaling-bench COMMAND scaling_bench 2)
add_custom_target(measure-scaling COMMAND scaling_bench 50 USES_TERMINAL)

add_executable(cutting_bench bench/cutting_bench.cpp bench/cutting_cases.cpp support/arc_flow.cpp
  support/bar_oracles.cpp)
target_include_directories(cutting_bench PRIVATE
  ${CMAKE_CURRENT_SOURCE_DIR} ${PROJECT_SOURCE_DIR}/src)
target_link_libraries(cutting_bench PRIVATE
  strikeoff strikeoff_options nlohmann_json::nlohmann_json glpk_oracle)
set(cutting_data ${CMAKE_CURRENT_SOURCE_DIR}/bench/cutting)
set(one_dimension ${cutting_data}/oned_bpp.json ${cutting_data}/multilength_generated.json)
set(two_dimensions ${cutting_data}/g2d_furniture_A.json ${cutting_data}/g2d_binpack_class.json)
# The sets of which every problem must be proven; whatever time it takes.
add_test(NAME published-cutting COMMAND cutting_bench --must-prove
  ${one_dimension} ${cutting_data}/g2d_furniture_A.json)
add_custom_target(measure-cutting
  COMMAND cutting_bench ${one_dimension} ${two_dimensions} ${cutting_data}/realistic.json
  COMMAND cutting_bench --random 300 7
  COMMAND cutting_bench --against-glpk ${cutting_data}/realistic.json
  USES_TERMINAL)
add_executable(odds_bench bench/odds_bench.cpp)
target_link_libraries(odds_bench PRIVATE strikeoff strikeoff_options)
add_test(NAME odds-bench COMMAND odds_bench 500)
add_custom_target(measure-odds COMMAND odds_bench 1000000 USES_TERMINAL)

add_executable(resume_bench bench/resume_bench.cpp)
target_link_libraries(resume_bench PRIVATE strikeoff strikeoff_options)
add_test(NAME resume-bench COMMAND resume_bench 1)
add_custom_target(measure-resume COMMAND resume_bench 50 USES_TERMINAL)

# Documents, read by other programs than ours; a test whose reader is missing is left out.
add_python_test(csv documents/csv_test.py)
add_python_test(html documents/html_test.py)
execute_process(COMMAND ${STRIKEOFF_PYTHON} -c "import icalendar" RESULT_VARIABLE no_icalendar
  ERROR_QUIET)
if(NOT no_icalendar)
  add_python_test(ics documents/ics_test.py)
endif()
find_program(STRIKEOFF_CHROMIUM chromium)
find_program(STRIKEOFF_PDFTOTEXT pdftotext)
if(STRIKEOFF_CHROMIUM AND STRIKEOFF_PDFTOTEXT)
  add_python_test(pages documents/pages_test.py)
  set_property(TEST pages APPEND PROPERTY ENVIRONMENT
    "STRIKEOFF_CHROMIUM=${STRIKEOFF_CHROMIUM}" "STRIKEOFF_PDFTOTEXT=${STRIKEOFF_PDFTOTEXT}")
endif()

# The drawings in a browser and in another reader of SVG.
find_program(STRIKEOFF_RSVG_CONVERT rsvg-convert)
add_executable(write_drawings drawings/write_drawings.cpp)
target_link_libraries(write_drawings PRIVATE strikeoff strikeoff_options)
if(STRIKEOFF_CHROMIUM AND STRIKEOFF_RSVG_CONVERT)
  add_python_test(drawings drawings/drawings_test.py)
  set_property(TEST drawings APPEND PROPERTY ENVIRONMENT
    "WRITE_DRAWINGS=$<TARGET_FILE:write_drawings>;CHROMIUM=${STRIKEOFF_CHROMIUM};RSVG_CONVERT=${STRIKEOFF_RSVG_CONVERT}")
endif()
