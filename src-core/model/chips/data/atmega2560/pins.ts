/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PA0  D22          -     -         -  XAD0
PA1  D23          -     -         -  XAD1
PA2  D24          -     -         -  XAD2
PA3  D25          -     -         -  XAD3
PA4  D26          -     -         -  XAD4
PA5  D27          -     -         -  XAD5
PA6  D28          -     -         -  XAD6
PA7  D29          -     -         -  XAD7
PB0  D53          -     PCINT0    -  SS
PB1  D52          -     PCINT1    -  SCK
PB2  D51          -     PCINT2    -  MOSI
PB3  D50          -     PCINT3    -  MISO
PB4  D10          -     PCINT4    -  OC2A
PB5  D11          -     PCINT5    -  OC1A
PB6  D12          -     PCINT6    -  OC1B
PB7  D13          -     PCINT7    -  OC0A OC1C
PC0  D37          -     -         -  XADDR8
PC1  D36          -     -         -  XADDR9
PC2  D35          -     -         -  XADDR10
PC3  D34          -     -         -  XADDR11
PC4  D33          -     -         -  XADDR12
PC5  D32          -     -         -  XADDR13
PC6  D31          -     -         -  XADDR14
PC7  D30          -     -         -  XADDR15
PD0  D21          INT0  -         -  SCL
PD1  D20          INT1  -         -  SDA
PD2  D19          INT2  -         -  RXD1
PD3  D18          INT3  -         -  TXD1
PD4  -            -     -         -  ICP1
PD5  -            -     -         -  XCK1
PD6  -            -     -         -  T1
PD7  D38          -     -         -  T0
PE0  D0           -     PCINT8    -  RXD0
PE1  D1           -     -         -  TXD0
PE2  -            -     -         -  XCK0 AIN0
PE3  D5           -     -         -  OC3A AIN1
PE4  D2           INT4  -         -  OC3B
PE5  D3           INT5  -         -  OC3C
PE6  -            INT6  -         -  T3
PE7  -            INT7  -         -  ICP3 CLKO
PF0  D54,A0       -     -         -  ADC0
PF1  D55,A1       -     -         -  ADC1
PF2  D56,A2       -     -         -  ADC2
PF3  D57,A3       -     -         -  ADC3
PF4  D58,A4       -     -         -  ADC4 TCK
PF5  D59,A5       -     -         -  ADC5 TMS
PF6  D60,A6       -     -         -  ADC6 TDO
PF7  D61,A7       -     -         -  ADC7 TDI
PG0  D41          -     -         -  WR
PG1  D40          -     -         -  RD
PG2  D39          -     -         -  ALE
PG3  -            -     -         -  TOSC2
PG4  -            -     -         -  TOSC1
PG5  D4           -     -         -  OC0B
PH0  D17          -     -         -  RXD2
PH1  D16          -     -         -  TXD2
PH2  -            -     -         -  XCK2
PH3  D6           -     -         -  OC4A
PH4  D7           -     -         -  OC4B
PH5  D8           -     -         -  OC4C
PH6  D9           -     -         -  OC2B
PH7  -            -     -         -  T4
PJ0  D15          -     PCINT9    -  RXD3
PJ1  D14          -     PCINT10   -  TXD3
PJ2  -            -     PCINT11   -  XCK3
PJ3  -            -     PCINT12   -
PJ4  -            -     PCINT13   -
PJ5  -            -     PCINT14   -
PJ6  -            -     PCINT15   -
PJ7  -            -     -         -
PK0  D62,A8       -     PCINT16   -  ADC8
PK1  D63,A9       -     PCINT17   -  ADC9
PK2  D64,A10      -     PCINT18   -  ADC10
PK3  D65,A11      -     PCINT19   -  ADC11
PK4  D66,A12      -     PCINT20   -  ADC12
PK5  D67,A13      -     PCINT21   -  ADC13
PK6  D68,A14      -     PCINT22   -  ADC14
PK7  D69,A15      -     PCINT23   -  ADC15
PL0  D49          -     -         -  ICP4
PL1  D48          -     -         -  ICP5
PL2  D47          -     -         -  T5
PL3  D46          -     -         -  OC5A
PL4  D45          -     -         -  OC5B
PL5  D44          -     -         -  OC5C
PL6  D43          -     -         -
PL7  D42          -     -         -
`;
