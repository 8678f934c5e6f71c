#include "measured.h"

struct motion {
    int16_t x;
    int16_t y;
    uint8_t buttons;
};

struct flags {
    uint8_t left : 1;
    uint8_t right : 1;
    uint8_t middle : 1;
    uint8_t speed : 3;
};

struct motion motion;
static struct flags flags;
uint8_t report[4];
uint8_t bytes[4] = { 0x29, 0x10, 0xf0, 0x01 };
static volatile uint32_t milliseconds;
static volatile uint8_t state;
static uint8_t count;

/* calls: (bytes) */
MEASURED void decode_motion(const uint8_t *raw)
{
    motion.buttons = raw[0] & 0x07;
    motion.x = raw[1];
    if (raw[0] & 0x10) {
        motion.x -= 256;
    }
    motion.y = raw[2];
    if (raw[0] & 0x20) {
        motion.y -= 256;
    }
}

/* calls: (5, -5, 1) (-100, 100, 2) */
MEASURED void encode_two_button(int8_t x, int8_t y, uint8_t buttons)
{
    report[0] = 0x40 | ((buttons & 1) << 5) | ((buttons & 2) << 3) | ((y >> 4) & 0x0c) | ((x >> 6) & 0x03);
    report[1] = x & 0x3f;
    report[2] = y & 0x3f;
}

/* calls: (1, 0) (0, 3) */
MEASURED void set_flags(uint8_t left, uint8_t speed)
{
    flags.left = left;
    flags.speed = speed;
    flags.middle = 1;
}

/* calls: () */
MEASURED uint8_t read_flags(void)
{
    return flags.speed + (flags.left ? 10 : 0);
}

/* calls: (0xfa) (0xaa) (0x00) (0xfa) (0xfa) (0x33) */
MEASURED uint8_t advance(uint8_t byte)
{
    switch (state) {
    case 0:
        if (byte == 0xaa) {
            state = 1;
        }
        break;
    case 1:
        if (byte == 0x00) {
            state = 2;
        } else {
            state = 0;
        }
        break;
    case 2:
        if (byte == 0xfa) {
            state = 3;
        }
        break;
    case 3:
        if (byte == 0xfa) {
            state = 4;
        }
        break;
    default:
        count++;
        break;
    }
    return state;
}

/* calls: (0xff) (0xf2) (0x12) (0xe8) (0xeb) */
MEASURED uint8_t arguments_of(uint8_t command)
{
    switch (command) {
    case 0xe8:
    case 0xf3:
        return 1;
    case 0xeb:
        return 3;
    case 0xf2:
    case 0xff:
        return 2;
    default:
        return 0;
    }
}

/* calls: () */
MEASURED uint32_t read_milliseconds(void)
{
    uint8_t status = SREG;
    cli();
    uint32_t now = milliseconds;
    SREG = status;
    return now;
}

__attribute__((noinline)) static int16_t inner(int16_t a, int16_t b, uint8_t c)
{
    state = c;
    return a - b;
}

/* calls: (5, 6) */
MEASURED int16_t calls_others(int16_t a, int16_t b)
{
    int16_t first = inner(a, b, 1);
    int16_t second = inner(b, 40, 2);
    return first + second;
}

static uint16_t three_times(uint16_t value)
{
    return value + value + value;
}

/* calls: (5) */
MEASURED uint16_t calls_inlined(uint16_t value)
{
    return three_times(value + 1);
}

/* calls: (motion) */
MEASURED void halve(struct motion *moved)
{
    moved->x /= 2;
    moved->y /= 2;
    if (moved->x == 0 && moved->y == 0) {
        moved->buttons |= 0x80;
    }
}

static volatile uint8_t received[16];
static volatile uint8_t received_head;

/* calls: () () */
ISR(USART0_RX_vect)
{
    uint8_t byte = UDR0;
    received[received_head] = byte;
    received_head = (received_head + 1) & 15;
}

/* calls: () () */
ISR(TIMER0_COMPA_vect)
{
    milliseconds++;
}

static volatile uint8_t bit_count;
static volatile uint8_t incoming;
static volatile bool complete;

/* calls: () () () () () () () () () () () () */
ISR(INT0_vect)
{
    uint8_t high = PIND & (1 << 3);
    if (bit_count > 0 && bit_count < 9) {
        incoming >>= 1;
        if (high) {
            incoming |= 0x80;
        }
    }
    bit_count++;
    if (bit_count == 11) {
        bit_count = 0;
        complete = true;
    }
}

static void deliver(uint8_t byte);

/* calls: () () */
ISR(PCINT2_vect)
{
    if (!(PIND & (1 << 2))) {
        deliver(PIND);
    }
}

__attribute__((noinline)) static void deliver(uint8_t byte)
{
    report[3] = byte;
}
