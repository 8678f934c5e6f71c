#include "chip.h"
/* SBI, CBI and RJMP take two cycles each; the delays take what they say. */
int main(void) {
  TX_DDR |= _BV(TX_BIT);
  for (;;) {
    TX_PORT |= _BV(TX_BIT);
    __builtin_avr_delay_cycles(98);
    TX_PORT &= ~_BV(TX_BIT);
    __builtin_avr_delay_cycles(996);
  }
}
