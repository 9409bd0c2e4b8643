# cmake -C tools/cmake/tsan.cmake -B build/tsan -G Ninja     then: ctest --test-dir build/tsan -L threads
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O1 -g1 -fsanitize=thread" CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
