/**
 * Registers by data-space address: name, peripheral, address, width in bits, and the bits from the highest to
 * the lowest (`-` for none, `/` between two names). avr-libc 2.0.0, avr/iotn85.h.
 */
export const registers = `
ADCSRB   adc        0x23  8  BIN ACME IPR - - ADTS2 ADTS1 ADTS0
ADCL     adc        0x24  8
ADC      adc        0x24 16
ADCW     adc        0x24 16
ADCH     adc        0x25  8
ADCSRA   adc        0x26  8  ADEN ADSC ADATE ADIF ADIE ADPS2 ADPS1 ADPS0
ADMUX    adc        0x27  8  REFS1 REFS0 ADLAR REFS2 MUX3 MUX2 MUX1 MUX0
ACSR     comparator 0x28  8  ACD ACBG ACO ACI ACIE - ACIS1 ACIS0
USICR    usi        0x2D  8  USISIE USIOIE USIWM1 USIWM0 USICS1 USICS0 USICLK USITC
USISR    usi        0x2E  8  USISIF USIOIF USIPF USIDC USICNT3 USICNT2 USICNT1 USICNT0
USIDR    usi        0x2F  8
USIBR    usi        0x30  8
GPIOR0   gpior      0x31  8
GPIOR1   gpior      0x32  8
GPIOR2   gpior      0x33  8
DIDR0    adc        0x34  8  - - ADC0D ADC2D ADC3D ADC1D AIN1D AIN0D
PCMSK    pcint      0x35  8  - - PCINT5 PCINT4 PCINT3 PCINT2 PCINT1 PCINT0
PINB     gpio       0x36  8  - - PINB5 PINB4 PINB3 PINB2 PINB1 PINB0
DDRB     gpio       0x37  8  - - DDB5 DDB4 DDB3 DDB2 DDB1 DDB0
PORTB    gpio       0x38  8  - - PB5 PB4 PB3 PB2 PB1 PB0
EECR     eeprom     0x3C  8  - - EEPM1 EEPM0 EERIE EEMPE EEPE EERE
EEDR     eeprom     0x3D  8
EEARL    eeprom     0x3E  8
EEAR     eeprom     0x3E 16
EEARH    eeprom     0x3F  8
PRR      sleep      0x40  8  - - - - PRTIM1 PRTIM0 PRUSI PRADC
WDTCR    watchdog   0x41  8  WDIF WDIE WDP3 WDCE WDE WDP2 WDP1 WDP0
DWDR     debug      0x42  8
DTPS1    timer1     0x43  8  - - - - - - DTPS11 DTPS10
DT1B     timer1     0x44  8  DT1BH3 DT1BH2 DT1BH1 DT1BH0 DT1BL3 DT1BL2 DT1BL1 DT1BL0
DT1A     timer1     0x45  8  DT1AH3 DT1AH2 DT1AH1 DT1AH0 DT1AL3 DT1AL2 DT1AL1 DT1AL0
CLKPR    clock      0x46  8  CLKPCE - - - CLKPS3 CLKPS2 CLKPS1 CLKPS0
PLLCSR   clock      0x47  8  LSM - - - - PCKE PLLE PLOCK
OCR0B    timer0     0x48  8
OCR0A    timer0     0x49  8
TCCR0A   timer0     0x4A  8  COM0A1 COM0A0 COM0B1 COM0B0 - - WGM01 WGM00
OCR1B    timer1     0x4B  8
GTCCR    timer      0x4C  8  TSM PWM1B COM1B1 COM1B0 FOC1B FOC1A PSR1 PSR0
OCR1C    timer1     0x4D  8
OCR1A    timer1     0x4E  8
TCNT1    timer1     0x4F  8
TCCR1    timer1     0x50  8  CTC1 PWM1A COM1A1 COM1A0 CS13 CS12 CS11 CS10
OSCCAL   clock      0x51  8
TCNT0    timer0     0x52  8
TCCR0B   timer0     0x53  8  FOC0A FOC0B - - WGM02 CS02 CS01 CS00
MCUSR    sleep      0x54  8  - - - - WDRF BORF EXTRF PORF
MCUCR    sleep      0x55  8  BODS PUD SE SM1 SM0 BODSE ISC01 ISC00
SPMCSR   flash      0x57  8  - - RSIG CTPB RFLB PGWRT PGERS SPMEN
TIFR     timer      0x58  8  - OCF1A OCF1B OCF0A OCF0B TOV1 TOV0 -
TIMSK    timer      0x59  8  - OCIE1A OCIE1B OCIE0A OCIE0B TOIE1 TOIE0 -
GIFR     extint     0x5A  8  - INTF0 PCIF - - - - -
GIMSK    extint     0x5B  8  - INT0 PCIE - - - - -
SPL      cpu        0x5D  8
SP       cpu        0x5D 16
SPH      cpu        0x5E  8
SREG     cpu        0x5F  8  SREG_I SREG_T SREG_H SREG_S SREG_V SREG_N SREG_Z SREG_C
`;
