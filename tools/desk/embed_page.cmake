# cmake -D FILES="a.html;b.css" -D OUTPUT=page.inc -P embed_page.cmake: each file as an entry {name, bytes} of a list.
# Bytes are written as numbers, because CMake takes semicolons and brackets of a text for its own.
set(entries "")
foreach(file IN LISTS FILES)
  get_filename_component(name "${file}" NAME)
  file(READ "${file}" digits HEX)
  string(LENGTH "${digits}" size)
  math(EXPR size "${size} / 2")
  string(REGEX REPLACE "(..)" "\\\\x\\1" literal "${digits}")
  string(REPLACE "\\x0a" "\\x0a\"\n\"" literal "${literal}")
  string(APPEND entries "{\"${name}\", std::string_view(\"${literal}\", ${size})},\n")
endforeach()
file(WRITE "${OUTPUT}" "// Made by embed_page.cmake from the files of tools/desk/page.\n${entries}")
