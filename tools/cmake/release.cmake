# cmake -C tools/cmake/release.cmake -B build/release -G Ninja
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
