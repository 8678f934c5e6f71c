/**
 * Registers by data-space address: name, peripheral, address, width in bits, and the bits from the highest to
 * the lowest (`-` for none, `/` between two names). avr-libc 2.0.0, avr/iom8.h.
 */
export const registers = `
TWBR     twi        0x20  8
TWSR     twi        0x21  8  TWS7 TWS6 TWS5 TWS4 TWS3 - TWPS1 TWPS0
TWAR     twi        0x22  8  TWA6 TWA5 TWA4 TWA3 TWA2 TWA1 TWA0 TWGCE
TWDR     twi        0x23  8
ADCL     adc        0x24  8
ADCW     adc        0x24 16
ADC      adc        0x24 16
ADCH     adc        0x25  8
ADCSR    adc        0x26  8
ADCSRA   adc        0x26  8  ADEN ADSC ADFR ADIF ADIE ADPS2 ADPS1 ADPS0
ADMUX    adc        0x27  8  REFS1 REFS0 ADLAR - MUX3 MUX2 MUX1 MUX0
ACSR     comparator 0x28  8  ACD ACBG ACO ACI ACIE ACIC ACIS1 ACIS0
UBRRL    usart      0x29  8
UCSRB    usart      0x2A  8  RXCIE TXCIE UDRIE RXEN TXEN UCSZ2 RXB8 TXB8
UCSRA    usart      0x2B  8  RXC TXC UDRE FE DOR PE U2X MPCM
UDR      usart      0x2C  8
SPCR     spi        0x2D  8  SPIE SPE DORD MSTR CPOL CPHA SPR1 SPR0
SPSR     spi        0x2E  8  SPIF WCOL - - - - - SPI2X
SPDR     spi        0x2F  8
PIND     gpio       0x30  8  PIND7 PIND6 PIND5 PIND4 PIND3 PIND2 PIND1 PIND0
DDRD     gpio       0x31  8  DDD7 DDD6 DDD5 DDD4 DDD3 DDD2 DDD1 DDD0
PORTD    gpio       0x32  8  PD7 PD6 PD5 PD4 PD3 PD2 PD1 PD0
PINC     gpio       0x33  8  - PINC6 PINC5 PINC4 PINC3 PINC2 PINC1 PINC0
DDRC     gpio       0x34  8  - DDC6 DDC5 DDC4 DDC3 DDC2 DDC1 DDC0
PORTC    gpio       0x35  8  - PC6 PC5 PC4 PC3 PC2 PC1 PC0
PINB     gpio       0x36  8  PINB7 PINB6 PINB5 PINB4 PINB3 PINB2 PINB1 PINB0
DDRB     gpio       0x37  8  DDB7 DDB6 DDB5 DDB4 DDB3 DDB2 DDB1 DDB0
PORTB    gpio       0x38  8  PB7 PB6 PB5 PB4 PB3 PB2 PB1 PB0
EECR     eeprom     0x3C  8  - - - - EERIE EEMWE EEWE EERE
EEDR     eeprom     0x3D  8
EEARL    eeprom     0x3E  8
EEAR     eeprom     0x3E 16
EEARH    eeprom     0x3F  8
UBRRH    usart      0x40  8
UCSRC    usart      0x40  8  URSEL UMSEL UPM1 UPM0 USBS UCSZ1 UCSZ0 UCPOL
WDTCR    watchdog   0x41  8  - - - WDCE WDE WDP2 WDP1 WDP0
ASSR     timer2     0x42  8  - - - - AS2 TCN2UB OCR2UB TCR2UB
OCR2     timer2     0x43  8
TCNT2    timer2     0x44  8
TCCR2    timer2     0x45  8  FOC2 WGM20 COM21 COM20 WGM21 CS22 CS21 CS20
ICR1L    timer1     0x46  8
ICR1     timer1     0x46 16
ICR1H    timer1     0x47  8
OCR1BL   timer1     0x48  8
OCR1B    timer1     0x48 16
OCR1BH   timer1     0x49  8
OCR1AL   timer1     0x4A  8
OCR1A    timer1     0x4A 16
OCR1AH   timer1     0x4B  8
TCNT1L   timer1     0x4C  8
TCNT1    timer1     0x4C 16
TCNT1H   timer1     0x4D  8
TCCR1B   timer1     0x4E  8  ICNC1 ICES1 - WGM13 WGM12 CS12 CS11 CS10
TCCR1A   timer1     0x4F  8  COM1A1 COM1A0 COM1B1 COM1B0 FOC1A FOC1B WGM11 WGM10
SFIOR    io         0x50  8  - - - - ACME PUD PSR2 PSR10
OSCCAL   clock      0x51  8
TCNT0    timer0     0x52  8
TCCR0    timer0     0x53  8  - - - - - CS02 CS01 CS00
MCUCSR   sleep      0x54  8  - - - - WDRF BORF EXTRF PORF
MCUSR    sleep      0x54  8
MCUCR    sleep      0x55  8  SE SM2 SM1 SM0 ISC11 ISC10 ISC01 ISC00
TWCR     twi        0x56  8  TWINT TWEA TWSTA TWSTO TWWC TWEN - TWIE
SPMCR    flash      0x57  8  SPMIE RWWSB - RWWSRE BLBSET PGWRT PGERS SPMEN
TIFR     timer      0x58  8  OCF2 TOV2 ICF1 OCF1A OCF1B TOV1 - TOV0
TIMSK    timer      0x59  8  OCIE2 TOIE2 TICIE1 OCIE1A OCIE1B TOIE1 - TOIE0
GIFR     extint     0x5A  8  INTF1 INTF0 - - - - - -
GIMSK    extint     0x5B  8
GICR     extint     0x5B  8  INT1 INT0 - - - - IVSEL IVCE
SPL      cpu        0x5D  8
SP       cpu        0x5D 16
SPH      cpu        0x5E  8
SREG     cpu        0x5F  8  SREG_I SREG_T SREG_H SREG_S SREG_V SREG_N SREG_Z SREG_C
`;
