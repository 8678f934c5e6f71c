#include "board.h"
#include "pc.h"

#include <avr/interrupt.h>

#define BAUD 1200
#define UBRR_VALUE (F_CPU / 16 / BAUD - 1)

#define WAITING 8

static struct motion waiting[WAITING];
static uint8_t waiting_count;

static bool told_left;
static bool told_middle;
static bool told_right;

static uint8_t out[4];
static uint8_t out_length;
static uint8_t out_at;

static volatile bool asked;

ISR(PCINT0_vect)
{
    if (!(PINB & _BV(RTS))) {
        asked = true;
    }
}

void pc_start(void)
{
    UBRR0 = UBRR_VALUE;
    UCSR0C = _BV(UCSZ01); /* 7N1 */
    UCSR0B = _BV(TXEN0);
    PCMSK0 = _BV(PCINT0);
    PCICR = _BV(PCIE0);
}

static bool same_buttons(const struct motion *a, const struct motion *b)
{
    return a->left == b->left && a->middle == b->middle && a->right == b->right;
}

/* Motion is added up, but not across a change of the buttons: a click may be shorter than a report. */
void pc_add(const struct motion *motion)
{
    struct motion *last = waiting_count > 0 ? &waiting[waiting_count - 1] : 0;

    if (last && (same_buttons(last, motion) || waiting_count == WAITING)) {
        last->dx += motion->dx;
        last->dy += motion->dy;
        last->left = motion->left;
        last->middle = motion->middle;
        last->right = motion->right;
    } else {
        waiting[waiting_count++] = *motion;
    }
}

static void drop_first(void)
{
    waiting_count--;
    for (uint8_t i = 0; i < waiting_count; i++) {
        waiting[i] = waiting[i + 1];
    }
}

static int8_t part_of(int16_t *rest)
{
    int8_t part = *rest > 127 ? 127 : *rest < -127 ? -127 : (int8_t)*rest;

    *rest -= part;
    return part;
}

/* The PC counts y downwards.
 * @wire encodes middle-button from x=dx y=-dy left=left middle=middle right=right into bytes */
static uint8_t build(uint8_t *bytes, int8_t dx, int8_t dy, bool left, bool middle, bool right)
{
    uint8_t x = (uint8_t)dx;
    uint8_t y = (uint8_t)-dy;

    bytes[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 6) << 2) | (x >> 6);
    bytes[1] = x & 0x3F;
    bytes[2] = y & 0x3F;
    /* The fourth byte comes while the middle button is down, and once more when it is let go. */
    if (!middle && !told_middle) {
        return 3;
    }
    bytes[3] = middle ? 0x20 : 0x00;
    return 4;
}

static void next_report(void)
{
    struct motion *first = &waiting[0];
    int8_t dx = part_of(&first->dx);
    int8_t dy = part_of(&first->dy);

    if (dx != 0 || dy != 0 || first->left != told_left || first->middle != told_middle
        || first->right != told_right) {
        out_length = build(out, dx, dy, first->left, first->middle, first->right);
        out_at = 0;
        told_left = first->left;
        told_middle = first->middle;
        told_right = first->right;
    }
    if (first->dx == 0 && first->dy == 0) {
        drop_first();
    }
}

static void introduce(void)
{
    waiting_count = 0;
    told_left = told_middle = told_right = false;
    out[0] = 'M';
    out[1] = '3';
    out_length = 2;
    out_at = 0;
}

void pc_step(void)
{
    bool wanted = !(PINB & _BV(RTS));

    if (asked) {
        asked = false;
        introduce();
    }
    if (!(UCSR0A & _BV(UDRE0))) {
        return;
    }
    if (out_at == out_length && waiting_count > 0 && wanted) {
        next_report();
    }
    if (out_at < out_length) {
        UDR0 = out[out_at++];
    }
}
