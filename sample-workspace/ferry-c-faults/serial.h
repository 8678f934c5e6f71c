#ifndef SERIAL_H
#define SERIAL_H

#include <stdint.h>

void serial_start(void);
void serial_send(uint8_t value);

#endif
