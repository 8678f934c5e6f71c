#include "board.h"
#include "clock.h"
#include "ps2.h"
#include "report.h"
#include "serial.h"

#include <avr/interrupt.h>

#define IDENTIFICATION 'M'
#define RETRY_MS 500

static uint8_t report[REPORT_LENGTH];
static uint8_t report_at = REPORT_LENGTH; /* next byte to send */

/* One byte whenever the line is free, so that the mouse is heard all the while. */
static void send_what_is_due(void)
{
    /* Looked at before the question: RTS may come on in between, and then the identification goes first. */
    bool wanted = serial_is_wanted();

    if (!serial_can_send()) {
        return;
    }
    if (serial_was_asked()) {
        report_forget();
        report_at = REPORT_LENGTH;
        serial_send(IDENTIFICATION);
        return;
    }
    if (report_at == REPORT_LENGTH && wanted && report_take(report)) {
        report_at = 0;
    }
    if (report_at < REPORT_LENGTH) {
        serial_send(report[report_at++]);
    }
}

void ps2_while_waiting(void)
{
    send_what_is_due();
}

int main(void)
{
    struct movement movement;
    bool ready = false;
    uint16_t tried;

    clock_start();
    serial_start();
    ps2_start();
    sei();
    tried = clock_ms() - RETRY_MS;
    for (;;) {
        if (!ready && (uint16_t)(clock_ms() - tried) >= RETRY_MS) {
            ready = ps2_set_up_mouse();
            tried = clock_ms();
        }
        while (ps2_read_movement(&movement)) {
            report_add(&movement);
        }
        if (ps2_mouse_restarted()) {
            ready = false;
        }
        send_what_is_due();
    }
}
