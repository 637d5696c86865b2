# SPDX-License-Identifier: MIT
# Installs the build to a fresh prefix, then configures, builds and runs the consumer against it.
# Once more with pkg-config, where there is one.
# In: BUILD, SOURCE, WORK, COMPILER, BUILD_TYPE, FLAGS, PKG_CONFIG, LIBDIR
file(REMOVE_RECURSE ${WORK})

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status OUTPUT_VARIABLE text ERROR_VARIABLE text)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "${ARGN}: ${status}\n${text}")
  endif()
  set(output "${text}" PARENT_SCOPE)
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/prefix)
run(${CMAKE_COMMAND} -S ${SOURCE} -B ${WORK}/build -G Ninja -DCMAKE_PREFIX_PATH=${WORK}/prefix
  -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_BUILD_TYPE=${BUILD_TYPE} -DCMAKE_CXX_FLAGS=${FLAGS})
run(${CMAKE_COMMAND} --build ${WORK}/build)
run(${WORK}/build/consumer)
if(NOT output MATCHES "batch")
  message(FATAL_ERROR "the consumer printed no plan:\n${output}")
endif()

if(PKG_CONFIG)
  set(ENV{PKG_CONFIG_PATH} ${WORK}/prefix/${LIBDIR}/pkgconfig)
  run(${PKG_CONFIG} --cflags --libs strikeoff)
  separate_arguments(flags UNIX_COMMAND "${output}")
  run(${COMPILER} -std=c++20 ${FLAGS} ${SOURCE}/main.cpp ${flags} -o ${WORK}/by-pkg-config)
  run(${WORK}/by-pkg-config)
  if(NOT output MATCHES "batch")
    message(FATAL_ERROR "the consumer built with pkg-config printed no plan:\n${output}")
  endif()
endif()

# The installed program stands alone, and so do the schemas beside it.
run(${WORK}/prefix/bin/strikeoff --version)
foreach(schema job plan log)
  if(NOT EXISTS ${WORK}/prefix/share/strikeoff/schema/${schema}.schema.json)
    message(FATAL_ERROR "${schema}.schema.json was not installed")
  endif()
endforeach()
