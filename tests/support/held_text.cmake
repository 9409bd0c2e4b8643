# hold_text(TEXT FILE): fails, with the difference, where FILE does not hold TEXT; with -DWRITE=ON it is written there. What holds
# now is left in the file NOW, where it is given.
function(hold_text text file)
  if(WRITE)
    file(WRITE ${file} "${text}")
    return()
  endif()
  file(READ ${file} held)
  if(NOT text STREQUAL held)
    if(NOT NOW)
      get_filename_component(name ${file} NAME)
      set(NOW ${CMAKE_CURRENT_BINARY_DIR}/${name}.now)
    endif()
    file(WRITE ${NOW} "${text}")
    execute_process(COMMAND diff -u ${file} ${NOW} OUTPUT_VARIABLE difference)
    message(FATAL_ERROR "What is said now is not what ${file} holds. If each line below is meant, write it anew (-DWRITE=ON):\n"
      "${difference}")
  endif()
endfunction()
