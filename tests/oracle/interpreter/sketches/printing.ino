void setup()
{
  Serial.begin(9600);
  Serial.print("text ");
  Serial.println('c');
  Serial.println(-12345);
  Serial.println(54321u);
  Serial.println(-1234567L);
  Serial.println(4000000000UL);
  Serial.println((uint8_t)200);
  Serial.println(255, HEX);
  Serial.println(10, BIN);
  Serial.println(64, OCT);
  Serial.println(-1, HEX);
  Serial.println(3.14159);
  Serial.println(-2.5, 1);
  Serial.println(1.0 / 3, 5);
  Serial.print(F("from flash"));
  Serial.println();
  Serial.println(true);
}

void loop()
{
  Serial.write(4);
}
