# What `cmake --install` lays down: library, public headers, the tool, its man pages and the rule
# reference, and what find_package and
# pkg-config need. tests/install builds against an installed copy.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/grainside)
install(TARGETS grainside EXPORT grainsideTargets
  ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
  LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR}
  INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(DIRECTORY lib/include/ ${PROJECT_BINARY_DIR}/include/ DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
  FILES_MATCHING PATTERN "*.h")
install(EXPORT grainsideTargets NAMESPACE grainside:: DESTINATION ${package_dir})

configure_package_config_file(tools/cmake/grainsideConfig.cmake.in ${PROJECT_BINARY_DIR}/grainsideConfig.cmake
  INSTALL_DESTINATION ${package_dir})
# Below 1.0 every minor version may break those who use it.
write_basic_package_version_file(${PROJECT_BINARY_DIR}/grainsideConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/grainsideConfig.cmake ${PROJECT_BINARY_DIR}/grainsideConfigVersion.cmake
  DESTINATION ${package_dir})

configure_file(tools/cmake/grainside.pc.in ${PROJECT_BINARY_DIR}/grainside.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/grainside.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig)

if(TARGET grainside_tool)
  install(TARGETS grainside_tool RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
  install(FILES ${PROJECT_BINARY_DIR}/tools/rules.html DESTINATION ${CMAKE_INSTALL_DOCDIR})
  install(FILES ${PROJECT_BINARY_DIR}/tools/grainside-rules.7 DESTINATION ${CMAKE_INSTALL_MANDIR}/man7)
endif()
if(EXISTS ${PROJECT_SOURCE_DIR}/tools/man/grainside.1)
  install(FILES tools/man/grainside.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
endif()
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
