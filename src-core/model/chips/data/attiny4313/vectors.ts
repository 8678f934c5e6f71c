/** Interrupt vectors: number and names. avr-libc 2.0.0, avr/iotn4313.h. */
export const vectors = `
 1  INT0_vect
 2  INT1_vect
 3  TIMER1_CAPT_vect
 4  TIMER1_COMPA_vect
 5  TIMER1_OVF_vect
 6  TIMER0_OVF_vect
 7  USART0_RX_vect USART_RX_vect
 8  USART0_UDRE_vect USART_UDRE_vect
 9  USART0_TX_vect USART_TX_vect
10  ANA_COMP_vect
11  PCINT0_vect PCINT_B_vect
12  TIMER1_COMPB_vect
13  TIMER0_COMPA_vect
14  TIMER0_COMPB_vect
15  USI_START_vect
16  USI_OVERFLOW_vect
17  EEPROM_Ready_vect
18  WDT_OVERFLOW_vect
19  PCINT1_vect PCINT_A_vect
20  PCINT2_vect PCINT_D_vect
`;
