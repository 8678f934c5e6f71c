#include "chip.h"
/* 'M' with seven data bits, no parity, one stop bit: 0, 1011001, 1. */
int main(void) {
  TX_PORT |= _BV(TX_BIT);
  TX_DDR |= _BV(TX_BIT);
  ONE_BIT(1, BIT);
  ONE_BIT(0, BIT);
  ONE_BIT(1, BIT);
  ONE_BIT(0, BIT);
  ONE_BIT(1, BIT);
  ONE_BIT(1, BIT);
  ONE_BIT(0, BIT);
  ONE_BIT(0, BIT);
  ONE_BIT(1, BIT);
  ONE_BIT(1, BIT);
  cli();
  for (;;) { }
}
