#include "mouse.h"
#include "ps2.h"
#include "ticks.h"

#define RESET 0xFF
#define RESEND 0xFE
#define ENABLE_REPORTING 0xF4
#define SET_SAMPLE_RATE 0xF3
#define SET_RESOLUTION 0xE8

#define ACKNOWLEDGE 0xFA
#define SEND_AGAIN 0xFE
#define SELF_TEST_PASSED 0xAA
#define PLAIN_MOUSE 0x00

/* The mouse begins to clock within 15 ms and has taken the byte 2 ms later. */
#define SEND_MS 20
#define REPLY_MS 30
#define SELF_TEST_MS 1200
#define ID_MS 100
#define RETRY_MS 300
#define TRIES 3
/* Bytes of one report follow each other; a longer rest means that the rest of it is lost. */
#define GAP_MS 15

static const uint8_t script[] = {RESET, SET_SAMPLE_RATE, 40, SET_RESOLUTION, 2, ENABLE_REPORTING};

enum state { RESTING, SENDING, ANSWERING, TESTING, IDENTIFYING, REPORTING, ASKING_AGAIN };

static enum state state;
static uint16_t since;
static uint8_t step;
static uint8_t tries;

static uint8_t packet[3];
static uint8_t packet_length;
static uint16_t packet_time;

static void enter(enum state next)
{
    state = next;
    since = ticks();
}

static bool is_over(uint16_t ms)
{
    return (uint16_t)(ticks() - since) > ms;
}

static void send_step(void)
{
    ps2_send(script[step]);
    enter(SENDING);
}

static void again(void)
{
    if (++tries < TRIES) {
        send_step();
    } else {
        enter(RESTING);
    }
}

static void next_step(void)
{
    tries = 0;
    if (++step < sizeof script) {
        send_step();
    } else {
        packet_length = 0;
        enter(REPORTING);
    }
}

static void start_script(void)
{
    step = 0;
    tries = 0;
    send_step();
}

static void set_up(enum ps2_frame frame, uint8_t byte)
{
    switch (state) {
    case RESTING:
        if (is_over(RETRY_MS)) {
            start_script();
        }
        break;
    case SENDING:
        if (ps2_sending() == PS2_TAKEN) {
            enter(ANSWERING);
        } else if (ps2_sending() == PS2_REFUSED) {
            again();
        } else if (is_over(SEND_MS)) {
            ps2_give_up();
            enter(RESTING);
        }
        break;
    case ANSWERING:
        if (frame == PS2_BYTE && byte == ACKNOWLEDGE) {
            if (script[step] == RESET) {
                enter(TESTING);
            } else {
                next_step();
            }
        } else if (frame == PS2_BYTE && byte == SEND_AGAIN) {
            again();
        } else if (frame != PS2_NONE || is_over(REPLY_MS)) {
            enter(RESTING);
        }
        break;
    case TESTING:
        if (frame == PS2_BYTE && byte == SELF_TEST_PASSED) {
            enter(IDENTIFYING);
        } else if (frame != PS2_NONE || is_over(SELF_TEST_MS)) {
            enter(RESTING);
        }
        break;
    case IDENTIFYING:
        if (frame == PS2_BYTE && byte == PLAIN_MOUSE) {
            next_step();
        } else if (frame != PS2_NONE || is_over(ID_MS)) {
            enter(RESTING);
        }
        break;
    default:
        break;
    }
}

/* @wire decodes ps2-standard from p into x=m->dx y=m->dy left=m->left middle=m->middle right=m->right */
static void take_apart(const uint8_t *p, struct motion *m)
{
    m->dx = p[1];
    if (p[0] & 0x10) {
        m->dx -= 256;
    }
    m->dy = p[2];
    if (p[0] & 0x20) {
        m->dy -= 256;
    }
    m->left = p[0] & 0x01;
    m->right = p[0] & 0x02;
    m->middle = p[0] & 0x04;
}

static void ask_again(void)
{
    packet_length = 0;
    ps2_send(RESEND);
    enter(ASKING_AGAIN);
}

static bool report(uint8_t byte, struct motion *motion)
{
    if (packet_length == 0 && !(byte & 0x08)) {
        return false; /* bit 3 is set in every first byte */
    }
    packet_time = ticks();
    packet[packet_length++] = byte;
    if (packet_length < sizeof packet) {
        return false;
    }
    packet_length = 0;
    take_apart(packet, motion);
    return true;
}

bool mouse_step(struct motion *motion)
{
    uint8_t byte = 0;
    enum ps2_frame frame = ps2_next(&byte);

    if (state == ASKING_AGAIN) {
        if (ps2_sending() != PS2_BUSY) {
            enter(REPORTING);
        } else if (is_over(SEND_MS)) {
            ps2_give_up();
            enter(REPORTING);
        }
    }
    if (state != REPORTING) {
        set_up(frame, byte);
        return false;
    }
    if (packet_length > 0 && (uint16_t)(ticks() - packet_time) > GAP_MS) {
        bool restarted = packet_length == 2 && packet[0] == SELF_TEST_PASSED && packet[1] == PLAIN_MOUSE;

        packet_length = 0;
        if (restarted) {
            start_script();
            return false;
        }
    }
    if (frame == PS2_BROKEN) {
        ask_again();
        return false;
    }
    return frame == PS2_BYTE && report(byte, motion);
}
