# cmake -C tools/cmake/release.cmake -B build/release -G Ninja
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
# What is built once and whole; dev.cmake compiles each file alone, and so sees a header that is missing.
set(GRAINSIDE_IN_FEW_FILES ON CACHE BOOL "")
# A process for each of seven thousand tests takes three times as long as the tests.
set(GRAINSIDE_WHOLE_TEST_PROGRAMS ON CACHE BOOL "")
