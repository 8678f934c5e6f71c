// Pulses on pin 2, each made by other functions; what the time was, as bytes at the end.

unsigned long before;
unsigned long after;

void pulse(unsigned int microseconds) {
  digitalWrite(2, HIGH);
  delayMicroseconds(microseconds);
  digitalWrite(2, LOW);
}

void tell(unsigned long value) {
  for (uint8_t i = 0; i < 4; i++) {
    Serial.write(value & 0xff);
    value >>= 8;
  }
}

void setup() {
  Serial.begin(9600);
  pinMode(2, OUTPUT);
  pinMode(3, INPUT_PULLUP);
  pulse(1);
  pulse(52);
  pulse(833);
  before = millis();
  digitalWrite(2, HIGH);
  delay(50);
  digitalWrite(2, LOW);
  after = millis();
  digitalWrite(2, digitalRead(3));
  pinMode(3, OUTPUT);
  shiftOut(3, 2, MSBFIRST, 0xA6);
  tell(after - before);
  tell(micros() / 4096);
}

void loop() {}
