#include "report.h"

/* Motion that belongs to one state of the buttons. A change of the buttons opens a new entry, so that a short
 * click is not lost behind the 22.5 ms that a report takes on the line. */
#define QUEUE_SIZE 16

static struct movement queue[QUEUE_SIZE];
static uint8_t queue_first;
static uint8_t queue_length;
static bool sent_left;
static bool sent_right;

static struct movement *entry(uint8_t index)
{
    return &queue[(queue_first + index) % QUEUE_SIZE];
}

void report_add(const struct movement *movement)
{
    struct movement *last = queue_length > 0 ? entry(queue_length - 1) : 0;

    if (last && (queue_length == QUEUE_SIZE || (last->left == movement->left && last->right == movement->right))) {
        last->dx += movement->dx;
        last->dy += movement->dy;
        last->left = movement->left;
        last->right = movement->right;
        return;
    }
    *entry(queue_length) = *movement;
    queue_length++;
}

static int8_t clip(int16_t counts)
{
    if (counts > 127) {
        return 127;
    }
    if (counts < -127) {
        return -127;
    }
    return (int8_t)counts;
}

/* The serial report counts y downwards, the mouse upwards.
 * @wire encodes two-button from x=dx y=-dy left=left right=right into out
 * @wire try right=12 down=5 press=left */
static void build_report(uint8_t out[REPORT_LENGTH], int8_t dx, int8_t dy, bool left, bool right)
{
    uint8_t x = (uint8_t)dx;
    uint8_t y = (uint8_t)-dy;

    out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
    out[1] = x & 0x3F;
    out[2] = y & 0x3F;
}

bool report_take(uint8_t out[REPORT_LENGTH])
{
    struct movement *first;
    int8_t dx;
    int8_t dy;

    if (queue_length == 0) {
        return false;
    }
    first = entry(0);
    dx = clip(first->dx);
    dy = clip(first->dy);
    if (dx == 0 && dy == 0 && first->left == sent_left && first->right == sent_right) {
        queue_first = (queue_first + 1) % QUEUE_SIZE;
        queue_length--;
        return false;
    }
    sent_left = first->left;
    sent_right = first->right;
    build_report(out, dx, dy, sent_left, sent_right);
    first->dx -= dx;
    first->dy -= dy;
    if (first->dx == 0 && first->dy == 0) {
        queue_first = (queue_first + 1) % QUEUE_SIZE;
        queue_length--;
    }
    return true;
}

void report_forget(void)
{
    queue_length = 0;
    sent_left = false;
    sent_right = false;
}
