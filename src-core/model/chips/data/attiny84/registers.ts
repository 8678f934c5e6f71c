/**
 * Registers by data-space address: name, peripheral, address, width in bits, and the bits from the highest to
 * the lowest (`-` for none, `/` between two names). avr-libc 2.0.0, avr/iotnx4.h.
 */
export const registers = `
PRR      sleep      0x20  8  - - - - PRTIM1 PRTIM0 PRUSI PRADC
DIDR0    adc        0x21  8  ADC7D ADC6D ADC5D ADC4D ADC3D ADC2D ADC1D ADC0D
ADCSRB   adc        0x23  8  BIN ACME MUX5 - - ADTS2 ADTS1 ADTS0
ADCL     adc        0x24  8
ADC      adc        0x24 16
ADCW     adc        0x24 16
ADCH     adc        0x25  8
ADCSRA   adc        0x26  8  ADEN ADSC ADATE ADIF ADIE ADPS2 ADPS1 ADPS0
ADMUX    adc        0x27  8  REFS1 REFS0 - ADLAR/MUX4 MUX3 MUX2 MUX1 MUX0
ACSR     comparator 0x28  8  ACD ACBG ACO ACI ACIE ACIC ACIS1 ACIS0
TIFR1    timer1     0x2B  8  - - ICF1 - - OCF1B OCF1A TOV1
TIMSK1   timer1     0x2C  8  - - ICIE1 - - OCIE1B OCIE1A TOIE1
USICR    usi        0x2D  8  USISIE USIOIE USIWM1 USIWM0 USICS1 USICS0 USICLK USITC
USISR    usi        0x2E  8  USISIF USIOIF USIPF USIDC USICNT3 USICNT2 USICNT1 USICNT0
USIDR    usi        0x2F  8
USIBR    usi        0x30  8
PCMSK0   pcint      0x32  8  PCINT7 PCINT6 PCINT5 PCINT4 PCINT3 PCINT2 PCINT1 PCINT0
GPIOR0   gpior      0x33  8
GPIOR1   gpior      0x34  8
GPIOR2   gpior      0x35  8
PINB     gpio       0x36  8  - - - - PINB3 PINB2 PINB1 PINB0
DDRB     gpio       0x37  8  - - - - DDB3 DDB2 DDB1 DDB0
PORTB    gpio       0x38  8  - - - - PB3 PB2 PB1 PB0
PINA     gpio       0x39  8  PINA7 PINA6 PINA5 PINA4 PINA3 PINA2 PINA1 PINA0
DDRA     gpio       0x3A  8  DDA7 DDA6 DDA5 DDA4 DDA3 DDA2 DDA1 DDA0
PORTA    gpio       0x3B  8  PA7 PA6 PA5 PA4 PA3 PA2 PA1 PA0
EECR     eeprom     0x3C  8  - - EEPM1 EEPM0 EERIE EEMPE EEPE EERE
EEDR     eeprom     0x3D  8
EEARL    eeprom     0x3E  8
EEAR     eeprom     0x3E 16
EEARH    eeprom     0x3F  8
PCMSK1   pcint      0x40  8  - - - - PCINT11 PCINT10 PCINT9 PCINT8
WDTCSR   watchdog   0x41  8  WDIF WDIE WDP3 WDCE WDE WDP2 WDP1 WDP0
TCCR1C   timer1     0x42  8  FOC1A FOC1B - - - - - -
GTCCR    timer      0x43  8  TSM - - - - - - PSR10
ICR1L    timer1     0x44  8
ICR1     timer1     0x44 16
ICR1H    timer1     0x45  8
CLKPR    clock      0x46  8  CLKPCE - - - CLKPS3 CLKPS2 CLKPS1 CLKPS0
DWDR     debug      0x47  8
OCR1BL   timer1     0x48  8
OCRB1L   timer1     0x48  8
OCR1B    timer1     0x48 16
OCRB1    timer1     0x48 16
OCR1BH   timer1     0x49  8
OCRB1H   timer1     0x49  8
OCR1AL   timer1     0x4A  8
OCRA1L   timer1     0x4A  8
OCR1A    timer1     0x4A 16
OCRA1    timer1     0x4A 16
OCR1AH   timer1     0x4B  8
OCRA1H   timer1     0x4B  8
TCNT1L   timer1     0x4C  8
TCNT1    timer1     0x4C 16
TCNT1H   timer1     0x4D  8
TCCR1B   timer1     0x4E  8  ICNC1 ICES1 - WGM13 WGM12 CS12 CS11 CS10
TCCR1A   timer1     0x4F  8  COM1A1 COM1A0 COM1B1 COM1B0 - - WGM11 WGM10
TCCR0A   timer0     0x50  8  COM0A1 COM0A0 COM0B1 COM0B0 - - WGM01 WGM00
OSCCAL   clock      0x51  8
TCNT0    timer0     0x52  8
TCCR0B   timer0     0x53  8  FOC0A FOC0B - - WGM02 CS02 CS01 CS00
MCUSR    sleep      0x54  8  - - - - WDRF BORF EXTRF PORF
MCUCR    sleep      0x55  8  BODS PUD SE SM1 SM0 BODSE ISC01 ISC00
OCR0A    timer0     0x56  8
SPMCSR   flash      0x57  8  - - RSIG CTPB RFLB PGWRT PGERS SPMEN
TIFR0    timer0     0x58  8  - - - - - OCF0B OCF0A TOV0
TIMSK0   timer0     0x59  8  - - - - - OCIE0B OCIE0A TOIE0
GIFR     extint     0x5A  8  - INTF0 PCIF1 PCIF0 - - - -
GIMSK    extint     0x5B  8  - INT0 PCIE1 PCIE0 - - - -
OCR0B    timer0     0x5C  8
SPL      cpu        0x5D  8
SP       cpu        0x5D 16
SPH      cpu        0x5E  8
SREG     cpu        0x5F  8  SREG_I SREG_T SREG_H SREG_S SREG_V SREG_N SREG_Z SREG_C
`;
