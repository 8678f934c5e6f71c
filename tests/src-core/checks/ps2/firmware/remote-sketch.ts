/** Remote mode, the clock held low between bytes, pins turned round by two functions. */
export const remoteSketch = {
  "remote.ino": `// Asks the mouse for a report whenever the PC's line is free.
#define MDATA 5
#define MCLK 6

void goHigh(int pin) {
  pinMode(pin, INPUT);
  digitalWrite(pin, HIGH);
}

void goLow(int pin) {
  pinMode(pin, OUTPUT);
  digitalWrite(pin, LOW);
}

void mouseWrite(char data) {
  char parity = 1;
  goHigh(MDATA);
  goHigh(MCLK);
  delayMicroseconds(300);
  goLow(MCLK);
  delayMicroseconds(300);
  goLow(MDATA);
  delayMicroseconds(10);
  goHigh(MCLK);
  while (digitalRead(MCLK) == HIGH)
    ;
  for (char i = 0; i < 8; i++) {
    if (data & 0x01) {
      goHigh(MDATA);
    } else {
      goLow(MDATA);
    }
    while (digitalRead(MCLK) == LOW)
      ;
    while (digitalRead(MCLK) == HIGH)
      ;
    parity = parity ^ (data & 0x01);
    data = data >> 1;
  }
  if (parity) {
    goHigh(MDATA);
  } else {
    goLow(MDATA);
  }
  while (digitalRead(MCLK) == LOW)
    ;
  while (digitalRead(MCLK) == HIGH)
    ;
  goHigh(MDATA);
  delayMicroseconds(50);
  while (digitalRead(MCLK) == HIGH)
    ;
  while ((digitalRead(MCLK) == LOW) || (digitalRead(MDATA) == LOW))
    ;
  goLow(MCLK);
}

char mouseRead() {
  char data = 0x00;
  char bit = 0x01;
  goHigh(MCLK);
  goHigh(MDATA);
  delayMicroseconds(50);
  while (digitalRead(MCLK) == HIGH)
    ;
  delayMicroseconds(5);
  while (digitalRead(MCLK) == LOW)
    ;
  for (char i = 0; i < 8; i++) {
    while (digitalRead(MCLK) == HIGH)
      ;
    if (digitalRead(MDATA) == HIGH) {
      data = data | bit;
    }
    while (digitalRead(MCLK) == LOW)
      ;
    bit = bit << 1;
  }
  while (digitalRead(MCLK) == HIGH)
    ;
  while (digitalRead(MCLK) == LOW)
    ;
  while (digitalRead(MCLK) == HIGH)
    ;
  while (digitalRead(MCLK) == LOW)
    ;
  goLow(MCLK);
  return data;
}

void mouseInit() {
  goHigh(MCLK);
  goHigh(MDATA);
  mouseWrite(0xff);
  mouseRead();
  mouseRead();
  mouseRead();
  mouseWrite(0xf0);
  mouseRead();
  delayMicroseconds(100);
}

void setup() {
  Serial.begin(1200, SERIAL_7N1);
  mouseInit();
}

void loop() {
  mouseWrite(0xeb);
  mouseRead();
  char state = mouseRead();
  char x = mouseRead();
  char y = mouseRead();
  Serial.write(0x40 | (state & 1) << 5 | (state & 2) << 3 | ((-y >> 4) & 0x0C) | ((x >> 6) & 3));
  Serial.write(x & 0x3F);
  Serial.write(-y & 0x3F);
  delay(20);
}
`,
};
