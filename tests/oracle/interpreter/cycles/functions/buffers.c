#include "measured.h"
#include <string.h>

#define SIZE 32

static volatile uint8_t ring[SIZE];
static volatile uint8_t head, tail;
uint8_t packet[4];
static uint8_t packet_length;
uint8_t from[16] = { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16 };
uint8_t into[16];

/* calls: (1) (2) (3) */
MEASURED bool ring_put(uint8_t byte)
{
    uint8_t next = (head + 1) % SIZE;
    if (next == tail) {
        return false;
    }
    ring[head] = byte;
    head = next;
    return true;
}

/* calls: () () () () */
MEASURED int16_t ring_take(void)
{
    if (head == tail) {
        return -1;
    }
    uint8_t byte = ring[tail];
    tail = (tail + 1) & (SIZE - 1);
    return byte;
}

/* calls: () */
MEASURED uint8_t ring_used(void)
{
    return (uint8_t)(head - tail) & (SIZE - 1);
}

/* calls: (0x08) (0x12) (0x34) (0x00) (0x28) (0x01) (0x02) */
MEASURED bool take_packet_byte(uint8_t byte)
{
    if (packet_length == 0 && !(byte & 0x08)) {
        return false;
    }
    packet[packet_length++] = byte;
    if (packet_length < 3) {
        return false;
    }
    packet_length = 0;
    return true;
}

/* calls: (into, from, 16) (into, from, 1) */
MEASURED void copy_bytes(uint8_t *target, const uint8_t *source, uint8_t length)
{
    for (uint8_t at = 0; at < length; at++) {
        target[at] = source[at];
    }
}

/* calls: (from, 16) (from, 5) */
MEASURED uint16_t sum_bytes(const uint8_t *bytes, uint8_t length)
{
    uint16_t sum = 0;
    while (length--) {
        sum += *bytes++;
    }
    return sum;
}

/* calls: (5) (20) */
MEASURED int8_t find_byte(uint8_t wanted)
{
    for (int8_t at = 0; at < 16; at++) {
        if (from[at] == wanted) {
            return at;
        }
    }
    return -1;
}

/* calls: () */
MEASURED void clear_buffer(void)
{
    for (uint8_t at = 0; at < sizeof into; at++) {
        into[at] = 0;
    }
}

static const uint8_t gray[16] = { 0, 1, 3, 2, 6, 7, 5, 4, 12, 13, 15, 14, 10, 11, 9, 8 };

/* calls: (3) (15) */
MEASURED uint8_t look_up(uint8_t index)
{
    return gray[index & 15];
}

static int16_t samples[8];
static uint8_t sample_at;

/* calls: (100) (-4) */
MEASURED int16_t moving_average(int16_t sample)
{
    samples[sample_at] = sample;
    sample_at = (sample_at + 1) & 7;
    int16_t sum = 0;
    for (uint8_t at = 0; at < 8; at++) {
        sum += samples[at];
    }
    return sum / 8;
}
