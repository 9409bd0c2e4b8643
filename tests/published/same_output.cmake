# Fails where PROGRAM does not print what FILE holds.
execute_process(COMMAND ${PROGRAM} OUTPUT_VARIABLE printed RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "${PROGRAM} ended with ${status}")
endif()
file(READ ${FILE} held)
if(NOT printed STREQUAL held)
  message(FATAL_ERROR "${FILE} is not what the program says now: write its output there, and read the difference")
endif()
