#include "tiny.h"

#include <avr/interrupt.h>

/* The counter of the USI counts both edges of the clock and runs over at 16: a frame of 11 bits is taken in two parts. */
#define FIRST_PART (16 - 2 * 6)  /* start bit and data bits 0 to 4 */
#define SECOND_PART (16 - 2 * 5) /* data bits 5 to 7, parity bit and stop bit */

#define RUNNING (_BV(USIOIE) | _BV(USIWM0) | _BV(USICS1) | _BV(USICS0)) /* shifts on the falling edge */

/* After so many ticks of 833 us a frame that is not complete was cut. */
#define CUT_TICKS 3

#define RING 16

static volatile uint8_t ring[RING];
static volatile uint8_t ring_in;
static uint8_t ring_out;

static volatile bool in_second_part;
static volatile uint8_t first_part;
static volatile uint8_t waiting_ticks;

static inline void expect_first_part(void)
{
    in_second_part = false;
    waiting_ticks = 0;
    USISR = _BV(USIOIF) | FIRST_PART;
}

/* The USI takes its bits the wrong way round. */
static uint8_t turned(uint8_t bits)
{
    bits = (bits & 0x0F) << 4 | (bits & 0xF0) >> 4;
    bits = (bits & 0x33) << 2 | (bits & 0xCC) >> 2;
    return (bits & 0x55) << 1 | (bits & 0xAA) >> 1;
}

static bool has_odd_ones(uint8_t bits)
{
    bits ^= bits >> 4;
    bits ^= bits >> 2;
    bits ^= bits >> 1;
    return bits & 1;
}

ISR(USI_OVF_vect)
{
    uint8_t bits = USIDR;
    uint8_t byte;

    if (!in_second_part) {
        first_part = bits;
        in_second_part = true;
        USISR = _BV(USIOIF) | SECOND_PART;
        return;
    }
    expect_first_part();
    byte = turned((uint8_t)(first_part << 3) | (bits >> 2 & 0x07));
    if (first_part & 0x20) {
        return; /* no start bit */
    }
    if (!(bits & 0x01) || has_odd_ones(byte) == (bits >> 1 & 1)) {
        return; /* no stop bit, or wrong parity */
    }
    ring[ring_in] = byte;
    ring_in = (ring_in + 1) % RING;
}

void receiver_on(void)
{
    USICR = RUNNING;
    expect_first_part();
}

void receiver_off(void)
{
    USICR = 0;
}

void receiver_tick(void)
{
    if (!in_second_part && (USISR & 0x0F) == FIRST_PART) {
        waiting_ticks = 0;
    } else if (++waiting_ticks > CUT_TICKS) {
        expect_first_part();
    }
}

bool receiver_has(void)
{
    return ring_out != ring_in;
}

uint8_t receiver_get(void)
{
    uint8_t byte = ring[ring_out];

    ring_out = (ring_out + 1) % RING;
    return byte;
}

void receiver_forget(void)
{
    ring_out = ring_in;
}
