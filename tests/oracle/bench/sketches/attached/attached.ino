// Turns pin 3 over at each fall of pin 2, and tells of each in the main loop with the milliseconds since the one before.

volatile uint8_t falls;
uint8_t told;
unsigned long last;

void clockFell() {
  PORTD ^= _BV(PD3);
  falls++;
}

void setup() {
  Serial.begin(9600);
  pinMode(3, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}

void loop() {
  if (told != falls) {
    told++;
    unsigned long now = millis();
    Serial.write(now - last);
    last = now;
  }
}
