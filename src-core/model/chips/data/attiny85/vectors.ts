/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iotn85.h. */
export const vectors = `
 1  INT0_vect
 2  PCINT0_vect
 3  TIM1_COMPA_vect TIMER1_COMPA_vect
 4  TIM1_OVF_vect TIMER1_OVF_vect
 5  TIM0_OVF_vect TIMER0_OVF_vect
 6  EE_RDY_vect
 7  ANA_COMP_vect
 8  ADC_vect
 9  TIM1_COMPB_vect TIMER1_COMPB_vect
10  TIM0_COMPA_vect TIMER0_COMPA_vect
11  TIM0_COMPB_vect TIMER0_COMPB_vect
12  WDT_vect
13  USI_START_vect
14  USI_OVF_vect
`;
