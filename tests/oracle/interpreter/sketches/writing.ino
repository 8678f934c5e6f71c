static const byte packet[] = { 'M', '3', 13, 10 };

void setup()
{
  Serial.begin(1200, SERIAL_7N1);
  Serial.print(Serial.write(packet, sizeof packet));
  Serial.print(Serial.write("text"));
  Serial.print(Serial.print("abc") + Serial.println(1234));
  Serial.print(Serial.available());
  Serial.print(Serial.read());
  Serial.write(4);
}

void loop()
{
}
