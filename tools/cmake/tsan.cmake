# The thread sanitizer, for the tests labelled `threads`: tools/checks/threads build/tsan makes this build, runs them and
# counts the reports.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-O1 -g1 -fsanitize=thread" CACHE STRING "")
# Lines suffice in a stack.
set(CMAKE_CXX_FLAGS_DEBUG "" CACHE STRING "")
set(GRAINSIDE_STRICT ON CACHE BOOL "")
set(GRAINSIDE_IN_FEW_FILES ON CACHE BOOL "")
