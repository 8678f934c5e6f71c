/* The PC's side: what moved waits here until the line is free. */
#ifndef PC_H
#define PC_H

#include "mouse.h"

void pc_start(void);
void pc_add(const struct motion *motion);

/* To be called all the time: hands one byte to the USART when it has room. */
void pc_step(void);

#endif
