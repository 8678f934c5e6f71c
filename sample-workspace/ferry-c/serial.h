/* Device side of the PC's serial port. */
#ifndef SERIAL_H
#define SERIAL_H

#include <stdbool.h>
#include <stdint.h>

void serial_start(void);

/* True when the PC has RTS on. */
bool serial_is_wanted(void);

/* True once after RTS went on: the PC wants to know who is there. */
bool serial_was_asked(void);

bool serial_can_send(void);
void serial_send(uint8_t value);

#endif
