// More bytes than the buffer takes; pin 2 rises when the last is written, falls when the last has left.

void setup() {
  Serial.begin(9600);
  pinMode(2, OUTPUT);
  for (uint8_t i = 0; i < 90; i++) {
    Serial.write(i);
  }
  digitalWrite(2, HIGH);
  Serial.flush();
  digitalWrite(2, LOW);
  Serial.print(F("room "));
  Serial.println(Serial.availableForWrite());
}

void loop() {}
