# cmake -D INPUT=a.css -D OUTPUT=a.inc -P embed_style.cmake: the file as a raw string literal.
file(READ "${INPUT}" style)
file(WRITE "${OUTPUT}" "R\"css(${style})css\"\n")
