# SPDX-License-Identifier: MIT
# `cpack -G DEB` in a build directory: one Debian package with the program and what belongs to it.
# The library is not in it: who builds on it installs the source tree's own.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the strikeoff authors <strikeoff@localhost>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program debian)
set(CPACK_COMPONENTS_GROUPING ALL_COMPONENTS_IN_ONE)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_PACKAGE_NAME strikeoff)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_PACKAGE_DESCRIPTION
"Reads a job file that describes a worktop, bench, hearth or pad cast where it
stays, in batches from bagged mix. Says what to buy, what to cut, how much
water goes into which batch and when, and what could go wrong; also as a sheet
to print, as drawings, tables and a calendar.")

# The licence, and those of the header-only libraries that are part of the program.
set(copyright ${CMAKE_CURRENT_BINARY_DIR}/copyright)
file(READ LICENSE text)
foreach(library libcli11-dev nlohmann-json3-dev)
  set(other /usr/share/doc/${library}/copyright)
  if(EXISTS ${other})
    file(READ ${other} other_text)
    string(APPEND text "\nThe program contains ${library}:\n\n${other_text}")
  endif()
endforeach()
file(CONFIGURE OUTPUT copyright CONTENT "${text}" @ONLY)
install(FILES ${copyright} DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/strikeoff
  COMPONENT debian EXCLUDE_FROM_ALL)

include(CPack)
