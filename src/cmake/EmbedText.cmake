# SPDX-License-Identifier: MIT
# embed_text(TARGET name=FILE…): compiles text files into TARGET as
# `std::string_view strikeoff::embedded::name()`, declared in "embedded.h", so that the program
# runs from any place without its data beside it.
function(embed_text target)
  set(dir ${CMAKE_CURRENT_BINARY_DIR}/embedded)
  set(declarations "")
  set(definitions "")
  foreach(pair IN LISTS ARGN)
    string(REGEX MATCH "^([a-z_]+)=(.+)$" _ "${pair}")
    set(name ${CMAKE_MATCH_1})
    set(file ${CMAKE_MATCH_2})
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
    file(READ ${file} text)
    string(APPEND declarations "std::string_view ${name}();\n")
    string(APPEND definitions
      "std::string_view ${name}() {\n  return R\"~embed~(${text})~embed~\";\n}\n")
  endforeach()
  file(CONFIGURE OUTPUT ${dir}/embedded.h @ONLY CONTENT
    "#pragma once\n#include <string_view>\nnamespace strikeoff::embedded {\n@declarations@}\n")
  file(CONFIGURE OUTPUT ${dir}/embedded.cpp @ONLY CONTENT
    "#include \"embedded.h\"\nnamespace strikeoff::embedded {\n@definitions@}\n")
  # Longer literals than every compiler must take; those in use take them.
  set_source_files_properties(${dir}/embedded.cpp PROPERTIES
    COMPILE_OPTIONS -Wno-overlength-strings)
  target_sources(${target} PRIVATE ${dir}/embedded.cpp)
  target_include_directories(${target} PRIVATE ${dir})
endfunction()
