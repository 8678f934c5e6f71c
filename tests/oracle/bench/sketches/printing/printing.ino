// Pin 2 is high while something is printed; before each there is room for all of it.

const uint8_t BLOCK[] = {1, 2, 3, 4};

void begin() {
  Serial.flush();
  digitalWrite(2, HIGH);
}

void end() { digitalWrite(2, LOW); }

void setup() {
  Serial.begin(9600);
  digitalWrite(2, LOW);
  pinMode(2, OUTPUT);
  begin();
  Serial.print("a line of text");
  end();
  begin();
  Serial.print(1234567L);
  end();
  begin();
  Serial.print(-42);
  end();
  begin();
  Serial.println(255, HEX);
  end();
  begin();
  Serial.write(BLOCK, sizeof BLOCK);
  end();
}

void loop() {}
