#include "port.h"
#include <avr/pgmspace.h>

static const uint8_t sine[] PROGMEM = { 0, 49, 90, 117, 127, 117, 90, 49 };
static const int16_t steps[4][2] PROGMEM = { { 1, 0 }, { 0, -1 }, { -1, 0 }, { 0, 1 } };
static const uint32_t rates[] PROGMEM = { 1200, 9600, 115200 };
static const char first[] PROGMEM = "left";
static const char second[] PROGMEM = "right";
static const char *const names[] PROGMEM = { first, second };

int main(void)
{
    char buffer[10];
    for (uint8_t i = 0; i < sizeof sine; i++)
        SHOW(pgm_read_byte(&sine[i]));
    for (uint8_t i = 0; i < 4; i++)
        SHOW((int16_t)pgm_read_word(&steps[i][1]));
    for (uint8_t i = 0; i < 3; i++)
        SHOW(pgm_read_dword(rates + i));
    for (uint8_t i = 0; i < 2; i++) {
        strcpy_P(buffer, (PGM_P)pgm_read_word(&names[i]));
        SHOW_TEXT(buffer);
    }
    SHOW(strlen_P(second));
    SHOW(strcmp_P("left", first));
    PGM_P p = PSTR("in place");
    for (char c; (c = pgm_read_byte(p)); p++)
        send(c);
    memcpy_P(buffer, sine + 2, 3);
    SHOW(buffer[1]);
    finish();
    return 0;
}
