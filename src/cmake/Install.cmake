# SPDX-License-Identifier: MIT
# What `cmake --install` puts where: the program with what belongs to it, and the library for
# programs that plan pours themselves.
include(CMakePackageConfigHelpers)

# The program.
configure_file(man/strikeoff.1.in strikeoff.1 @ONLY)
find_program(STRIKEOFF_GZIP gzip REQUIRED)
add_custom_command(OUTPUT strikeoff.1.gz
  COMMAND ${STRIKEOFF_GZIP} -9nc strikeoff.1 > strikeoff.1.gz
  DEPENDS ${CMAKE_CURRENT_BINARY_DIR}/strikeoff.1 VERBATIM)
add_custom_target(manual ALL DEPENDS strikeoff.1.gz)

install(TARGETS strikeoff_exe COMPONENT program)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/strikeoff.1.gz
  DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES completions/strikeoff.bash RENAME strikeoff
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
install(FILES completions/strikeoff.fish
  DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)
# Debian's zsh looks under /usr/local in one place and under /usr in another.
install(FILES completions/_strikeoff
  DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/site-functions COMPONENT local)
install(FILES completions/_strikeoff
  DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT debian EXCLUDE_FROM_ALL)
install(DIRECTORY ${data}/schema DESTINATION ${CMAKE_INSTALL_DATADIR}/strikeoff COMPONENT program)

# The library.
install(TARGETS strikeoff EXPORT strikeoffTargets COMPONENT development
  FILE_SET HEADERS COMPONENT development)
set(config_place ${CMAKE_INSTALL_LIBDIR}/cmake/strikeoff)
install(EXPORT strikeoffTargets NAMESPACE strikeoff:: DESTINATION ${config_place}
  COMPONENT development)
configure_package_config_file(cmake/strikeoffConfig.cmake.in strikeoffConfig.cmake
  INSTALL_DESTINATION ${config_place})
write_basic_package_version_file(strikeoffConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/strikeoffConfig.cmake
  ${CMAKE_CURRENT_BINARY_DIR}/strikeoffConfigVersion.cmake
  DESTINATION ${config_place} COMPONENT development)
# From the file to the prefix, so that the installed tree may be moved.
file(RELATIVE_PATH pc_to_prefix /prefix/${CMAKE_INSTALL_LIBDIR}/pkgconfig /prefix)
configure_file(cmake/strikeoff.pc.in strikeoff.pc @ONLY)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/strikeoff.pc
  DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig COMPONENT development)
