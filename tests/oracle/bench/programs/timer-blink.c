#include "chip.h"
ISR(TIMER0_COMPA_vect) { TX_PORT ^= _BV(TX_BIT); }
int main(void) {
  TX_DDR |= _BV(TX_BIT);
  TCCR0A = _BV(WGM01);
  OCR0A = 124;
  TCCR0B = _BV(CS01) | _BV(CS00);
  TIMSK0 = _BV(OCIE0A);
  sei();
#ifdef SLEEPS
  set_sleep_mode(SLEEP_MODE_IDLE);
  for (;;) sleep_mode();
#else
  for (;;) { }
#endif
}
