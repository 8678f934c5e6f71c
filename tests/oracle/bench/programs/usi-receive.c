#include "chip.h"
/* USI clocked by the PS/2 clock: the start bit, then eight data bits; the byte leaves by a soft serial port. */
static volatile uint8_t overflows, received;
ISR(USI_OVF_vect) {
  received = USIDR;
  USISR = _BV(USIOIF);
  if (overflows++ == 1) USICR = 0;
}
int main(void) {
  TX_PORT |= _BV(TX_BIT);
  TX_DDR |= _BV(TX_BIT);
  /* Two edges of the start bit are left to the first overflow, sixteen of the data to the next. */
  USISR = _BV(USIOIF) | 14;
  USICR = _BV(USIOIE) | _BV(USIWM0) | _BV(USICS1) | _BV(USICS0);
  sei();
  while (overflows < 2) { }
  cli();
  /* The USI takes the highest bit first, PS/2 and the serial line begin with the lowest. */
  uint8_t sent = received;
  ONE_BIT(0, 832);
  for (uint8_t bit = 0; bit < 8; bit++, sent <<= 1) {
    if (sent & 0x80) TX_PORT |= _BV(TX_BIT);
    else TX_PORT &= ~_BV(TX_BIT);
    __builtin_avr_delay_cycles(820);
  }
  ONE_BIT(1, 832);
  for (;;) { }
}
