# cmake -C tools/cmake/coverage.cmake -B build/coverage -G Ninja     (clang 14)
#
# Counts which lines and branches are reached; tests/fuzz/coverage.py builds, runs and reads it.
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O1 -g0 -fprofile-instr-generate -fcoverage-mapping" CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "" CACHE STRING "")
set(GRAINSIDE_WHOLE_TEST_PROGRAMS ON CACHE BOOL "")
set(GRAINSIDE_IN_FEW_FILES ON CACHE BOOL "")
