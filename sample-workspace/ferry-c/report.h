/* Movements of the mouse, gathered until the slower serial line can take them. */
#ifndef REPORT_H
#define REPORT_H

#include "ps2.h"

#define REPORT_LENGTH 3

void report_add(const struct movement *movement);

/* Builds the next report; false when there is nothing to tell. */
bool report_take(uint8_t out[REPORT_LENGTH]);

void report_forget(void);

#endif
