static const int numbers[] = { -300, -1, 0, 17, 300 };

void setup()
{
  Serial.begin(9600);
  for (int n : numbers) {
    Serial.println(constrain(n, -127, 127));
    Serial.println(map(n, -300, 300, 0, 255));
    Serial.println(abs(n));
    Serial.println(min(n, 5) + max(n, 5));
    Serial.println(sq(n / 10));
    Serial.println(lowByte(n));
    Serial.println(highByte(n));
    Serial.println(bitRead(n, 3));
  }
  byte flags = 0;
  bitSet(flags, 2);
  bitWrite(flags, 7, 1);
  bitClear(flags, 2);
  Serial.println(flags);
  Serial.println(bit(5));
  Serial.println(word(0x12, 0x34));
  Serial.println(isDigit('5') ? "digit" : "none");
  Serial.println(isAlpha('5') ? "letter" : "none");
  Serial.write(4);
}

void loop()
{
}
