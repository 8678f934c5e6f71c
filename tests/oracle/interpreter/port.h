/* How the programs of this folder send what they found, as text, over UDR0. */
#ifndef PORT_H
#define PORT_H

#include <avr/io.h>
#include <stdint.h>
#include <string.h>

static inline void send(uint8_t byte)
{
    while (!(UCSR0A & (1 << UDRE0))) {
    }
    UDR0 = byte;
}

static inline void text(const char *characters)
{
    while (*characters) {
        send(*characters++);
    }
}

static inline void hex(uint64_t value, int8_t digits)
{
    int8_t shift;
    for (shift = (digits - 1) * 4; shift >= 0; shift -= 4) {
        uint8_t digit = (value >> shift) & 0xF;
        send(digit < 10 ? '0' + digit : 'A' + digit - 10);
    }
}

static inline void number(int32_t value)
{
    char digits[12];
    uint8_t count = 0;
    uint32_t rest = value;
    if (value < 0) {
        send('-');
        rest = -rest;
    }
    do {
        digits[count++] = '0' + rest % 10;
        rest /= 10;
    } while (rest);
    while (count) {
        send(digits[--count]);
    }
}

static inline void real(float value)
{
    uint32_t bits;
    memcpy(&bits, &value, sizeof bits);
    hex(bits, 8);
}

static inline void show(const char *name, int32_t value)
{
    text(name);
    text(" = ");
    number(value);
    send('\n');
}

static inline void show_text(const char *name, const char *value)
{
    text(name);
    text(" = ");
    text(value);
    send('\n');
}

static inline void show_hex(const char *name, uint64_t value)
{
    text(name);
    text(" = 0x");
    hex(value, 16);
    send('\n');
}

/* The bits of a float. */
static inline void show_real(const char *name, float value)
{
    text(name);
    text(" = ");
    real(value);
    send('\n');
}

#define SHOW(expression) show(#expression, (int32_t)(expression))
#define SHOW_HEX(expression) show_hex(#expression, (uint64_t)(expression))
#define SHOW_TEXT(expression) show_text(#expression, expression)
#define SHOW_REAL(expression) show_real(#expression, expression)

/* End of transmission. */
static inline void finish(void)
{
    send(4);
}

#endif
