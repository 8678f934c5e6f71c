#include "chip.h"
/* Takes one PS/2 frame in by interrupts on the falling edge of the clock and sends its byte on. */
static volatile uint8_t count, byte, parity;
ISR(CLOCK_INT_vect) {
  uint8_t bit = DATA_IN ? 1 : 0;
  uint8_t at = count++;
  if (at >= 1 && at <= 8) byte = (byte >> 1) | (bit << 7);
  if (at >= 1 && at <= 9) parity ^= bit;
}
int main(void) {
#ifdef UDR
  UBRR = 51;
  UCSRC = SEVEN_BITS | (SEVEN_BITS >> 1);
  UCSRB = _BV(TXEN);
#else
  TX_PORT |= _BV(TX_BIT);
  TX_DDR |= _BV(TX_BIT);
#endif
  ENABLE_CLOCK_INT();
  sei();
  while (count < 11) { }
  uint8_t sent = parity ? byte : 0;
#ifdef UDR
  while (!(UCSRA & _BV(UDRE))) { }
  UDR = sent;
#else
  cli();
  ONE_BIT(0, 832);
  for (uint8_t bit = 0; bit < 8; bit++, sent >>= 1) {
    if (sent & 1) TX_PORT |= _BV(TX_BIT);
    else TX_PORT &= ~_BV(TX_BIT);
    __builtin_avr_delay_cycles(820);
  }
  ONE_BIT(1, 832);
#endif
  for (;;) { }
}
