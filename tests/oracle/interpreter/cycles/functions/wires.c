#include "measured.h"
#include <util/parity.h>

#define CLOCK 2
#define DATA 3

/* calls: () */
MEASURED void hold_clock(void)
{
    PORTD &= ~(1 << CLOCK);
    DDRD |= 1 << CLOCK;
}

/* calls: () () () */
MEASURED uint8_t data_level(void)
{
    return (PIND >> DATA) & 1;
}

/* calls: () () () () */
MEASURED bool clock_is_low(void)
{
    return !(PIND & (1 << CLOCK));
}

/* calls: () () () */
MEASURED void wait_for_fall(void)
{
    while (!(PIND & (1 << CLOCK))) {
    }
    while (PIND & (1 << CLOCK)) {
    }
}

/* calls: () () () */
MEASURED bool wait_with_patience(void)
{
    uint16_t patience = 2000;
    while (PIND & (1 << CLOCK)) {
        if (--patience == 0) {
            return false;
        }
    }
    return true;
}

static inline void await_fall(void)
{
    while (!(PIND & (1 << CLOCK))) {
    }
    while (PIND & (1 << CLOCK)) {
    }
}

/* calls: () () () */
MEASURED uint8_t receive_byte(void)
{
    uint8_t byte = 0;
    await_fall();
    for (uint8_t bit = 0; bit < 8; bit++) {
        await_fall();
        byte >>= 1;
        if (PIND & (1 << DATA)) {
            byte |= 0x80;
        }
    }
    await_fall();
    await_fall();
    return byte;
}

/* calls: (0xf4) (0x00) (0xff) */
MEASURED bool send_byte(uint8_t byte)
{
    bool parity = true;
    DDRD |= 1 << DATA;
    for (uint8_t bit = 0; bit < 8; bit++) {
        await_fall();
        if (byte & 1) {
            DDRD &= ~(1 << DATA);
            parity = !parity;
        } else {
            DDRD |= 1 << DATA;
        }
        byte >>= 1;
    }
    await_fall();
    if (parity) {
        DDRD &= ~(1 << DATA);
    } else {
        DDRD |= 1 << DATA;
    }
    await_fall();
    DDRD &= ~(1 << DATA);
    await_fall();
    return !(PIND & (1 << DATA));
}

/* calls: (0x41) (0x00) */
MEASURED void write_soft_serial(uint8_t byte)
{
    uint16_t bits = ((uint16_t)byte << 1) | 0x600;
    for (uint8_t count = 0; count < 11; count++) {
        if (bits & 1) {
            PORTB |= 1 << 1;
        } else {
            PORTB &= ~(1 << 1);
        }
        bits >>= 1;
    }
}

/* calls: (0x41) (0x42) */
MEASURED void write_uart(uint8_t byte)
{
    while (!(UCSR0A & (1 << UDRE0))) {
    }
    UDR0 = byte;
}

/* calls: (1200) (9600) */
MEASURED void start_uart(uint16_t baud)
{
    UBRR0 = (F_CPU / 16 + baud / 2) / baud - 1;
    UCSR0B = (1 << RXEN0) | (1 << TXEN0) | (1 << RXCIE0);
    UCSR0C = (1 << UCSZ01) | (1 << UCSZ00);
}

/* calls: (0x55) (0x01) (0xff) */
MEASURED uint8_t odd_parity_by_xor(uint8_t value)
{
    value ^= value >> 4;
    value ^= value >> 2;
    value ^= value >> 1;
    return !(value & 1);
}

/* calls: (0x55) (0x01) (0xff) (0x00) */
MEASURED uint8_t odd_parity_by_count(uint8_t value)
{
    uint8_t ones = 0;
    while (value) {
        ones += value & 1;
        value >>= 1;
    }
    return !(ones & 1);
}

/* calls: () */
MEASURED void start_timer(void)
{
    TCCR1A = 0;
    TCCR1B = (1 << WGM12) | (1 << CS11);
    OCR1A = 1666;
    TIMSK1 |= 1 << OCIE1A;
}

/* calls: (0) (7) */
MEASURED void set_pin(uint8_t pin)
{
    PORTC |= 1 << pin;
}

/* calls: (1) (0) */
MEASURED void write_level(uint8_t high)
{
    if (high) {
        PORTD |= 1 << DATA;
    } else {
        PORTD &= ~(1 << DATA);
    }
}
