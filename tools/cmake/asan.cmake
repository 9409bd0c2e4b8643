# cmake -C tools/cmake/asan.cmake -B build/asan -G Ninja
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O1 -g1 -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
set(GRAINSIDE_WHOLE_TEST_PROGRAMS ON CACHE BOOL "")
set(GRAINSIDE_TOOL_IN_FEW_FILES ON CACHE BOOL "")
