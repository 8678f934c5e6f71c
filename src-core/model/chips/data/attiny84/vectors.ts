/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iotnx4.h. */
export const vectors = `
 1  INT0_vect EXT_INT0_vect
 2  PCINT0_vect
 3  PCINT1_vect
 4  WDT_vect WATCHDOG_vect
 5  TIMER1_CAPT_vect TIM1_CAPT_vect
 6  TIM1_COMPA_vect
 7  TIM1_COMPB_vect
 8  TIM1_OVF_vect
 9  TIM0_COMPA_vect
10  TIM0_COMPB_vect
11  TIM0_OVF_vect
12  ANA_COMP_vect
13  ADC_vect
14  EE_RDY_vect
15  USI_START_vect USI_STR_vect
16  USI_OVF_vect
`;
