# Fails where PROGRAM, with ARGUMENTS, does not print what FILE holds.
#
#     cmake -DPROGRAM=build/release/tests/dossiers/dossier_outcomes -DFILE=tests/dossiers/outcomes.txt -DWRITE=ON -P tests/support/same_output.cmake
#
# writes what it prints now.
include(${CMAKE_CURRENT_LIST_DIR}/held_text.cmake)
execute_process(COMMAND ${PROGRAM} ${ARGUMENTS} OUTPUT_VARIABLE printed RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "${PROGRAM} ended with ${status}")
endif()
hold_text("${printed}" ${FILE})
