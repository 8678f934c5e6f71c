#include "chip.h"
int main(void) {
#if ENDING == 0
  return 0;
#elif ENDING == 1
  set_sleep_mode(SLEEP_MODE_IDLE);
  sleep_mode();
#elif ENDING == 2
  set_sleep_mode(SLEEP_MODE_PWR_DOWN);
  sei();
  sleep_mode();
#elif ENDING == 3
  ((void (*)(void))(FLASHEND / 2 - 8))();
#elif ENDING == 4
  for (;;) { sei(); __asm__ volatile("nop"); }
#endif
  for (;;) { }
}
