# cmake -C tools/cmake/dev.cmake -B build/dev -G Ninja
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
