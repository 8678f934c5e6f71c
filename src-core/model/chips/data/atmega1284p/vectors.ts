/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iom1284p.h. */
export const vectors = `
 1  INT0_vect
 2  INT1_vect
 3  INT2_vect
 4  PCINT0_vect
 5  PCINT1_vect
 6  PCINT2_vect
 7  PCINT3_vect
 8  WDT_vect
 9  TIMER2_COMPA_vect
10  TIMER2_COMPB_vect
11  TIMER2_OVF_vect
12  TIMER1_CAPT_vect
13  TIMER1_COMPA_vect
14  TIMER1_COMPB_vect
15  TIMER1_OVF_vect
16  TIMER0_COMPA_vect
17  TIMER0_COMPB_vect
18  TIMER0_OVF_vect
19  SPI_STC_vect
20  USART0_RX_vect
21  USART0_UDRE_vect
22  USART0_TX_vect
23  ANALOG_COMP_vect
24  ADC_vect
25  EE_READY_vect
26  TWI_vect
27  SPM_READY_vect
28  USART1_RX_vect
29  USART1_UDRE_vect
30  USART1_TX_vect
31  TIMER3_CAPT_vect
32  TIMER3_COMPA_vect
33  TIMER3_COMPB_vect
34  TIMER3_OVF_vect
`;
