// Letters of other scripts that pass for Latin ones in a product text.
//
// Chosen from the confusables of UTS #39 (Unicode security mechanisms) for the scripts whose letters are at hand on a
// keyboard. Small Cyrillic letters that look like small Latin capitals are listed as well: in a word that is otherwise
// Latin they have no other reason to stand there. Upper and lower case differ: a Greek capital nu looks like N, a
// small one like v. Accented letters follow from their base.
#ifndef GRAINSIDE_TEXT_LOOK_ALIKES_H
#define GRAINSIDE_TEXT_LOOK_ALIKES_H

namespace grainside::text {

struct LookAlike {
    char32_t letter;
    char latin;  // small
};

inline constexpr LookAlike kLookAlikes[] = {
    // Greek.
    {0x0391, 'a'},
    {0x0392, 'b'},
    {0x0395, 'e'},
    {0x0396, 'z'},
    {0x0397, 'h'},
    {0x0399, 'i'},
    {0x039A, 'k'},
    {0x039C, 'm'},
    {0x039D, 'n'},
    {0x039F, 'o'},
    {0x03A1, 'p'},
    {0x03A4, 't'},
    {0x03A5, 'y'},
    {0x03A7, 'x'},
    {0x03B1, 'a'},
    {0x03B3, 'y'},
    {0x03B5, 'e'},
    {0x03B7, 'n'},
    {0x03B9, 'i'},
    {0x03BA, 'k'},
    {0x03BD, 'v'},
    {0x03BF, 'o'},
    {0x03C1, 'p'},
    {0x03C3, 'o'},
    {0x03C4, 't'},
    {0x03C5, 'u'},
    {0x03C7, 'x'},
    {0x03F2, 'c'},
    {0x03F3, 'j'},
    {0x03F9, 'c'},
    {0x037F, 'j'},
    // Cyrillic.
    {0x0405, 's'},
    {0x0406, 'i'},
    {0x0408, 'j'},
    {0x0410, 'a'},
    {0x0412, 'b'},
    {0x0415, 'e'},
    {0x041A, 'k'},
    {0x041C, 'm'},
    {0x041D, 'h'},
    {0x041E, 'o'},
    {0x0420, 'p'},
    {0x0421, 'c'},
    {0x0422, 't'},
    {0x0423, 'y'},
    {0x0425, 'x'},
    {0x042C, 'b'},
    {0x0430, 'a'},
    {0x0432, 'b'},
    {0x0433, 'r'},
    {0x0435, 'e'},
    {0x043A, 'k'},
    {0x043C, 'm'},
    {0x043D, 'h'},
    {0x043E, 'o'},
    {0x0440, 'p'},
    {0x0441, 'c'},
    {0x0442, 't'},
    {0x0443, 'y'},
    {0x0445, 'x'},
    {0x044C, 'b'},
    {0x0455, 's'},
    {0x0456, 'i'},
    {0x0458, 'j'},
    {0x0474, 'v'},
    {0x0475, 'v'},
    {0x04AE, 'y'},
    {0x04AF, 'y'},
    {0x04BA, 'h'},
    {0x04BB, 'h'},
    {0x04C0, 'l'},
    {0x04CF, 'l'},
    {0x0501, 'd'},
    {0x050C, 'g'},
    {0x051A, 'q'},
    {0x051B, 'q'},
    {0x051C, 'w'},
    {0x051D, 'w'},
    // Armenian.
    {0x053C, 'l'},
    {0x054D, 'u'},
    {0x054F, 's'},
    {0x0555, 'o'},
    {0x0561, 'w'},
    {0x0563, 'q'},
    {0x0566, 'q'},
    {0x0570, 'h'},
    {0x0575, 'j'},
    {0x0578, 'n'},
    {0x057D, 'u'},
    {0x0581, 'g'},
    {0x0585, 'o'},
};

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_LOOK_ALIKES_H
