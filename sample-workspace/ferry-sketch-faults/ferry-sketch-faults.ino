// The Ferry as a sketch, as it was soldered together on the first evening.
//
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=5 data=3 pullups=internal
// @wire serial tx=1 rts=3 report=wheel shifter=inverting baud=1200 line=7N1

const uint8_t CLOCK_PIN = 5;
const uint8_t DATA_PIN = 3;
const uint8_t TX_PIN = 1;

// @wire means serial.bit-tme
const unsigned int BIT_US = 830;

uint8_t bits = 0;
uint8_t received = 0;
bool complete = false;

// @wire allow ps2/wait-forever
void waitForClock(uint8_t level) {
  while (digitalRead(CLOCK_PIN) != level) {
  }
}

void clockFell() {
  if (bits > 0 && bits < 9) {
    received = (received >> 1) | (digitalRead(DATA_PIN) ? 0x80 : 0);
  }
  if (++bits == 11) {
    bits = 0;
    complete = true;
  }
}

void pullLow(uint8_t pin) {
  digitalWrite(pin, LOW);
  pinMode(pin, OUTPUT);
}

void release(uint8_t pin) { pinMode(pin, INPUT); }

void sendToMouse(uint8_t value) {
  bool parity = true;
  pullLow(CLOCK_PIN);
  delayMicroseconds(120);
  pullLow(DATA_PIN);
  release(CLOCK_PIN);
  for (uint8_t i = 0; i < 8; i++) {
    waitForClock(LOW);
    if (value & 1) {
      release(DATA_PIN);
      parity = !parity;
    } else {
      pullLow(DATA_PIN);
    }
    value >>= 1;
    waitForClock(HIGH);
  }
  waitForClock(LOW);
  if (parity) {
    release(DATA_PIN);
  } else {
    pullLow(DATA_PIN);
  }
  waitForClock(HIGH);
  waitForClock(LOW);
  release(DATA_PIN);
  waitForClock(HIGH);
}

uint8_t answer() {
  while (!complete) {
  }
  complete = false;
  return received;
}

void command(uint8_t value) {
  sendToMouse(value);
  answer();
}

void setUpMouse() {
  command(0xFF);
  answer();
  answer();
  command(0xF3);
  command(200);
  command(0xF3);
  command(100);
  command(0xF3);
  command(60);
  command(0xF2);
  answer();
  command(0xF1);
  command(0xF4);
}

void sendToPc(uint8_t value) {
  digitalWrite(TX_PIN, LOW);
  delayMicroseconds(BIT_US);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX_PIN, value & 1);
    value >>= 1;
    delayMicroseconds(780);
  }
  digitalWrite(TX_PIN, HIGH);
  delayMicroseconds(BIT_US);
}

void setup() {
  pinMode(TX_PIN, OUTPUT);
  digitalWrite(TX_PIN, HIGH);
  attachInterrupt(digitalPinToInterrupt(CLOCK_PIN), clockFell, FALLING);
  setUpMouse();
}

void loop() {
  uint8_t head = answer();
  uint8_t dx = answer();
  uint8_t dy = -answer();
  uint8_t wheel = answer();
  sendToPc(0x40 | ((head & 1) << 5) | ((head & 2) << 3) | ((dy >> 4) & 0x0C) | (dx >> 6));
  sendToPc(dx & 0x3F);
  sendToPc(dy & 0x3F);
  sendToPc(((head & 4) << 2) | (wheel & 0x0F));
}
