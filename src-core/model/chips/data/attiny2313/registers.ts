/**
 * Registers by data-space address: name, peripheral, address, width in bits, and the bits from the highest to
 * the lowest (`-` for none, `/` between two names). avr-libc 2.0.0, avr/iotn2313.h.
 */
export const registers = `
DIDR     adc        0x21  8  - - - - - - AIN1D AIN0D
UBRRH    usart      0x22  8
UCSRC    usart      0x23  8  - UMSEL UPM1 UPM0 USBS UCSZ1 UCSZ0 UCPOL
ACSR     comparator 0x28  8  ACD ACBG ACO ACI ACIE ACIC ACIS1 ACIS0
UBRRL    usart      0x29  8
UCSRB    usart      0x2A  8  RXCIE TXCIE UDRIE RXEN TXEN UCSZ2 RXB8 TXB8
UCSRA    usart      0x2B  8  RXC TXC UDRE FE DOR UPE U2X MPCM
RXB      usart      0x2C  8
TXB      usart      0x2C  8
UDR      usart      0x2C  8
USICR    usi        0x2D  8  USISIE USIOIE USIWM1 USIWM0 USICS1 USICS0 USICLK USITC
USISR    usi        0x2E  8  USISIF USIOIF USIPF USIDC USICNT3 USICNT2 USICNT1 USICNT0
USIDR    usi        0x2F  8
PIND     gpio       0x30  8  - PIND6 PIND5 PIND4 PIND3 PIND2 PIND1 PIND0
DDRD     gpio       0x31  8  - DDD6 DDD5 DDD4 DDD3 DDD2 DDD1 DDD0
PORTD    gpio       0x32  8  - PD6 PD5 PD4 PD3 PD2 PD1 PD0
GPIOR0   gpior      0x33  8
GPIOR1   gpior      0x34  8
GPIOR2   gpior      0x35  8
PINB     gpio       0x36  8  PINB7 PINB6 PINB5 PINB4 PINB3 PINB2 PINB1 PINB0
DDRB     gpio       0x37  8  DDB7 DDB6 DDB5 DDB4 DDB3 DDB2 DDB1 DDB0
PORTB    gpio       0x38  8  PB7 PB6 PB5 PB4 PB3 PB2 PB1 PB0
PINA     gpio       0x39  8  - - - - - PINA2 PINA1 PINA0
DDRA     gpio       0x3A  8  - - - - - DDRA2 DDRA1 DDRA0
PORTA    gpio       0x3B  8  - - - - - PA2 PA1 PA0
EECR     eeprom     0x3C  8  - - EEPM1 EEPM0 EERIE EEMPE EEPE EERE
EEDR     eeprom     0x3D  8
EEAR     eeprom     0x3E  8
EEARL    eeprom     0x3E  8  - EEAR6 EEAR5 EEAR4 EEAR3 EEAR2 EEAR1 EEAR0
PCMSK    pcint      0x40  8  PCINT7 PCINT6 PCINT5 PCINT4 PCINT3 PCINT2 PCINT1 PCINT0
WDTCSR   watchdog   0x41  8  WDIF WDIE WDP3 WDCE WDE WDP2 WDP1 WDP0
TCCR1C   timer1     0x42  8  FOC1A FOC1B - - - - - -
GTCCR    timer      0x43  8  - - - - - - - PSR10
ICR1L    timer1     0x44  8
ICR1     timer1     0x44 16
ICR1H    timer1     0x45  8
CLKPR    clock      0x46  8  CLKPCE - - - CLKPS3 CLKPS2 CLKPS1 CLKPS0
OCR1BL   timer1     0x48  8
OCR1B    timer1     0x48 16
OCR1BH   timer1     0x49  8
OCR1AL   timer1     0x4A  8
OCR1L    timer1     0x4A  8
OCR1     timer1     0x4A 16
OCR1A    timer1     0x4A 16
OCR1AH   timer1     0x4B  8
OCR1H    timer1     0x4B  8
TCNT1L   timer1     0x4C  8
TCNT1    timer1     0x4C 16
TCNT1H   timer1     0x4D  8
TCCR1B   timer1     0x4E  8  ICNC1 ICES1 - WGM13 WGM12 CS12 CS11 CS10
TCCR1A   timer1     0x4F  8  COM1A1 COM1A0 COM1B1 COM1B0 - - WGM11 WGM10
TCCR0A   timer0     0x50  8  COM0A1 COM0A0 COM0B1 COM0B0 - - WGM01 WGM00
OSCCAL   clock      0x51  8  - CAL6 CAL5 CAL4 CAL3 CAL2 CAL1 CAL0
TCNT0    timer0     0x52  8
TCCR0B   timer0     0x53  8  FOC0A FOC0B - - WGM02 CS02 CS01 CS00
MCUSR    sleep      0x54  8  - - - - WDRF BORF EXTRF PORF
MCUCR    sleep      0x55  8  PUD SM1 SE SM0 ISC11 ISC10 ISC01 ISC00
OCR0A    timer0     0x56  8
SPMCSR   flash      0x57  8  - - - CTPB RFLB PGWRT PGERS SPMEN/SELFPRGEN/SELFPRGE
TIFR     timer      0x58  8  TOV1 OCF1A OCF1B - ICF1 OCF0B TOV0 OCF0A
TIMSK    timer      0x59  8  TOIE1 OCIE1A OCIE1B - ICIE1 OCIE0B TOIE0 OCIE0A
EIFR     extint     0x5A  8  INTF1 INTF0 PCIF - - - - -
GIMSK    extint     0x5B  8  INT1 INT0 PCIE - - - - -
OCR0B    timer0     0x5C  8
SP       cpu        0x5D  8
SPL      cpu        0x5D  8
SREG     cpu        0x5F  8  SREG_I SREG_T SREG_H SREG_S SREG_V SREG_N SREG_Z SREG_C
`;
