# What is read of the open corpus and of the rules' own texts must be what the files of FOLDER say (README.md). NOW is a folder
# for what is read now.
#
#     cmake -DPROGRAM=build/release/tests/scoring/as_read -DFOLDER=tests/scoring/as_read -DWRITE=ON -P tests/scoring/same_as_read.cmake
#
# writes what holds now. Run in the project's folder.
if(WRITE)
  set(NOW ${FOLDER})
endif()
file(MAKE_DIRECTORY ${NOW})
file(GLOB old ${NOW}/*.txt)
if(old)
  file(REMOVE ${old})
endif()
set(corpus "")
foreach(set IN ITEMS a b c d e f g h i j k l m n o p q r s)
  list(APPEND corpus corpus/open_${set}.jsonl)
endforeach()
execute_process(COMMAND ${PROGRAM} ${NOW} ${corpus} RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "${PROGRAM} ended with ${status}")
endif()
if(WRITE)
  return()
endif()
execute_process(COMMAND diff -ru ${FOLDER} ${NOW} OUTPUT_VARIABLE difference RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  string(LENGTH "${difference}" length)
  if(length GREATER 20000)
    string(SUBSTRING "${difference}" 0 20000 difference)
    string(APPEND difference "\n... (diff -ru ${FOLDER} ${NOW} shows all)")
  endif()
  message(FATAL_ERROR "Texts are not read as ${FOLDER} says. If each line below is meant, write it anew (same_as_read.cmake) and "
    "give the reason in the commit:\n${difference}")
endif()
