/* The example of grainside_c.h. */
#include <grainside/grainside_c.h>
#include <stdio.h>

int main(void) {
#include "grainside_c.inc"
    return 0;
}
