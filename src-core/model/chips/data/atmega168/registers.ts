/**
 * Registers by data-space address: name, peripheral, address, width in bits, and the bits from the highest to
 * the lowest (`-` for none, `/` between two names). avr-libc 2.0.0, avr/iomx8.h.
 */
export const registers = `
PINB     gpio       0x23  8  PINB7 PINB6 PINB5 PINB4 PINB3 PINB2 PINB1 PINB0
DDRB     gpio       0x24  8  DDB7 DDB6 DDB5 DDB4 DDB3 DDB2 DDB1 DDB0
PORTB    gpio       0x25  8  PB7 PB6 PB5 PB4 PB3 PB2 PB1 PB0
PINC     gpio       0x26  8  - PINC6 PINC5 PINC4 PINC3 PINC2 PINC1 PINC0
DDRC     gpio       0x27  8  - DDC6 DDC5 DDC4 DDC3 DDC2 DDC1 DDC0
PORTC    gpio       0x28  8  - PC6 PC5 PC4 PC3 PC2 PC1 PC0
PIND     gpio       0x29  8  PIND7 PIND6 PIND5 PIND4 PIND3 PIND2 PIND1 PIND0
DDRD     gpio       0x2A  8  DDD7 DDD6 DDD5 DDD4 DDD3 DDD2 DDD1 DDD0
PORTD    gpio       0x2B  8  PD7 PD6 PD5 PD4 PD3 PD2 PD1 PD0
TIFR0    timer0     0x35  8  - - - - - OCF0B OCF0A TOV0
TIFR1    timer1     0x36  8  - - ICF1 - - OCF1B OCF1A TOV1
TIFR2    timer2     0x37  8  - - - - - OCF2B OCF2A TOV2
PCIFR    pcint      0x3B  8  - - - - - PCIF2 PCIF1 PCIF0
EIFR     extint     0x3C  8  - - - - - - INTF1 INTF0
EIMSK    extint     0x3D  8  - - - - - - INT1 INT0
GPIOR0   gpior      0x3E  8
EECR     eeprom     0x3F  8  - - EEPM1 EEPM0 EERIE EEMPE EEPE EERE
EEDR     eeprom     0x40  8
EEARL    eeprom     0x41  8
EEAR     eeprom     0x41 16
EEARH    eeprom     0x42  8
GTCCR    timer      0x43  8  TSM - - - - - PSRASY PSRSYNC
TCCR0A   timer0     0x44  8  COM0A1 COM0A0 COM0B1 COM0B0 - - WGM01 WGM00
TCCR0B   timer0     0x45  8  FOC0A FOC0B - - WGM02 CS02 CS01 CS00
TCNT0    timer0     0x46  8
OCR0A    timer0     0x47  8
OCR0B    timer0     0x48  8
GPIOR1   gpior      0x4A  8
GPIOR2   gpior      0x4B  8
SPCR     spi        0x4C  8  SPIE SPE DORD MSTR CPOL CPHA SPR1 SPR0
SPSR     spi        0x4D  8  SPIF WCOL - - - - - SPI2X
SPDR     spi        0x4E  8
ACSR     comparator 0x50  8  ACD ACBG ACO ACI ACIE ACIC ACIS1 ACIS0
MONDR    debug      0x51  8
SMCR     sleep      0x53  8  - - - - SM2 SM1 SM0 SE
MCUSR    sleep      0x54  8  - - - - WDRF BORF EXTRF PORF
MCUCR    sleep      0x55  8  - - - PUD - - IVSEL IVCE
SPMCSR   flash      0x57  8  SPMIE RWWSB - RWWSRE BLBSET PGWRT PGERS SELFPRGEN/SPMEN
SPL      cpu        0x5D  8
SP       cpu        0x5D 16
SPH      cpu        0x5E  8
SREG     cpu        0x5F  8  SREG_I SREG_T SREG_H SREG_S SREG_V SREG_N SREG_Z SREG_C
WDTCSR   watchdog   0x60  8  WDIF WDIE WDP3 WDCE WDE WDP2 WDP1 WDP0
CLKPR    clock      0x61  8  CLKPCE - - - CLKPS3 CLKPS2 CLKPS1 CLKPS0
PRR      sleep      0x64  8  PRTWI PRTIM2 PRTIM0 - PRTIM1 PRSPI PRUSART0 PRADC
OSCCAL   clock      0x66  8
PCICR    pcint      0x68  8  - - - - - PCIE2 PCIE1 PCIE0
EICRA    extint     0x69  8  - - - - ISC11 ISC10 ISC01 ISC00
PCMSK0   pcint      0x6B  8  PCINT7 PCINT6 PCINT5 PCINT4 PCINT3 PCINT2 PCINT1 PCINT0
PCMSK1   pcint      0x6C  8  - PCINT14 PCINT13 PCINT12 PCINT11 PCINT10 PCINT9 PCINT8
PCMSK2   pcint      0x6D  8  PCINT23 PCINT22 PCINT21 PCINT20 PCINT19 PCINT18 PCINT17 PCINT16
TIMSK0   timer0     0x6E  8  - - - - - OCIE0B OCIE0A TOIE0
TIMSK1   timer1     0x6F  8  - - ICIE1 - - OCIE1B OCIE1A TOIE1
TIMSK2   timer2     0x70  8  - - - - - OCIE2B OCIE2A TOIE2
ADCL     adc        0x78  8
ADC      adc        0x78 16
ADCW     adc        0x78 16
ADCH     adc        0x79  8
ADCSRA   adc        0x7A  8  ADEN ADSC ADATE ADIF ADIE ADPS2 ADPS1 ADPS0
ADCSRB   adc        0x7B  8  - ACME - - - ADTS2 ADTS1 ADTS0
ADMUX    adc        0x7C  8  REFS1 REFS0 ADLAR - MUX3 MUX2 MUX1 MUX0
DIDR0    adc        0x7E  8  - - ADC5D ADC4D ADC3D ADC2D ADC1D ADC0D
DIDR1    comparator 0x7F  8  - - - - - - AIN1D AIN0D
TCCR1A   timer1     0x80  8  COM1A1 COM1A0 COM1B1 COM1B0 - - WGM11 WGM10
TCCR1B   timer1     0x81  8  ICNC1 ICES1 - WGM13 WGM12 CS12 CS11 CS10
TCCR1C   timer1     0x82  8  FOC1A FOC1B - - - - - -
TCNT1L   timer1     0x84  8
TCNT1    timer1     0x84 16
TCNT1H   timer1     0x85  8
ICR1L    timer1     0x86  8
ICR1     timer1     0x86 16
ICR1H    timer1     0x87  8
OCR1AL   timer1     0x88  8
OCR1A    timer1     0x88 16
OCR1AH   timer1     0x89  8
OCR1BL   timer1     0x8A  8
OCR1B    timer1     0x8A 16
OCR1BH   timer1     0x8B  8
TCCR2A   timer2     0xB0  8  COM2A1 COM2A0 COM2B1 COM2B0 - - WGM21 WGM20
TCCR2B   timer2     0xB1  8  FOC2A FOC2B - - WGM22 CS22 CS21 CS20
TCNT2    timer2     0xB2  8
OCR2A    timer2     0xB3  8
OCR2B    timer2     0xB4  8
ASSR     timer2     0xB6  8  - EXCLK AS2 TCN2UB OCR2AUB OCR2BUB TCR2AUB TCR2BUB
TWBR     twi        0xB8  8
TWSR     twi        0xB9  8  TWS7 TWS6 TWS5 TWS4 TWS3 - TWPS1 TWPS0
TWAR     twi        0xBA  8  TWA6 TWA5 TWA4 TWA3 TWA2 TWA1 TWA0 TWGCE
TWDR     twi        0xBB  8
TWCR     twi        0xBC  8  TWINT TWEA TWSTA TWSTO TWWC TWEN - TWIE
TWAMR    twi        0xBD  8  TWAM6 TWAM5 TWAM4 TWAM3 TWAM2 TWAM1 TWAM0 -
UCSR0A   usart      0xC0  8  RXC0 TXC0 UDRE0 FE0 DOR0 UPE0 U2X0 MPCM0
UCSR0B   usart      0xC1  8  RXCIE0 TXCIE0 UDRIE0 RXEN0 TXEN0 UCSZ02 RXB80 TXB80
UCSR0C   usart      0xC2  8  UMSEL01 UMSEL00 UPM01 UPM00 USBS0 UCSZ01/UDORD0 UCSZ00/UCPHA0 UCPOL0
UBRR0L   usart      0xC4  8
UBRR0    usart      0xC4 16
UBRR0H   usart      0xC5  8
UDR0     usart      0xC6  8
`;
