#include "chip.h"
/* The handler's first instruction is the one that moves the pin. */
ISR(RTS_vect, ISR_NAKED) {
  __asm__ volatile("sbi %0, %1" ::"I"(_SFR_IO_ADDR(TX_DDR)), "I"(TX_BIT));
  reti();
}
int main(void) {
  ENABLE_RTS_INT();
  set_sleep_mode(SLEEP_MODE_IDLE);
  sei();
#ifdef SLEEPS
  for (;;) sleep_mode();
#else
  for (;;) __asm__ volatile("nop");
#endif
}
