# cmake -C tools/cmake/asan.cmake -B build/asan -G Ninja     (clang 14)
#
# Address and undefined-behaviour sanitizers for the tests, containers that check their indices, and the coverage that libFuzzer asks for: one build serves both.
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O1 -g1 -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -D_GLIBCXX_ASSERTIONS" CACHE STRING "")
# A hundred programs are linked; binutils has this one too, and it takes half the time.
set(CMAKE_EXE_LINKER_FLAGS "-fuse-ld=gold" CACHE STRING "")
# Lines suffice in a stack: what a debugger needs besides, which Debug adds, costs a fifth of the time.
set(CMAKE_CXX_FLAGS_DEBUG "" CACHE STRING "")
set(GRAINSIDE_FUZZ ON CACHE BOOL "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
set(GRAINSIDE_WHOLE_TEST_PROGRAMS ON CACHE BOOL "")
set(GRAINSIDE_IN_FEW_FILES ON CACHE BOOL "")
