/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iom8.h. */
export const vectors = `
 1  INT0_vect
 2  INT1_vect
 3  TIMER2_COMP_vect
 4  TIMER2_OVF_vect
 5  TIMER1_CAPT_vect
 6  TIMER1_COMPA_vect
 7  TIMER1_COMPB_vect
 8  TIMER1_OVF_vect
 9  TIMER0_OVF_vect
10  SPI_STC_vect
11  USART_RXC_vect
12  USART_UDRE_vect
13  USART_TXC_vect
14  ADC_vect
15  EE_RDY_vect
16  ANA_COMP_vect
17  TWI_vect
18  SPM_RDY_vect
`;
