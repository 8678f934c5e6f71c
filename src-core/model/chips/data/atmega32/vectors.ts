/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iom32.h. */
export const vectors = `
 1  INT0_vect
 2  INT1_vect
 3  INT2_vect
 4  TIMER2_COMP_vect
 5  TIMER2_OVF_vect
 6  TIMER1_CAPT_vect
 7  TIMER1_COMPA_vect
 8  TIMER1_COMPB_vect
 9  TIMER1_OVF_vect
10  TIMER0_COMP_vect
11  TIMER0_OVF_vect
12  SPI_STC_vect
13  USART_RXC_vect
14  USART_UDRE_vect
15  USART_TXC_vect
16  ADC_vect
17  EE_RDY_vect
18  ANA_COMP_vect
19  TWI_vect
20  SPM_RDY_vect
`;
