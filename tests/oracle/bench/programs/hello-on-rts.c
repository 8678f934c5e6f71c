#include "chip.h"
/* Behind an inverting shifter RTS that goes ON falls at the pin. */
ISR(RTS_vect) {
  if (!RTS_IN) UDR = 'M';
}
int main(void) {
  UBRR = F_CPU / 16 / 1200 - 1 + ((F_CPU / 16) % 1200 >= 600);
  UCSRC = SEVEN_BITS;
  UCSRB = _BV(TXEN);
  ENABLE_RTS_INT();
  sei();
  for (;;) { }
}
