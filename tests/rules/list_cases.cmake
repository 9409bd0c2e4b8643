# Writes the CTest cases that PROGRAM lists into OUTPUT.
execute_process(COMMAND ${PROGRAM} --ctest OUTPUT_VARIABLE cases RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "rule_cases cannot list the rules (${status})")
endif()
file(WRITE ${OUTPUT} "${cases}")
