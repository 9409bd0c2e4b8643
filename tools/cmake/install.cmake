# What `cmake --install` lays down: library, public headers, the tool, its man pages, the rule reference and completion for
# shells, and what find_package and pkg-config need. tests/install builds against an installed copy. Components: tool
# and dev, which become a Debian package each (package.cmake), and python.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/grainside)
install(TARGETS grainside EXPORT grainsideTargets
  ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT dev
  LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT dev
  INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(DIRECTORY lib/include/ ${PROJECT_BINARY_DIR}/include/ DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT dev
  FILES_MATCHING PATTERN "*.h")
install(EXPORT grainsideTargets NAMESPACE grainside:: DESTINATION ${package_dir} COMPONENT dev)

configure_package_config_file(tools/cmake/grainsideConfig.cmake.in ${PROJECT_BINARY_DIR}/grainsideConfig.cmake
  INSTALL_DESTINATION ${package_dir})
# Below 1.0 every minor version may break those who use it.
write_basic_package_version_file(${PROJECT_BINARY_DIR}/grainsideConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/grainsideConfig.cmake ${PROJECT_BINARY_DIR}/grainsideConfigVersion.cmake
  DESTINATION ${package_dir} COMPONENT dev)

file(RELATIVE_PATH GRAINSIDE_PREFIX_FROM_PC /prefix/${CMAKE_INSTALL_LIBDIR}/pkgconfig /prefix)
string(REGEX REPLACE "/$" "" GRAINSIDE_PREFIX_FROM_PC "${GRAINSIDE_PREFIX_FROM_PC}")
configure_file(tools/cmake/grainside.pc.in ${PROJECT_BINARY_DIR}/grainside.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/grainside.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig COMPONENT dev)

if(TARGET grainside_tool)
  install(TARGETS grainside_tool RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT tool)
  install(FILES ${PROJECT_BINARY_DIR}/tools/rules.html LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT tool)
  install(FILES tools/man/grainside.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT tool)
  install(FILES ${PROJECT_BINARY_DIR}/tools/grainside-rules.7 DESTINATION ${CMAKE_INSTALL_MANDIR}/man7 COMPONENT tool)
  set(completion ${PROJECT_BINARY_DIR}/tools/completion)
  install(FILES ${completion}/grainside DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT tool)
  install(FILES ${completion}/grainside.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT tool)
  # Debian's zsh looks here for what packages bring, and there for what a machine's owner installs.
  install(CODE "
    set(folder zsh/site-functions)
    if(CMAKE_INSTALL_PREFIX STREQUAL \"/usr\")
      set(folder zsh/vendor-completions)
    endif()
    file(INSTALL \"${completion}/_grainside\"
      DESTINATION \"\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DATADIR}/\${folder}\")" COMPONENT tool)
endif()
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/libgrainside-dev COMPONENT dev)

if(PROJECT_IS_TOP_LEVEL)
  include(tools/cmake/package.cmake)
endif()
