/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iomx8.h. */
export const vectors = `
 1  INT0_vect
 2  INT1_vect
 3  PCINT0_vect
 4  PCINT1_vect
 5  PCINT2_vect
 6  WDT_vect
 7  TIMER2_COMPA_vect
 8  TIMER2_COMPB_vect
 9  TIMER2_OVF_vect
10  TIMER1_CAPT_vect
11  TIMER1_COMPA_vect
12  TIMER1_COMPB_vect
13  TIMER1_OVF_vect
14  TIMER0_COMPA_vect
15  TIMER0_COMPB_vect
16  TIMER0_OVF_vect
17  SPI_STC_vect
18  USART_RX_vect
19  USART_UDRE_vect
20  USART_TX_vect
21  ADC_vect
22  EE_READY_vect
23  ANALOG_COMP_vect
24  TWI_vect
25  SPM_READY_vect
`;
