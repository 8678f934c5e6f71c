// USART 1 to the PC: a ring that its interrupt empties.
#pragma once

#include <stdint.h>

namespace uart {

void begin();
void write(uint8_t byte);

// Nothing waits any more; the last byte may still be on the line.
bool isIdle();

// Throws away what waits.
void clear();

}  // namespace uart
