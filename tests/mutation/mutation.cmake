# cmake -C tests/mutation/mutation.cmake -B build/mutation -G Ninja
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(GRAINSIDE_IN_FEW_FILES ON CACHE BOOL "")
set(GRAINSIDE_WHOLE_TEST_PROGRAMS ON CACHE BOOL "")
set(GRAINSIDE_BUILD_PYTHON OFF CACHE STRING "")
# One library that all test programs load: a changed source is compiled and linked once, however many programs look at it.
set(BUILD_SHARED_LIBS ON CACHE BOOL "")
set(GRAINSIDE_MUTABLE claims rules identify measure CACHE STRING "")
