# cmake -C tools/cmake/tidy.cmake -B build/tidy -G Ninja     (clang-tidy on each file as it is compiled)
#
# tools/test does the same without compiling and remembers the files that passed: tools/checks/tidy.
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_CLANG_TIDY clang-tidy CACHE STRING "")
set(GRAINSIDE_BUILD_TESTS OFF CACHE BOOL "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
