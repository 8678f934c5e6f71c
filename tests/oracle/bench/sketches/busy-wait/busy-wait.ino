// Waits for each fall of pin 2 and answers it on pin 3.

void setup() { pinMode(3, OUTPUT); }

void loop() {
  while (digitalRead(2) == HIGH) {
  }
  PORTD ^= _BV(PD3);
  while (digitalRead(2) == LOW) {
  }
}
