const int led = 13, data = 4;

void setup()
{
  Serial.begin(9600);
  pinMode(led, OUTPUT);
  pinMode(data, INPUT_PULLUP);
  digitalWrite(led, HIGH);
  Serial.println(PORTB & 0x20);
  Serial.println(DDRB & 0x20);
  Serial.println(PORTD & 0x10);
  Serial.println(DDRD & 0x10);
  digitalWrite(led, LOW);
  Serial.println(PORTB & 0x20);
  pinMode(data, OUTPUT);
  digitalWrite(data, LOW);
  Serial.println(PORTD & 0x10);
  Serial.println(DDRD & 0x10);
  Serial.write(4);
}

void loop()
{
}
