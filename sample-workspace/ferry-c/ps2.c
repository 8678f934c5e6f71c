#include "board.h"
#include "ps2.h"
#include "clock.h"

#include <avr/interrupt.h>
#include <util/delay.h>

/* Commands of the mouse, and its answers. */
enum {
    CMD_RESET = 0xFF,
    CMD_ENABLE_REPORTING = 0xF4,
    CMD_SET_SAMPLE_RATE = 0xF3,
    CMD_SET_RESOLUTION = 0xE8,
    REPLY_ACKNOWLEDGE = 0xFA,
    REPLY_SEND_AGAIN = 0xFE,
    REPLY_SELF_TEST_PASSED = 0xAA,
    REPLY_PLAIN_MOUSE = 0x00
};

#define SAMPLE_RATE 40 /* reports per second */
#define RESOLUTION 2   /* 4 counts per millimetre */

/* How long a whole command may take: the mouse starts clocking within 15 ms and is done 2 ms later. */
#define SEND_TIMEOUT_MS 20
#define REPLY_TIMEOUT_MS 30
#define SELF_TEST_TIMEOUT_MS 1200
/* A report whose bytes stand further apart than this was cut. */
#define REPORT_GAP_MS 20

/* How often a byte is sent that the mouse asks for once more. */
#define TRIES 3

#define RING_SIZE 32 /* a power of two */

static volatile uint8_t ring[RING_SIZE];
static volatile uint8_t ring_head;
static uint8_t ring_tail;

/* The frame that is coming in: start bit, eight data bits, parity bit, stop bit. */
static volatile uint8_t frame_bit;
static volatile uint8_t frame_byte;
static volatile uint8_t frame_ones;

static uint8_t packet[3];
static uint8_t packet_length;
static uint16_t packet_time;
static bool restarted;

static inline void clock_low(void)
{
    PS2_PORT &= ~_BV(PS2_CLOCK);
    PS2_DDR |= _BV(PS2_CLOCK);
}

static inline void clock_release(void)
{
    PS2_DDR &= ~_BV(PS2_CLOCK);
    PS2_PORT |= _BV(PS2_CLOCK); /* internal pull-up */
}

static inline void data_low(void)
{
    PS2_PORT &= ~_BV(PS2_DATA);
    PS2_DDR |= _BV(PS2_DATA);
}

static inline void data_release(void)
{
    PS2_DDR &= ~_BV(PS2_DATA);
    PS2_PORT |= _BV(PS2_DATA); /* internal pull-up */
}

static inline bool clock_is_high(void)
{
    return PS2_PIN & _BV(PS2_CLOCK);
}

static inline bool data_is_high(void)
{
    return PS2_PIN & _BV(PS2_DATA);
}

/* One bit per falling edge of the clock. */
ISR(INT0_vect)
{
    bool bit = data_is_high();

    if (frame_bit == 0) {
        if (bit) {
            return; /* no start bit: wait for one */
        }
        frame_byte = 0;
        frame_ones = 0;
    } else if (frame_bit <= 8) {
        frame_byte >>= 1;
        if (bit) {
            frame_byte |= 0x80;
            frame_ones++;
        }
    } else if (frame_bit == 9) {
        if (bit) {
            frame_ones++;
        }
    } else {
        uint8_t next = (ring_head + 1) & (RING_SIZE - 1);

        if (bit && (frame_ones & 1)) { /* stop bit, and parity is odd */
            ring[ring_head] = frame_byte;
            ring_head = next;
        }
        frame_bit = 0;
        return;
    }
    frame_bit++;
}

static void listen(void)
{
    frame_bit = 0;
    EIFR = _BV(INTF0);
    EIMSK |= _BV(INT0);
}

static bool wait_for_clock(bool high, uint16_t since)
{
    while (clock_is_high() != high) {
        if ((uint16_t)(clock_ms() - since) > SEND_TIMEOUT_MS) {
            return false;
        }
    }
    return true;
}

/* The mouse takes the bit while the clock is high, so it is put on the line while the clock is low. */
static bool send_bit(bool bit, uint16_t since)
{
    if (!wait_for_clock(false, since)) {
        return false;
    }
    if (bit) {
        data_release();
    } else {
        data_low();
    }
    return wait_for_clock(true, since);
}

static bool send_frame(uint8_t value)
{
    uint16_t since = clock_ms();
    bool parity = true;
    bool acknowledged;

    for (uint8_t i = 0; i < 8; i++) {
        bool bit = value & 1;

        if (bit) {
            parity = !parity;
        }
        value >>= 1;
        if (!send_bit(bit, since)) {
            return false;
        }
    }
    if (!send_bit(parity, since) || !send_bit(true, since)) {
        return false;
    }
    if (!wait_for_clock(false, since)) {
        return false;
    }
    acknowledged = !data_is_high();
    return wait_for_clock(true, since) && acknowledged;
}

static bool ps2_send(uint8_t value)
{
    bool sent;

    EIMSK &= ~_BV(INT0);
    clock_low();
    _delay_us(120); /* request to send */
    data_low();
    clock_release();
    sent = send_frame(value);
    data_release();
    clock_release();
    listen();
    return sent;
}

static bool ps2_receive(uint8_t *value, uint16_t timeout_ms)
{
    uint16_t since = clock_ms();

    while (ring_tail == ring_head) {
        if ((uint16_t)(clock_ms() - since) > timeout_ms) {
            return false;
        }
        ps2_while_waiting();
    }
    *value = ring[ring_tail];
    ring_tail = (ring_tail + 1) & (RING_SIZE - 1);
    return true;
}

static bool expect(uint8_t wanted, uint16_t timeout_ms)
{
    uint8_t reply;

    return ps2_receive(&reply, timeout_ms) && reply == wanted;
}

static bool command(uint8_t value)
{
    for (uint8_t i = 0; i < TRIES; i++) {
        uint8_t reply;

        if (!ps2_send(value) || !ps2_receive(&reply, REPLY_TIMEOUT_MS)) {
            return false;
        }
        if (reply != REPLY_SEND_AGAIN) {
            return reply == REPLY_ACKNOWLEDGE;
        }
    }
    return false;
}

void ps2_start(void)
{
    clock_release();
    data_release();
    EICRA = _BV(ISC01); /* falling edge of the clock */
    listen();
}

bool ps2_set_up_mouse(void)
{
    ring_tail = ring_head;
    packet_length = 0;
    restarted = false;
    return command(CMD_RESET)
        && expect(REPLY_SELF_TEST_PASSED, SELF_TEST_TIMEOUT_MS)
        && expect(REPLY_PLAIN_MOUSE, REPLY_TIMEOUT_MS)
        && command(CMD_SET_SAMPLE_RATE)
        && command(SAMPLE_RATE)
        && command(CMD_SET_RESOLUTION)
        && command(RESOLUTION)
        && command(CMD_ENABLE_REPORTING);
}

/* @wire decodes ps2-standard from bytes into x=out.dx y=out.dy left=out.left right=out.right */
static void take_apart(const uint8_t bytes[3], struct movement *out)
{
    out->dx = (int16_t)bytes[1] - ((bytes[0] & 0x10) ? 256 : 0);
    out->dy = (int16_t)bytes[2] - ((bytes[0] & 0x20) ? 256 : 0);
    out->left = bytes[0] & 0x01;
    out->right = bytes[0] & 0x02;
}

bool ps2_read_movement(struct movement *out)
{
    uint8_t value;

    if (packet_length > 0 && (uint16_t)(clock_ms() - packet_time) > REPORT_GAP_MS) {
        if (packet_length == 2 && packet[0] == REPLY_SELF_TEST_PASSED && packet[1] == REPLY_PLAIN_MOUSE) {
            restarted = true;
        }
        packet_length = 0;
    }
    while (ring_tail != ring_head) {
        value = ring[ring_tail];
        ring_tail = (ring_tail + 1) & (RING_SIZE - 1);
        if (packet_length == 0 && !(value & 0x08)) {
            continue; /* not a first byte: find the start of a report again */
        }
        packet_time = clock_ms();
        packet[packet_length++] = value;
        if (packet_length == 3) {
            packet_length = 0;
            take_apart(packet, out);
            return true;
        }
    }
    return false;
}

bool ps2_mouse_restarted(void)
{
    bool was = restarted;

    restarted = false;
    return was;
}
