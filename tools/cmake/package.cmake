# Debian packages by CPack: grainside (the tool) and libgrainside-dev (library, headers and what finds them). In a build tree:
#     cpack
# The Python module is not among them: where Debian looks for it depends on the version of Python.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME grainside)
set(CPACK_PACKAGE_VENDOR "Grainside")
set(CPACK_PACKAGE_CONTACT "The maintainers of Grainside <maintainers@grainside.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_RESOURCE_FILE_LICENSE ${PROJECT_SOURCE_DIR}/LICENSE)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL dev)
if(TARGET grainside_tool)
  list(APPEND CPACK_COMPONENTS_ALL tool)
endif()
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_TOOL_PACKAGE_NAME grainside)
set(CPACK_DEBIAN_TOOL_PACKAGE_SECTION text)
set(CPACK_DEBIAN_TOOL_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_TOOL_DESCRIPTION "The command line tool, its manual pages and completion for bash, zsh and fish.")
set(CPACK_DEBIAN_DEV_PACKAGE_NAME libgrainside-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
# A static library needs those that it stands on.
set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libyaml-cpp-dev, libfmt-dev, libsimdjson-dev, libmd-dev, libxml2-dev, \
zlib1g-dev, libzstd-dev")
set(CPACK_COMPONENT_DEV_DESCRIPTION "The library, its headers for C++ and C, and what find_package and pkg-config need.")
include(CPack)
