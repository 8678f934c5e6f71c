// The PS/2 port: clock on INT4, data beside it. Lines are pulled low or let go to their pull-ups, never driven high.
#pragma once

#include <stdint.h>

namespace port {

void begin();

// Sends a byte; false when the mouse did not clock it in or did not acknowledge.
bool send(uint8_t byte);

bool hasByte();
uint8_t read();
void forget();

// True once after a byte came with wrong parity or without a stop bit.
bool wasDisturbed();

}  // namespace port
