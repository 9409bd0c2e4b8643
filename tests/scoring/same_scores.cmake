# Where the open corpus and the labels disagree, and all scores, must be what FILE holds. So no change of code or rules moves a
# listing unseen: the difference of FILE shows what it moved, line by line, to whoever reads the change. NOW is a file for what holds now.
#
#     cmake -DSCORE=build/release/tests/scoring/score -DFILE=tests/scoring/disagreements.txt -DWRITE=ON -P tests/scoring/same_scores.cmake
#
# writes what holds now. Run in the project's folder.
set(all "")
foreach(set IN ITEMS a b c d e f g h i j k l)
  list(APPEND all corpus/open_${set}.jsonl)
endforeach()

function(add_scores title)
  execute_process(COMMAND ${SCORE} --errors ${ARGN} OUTPUT_VARIABLE printed RESULT_VARIABLE status)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "${SCORE} ${ARGN} ended with ${status}")
  endif()
  set(scores "${scores}== ${title}\n\n${printed}\n" PARENT_SCOPE)
endfunction()

set(scores "")
add_scores("no market" ${all})
foreach(market IN ITEMS us eu uk)
  add_scores(${market} corpus/open_m.jsonl corpus/open_n.jsonl corpus/open_o.jsonl corpus/open_p.jsonl corpus/open_q.jsonl corpus/open_r.jsonl corpus/open_s.jsonl corpus/open_t.jsonl corpus/open_u.jsonl corpus/open_v.jsonl --market ${market} --on 2026-11-26)
endforeach()

include(${CMAKE_CURRENT_LIST_DIR}/../support/held_text.cmake)
hold_text("${scores}" ${FILE})
