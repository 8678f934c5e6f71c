// The Ferry as a sketch, on the second evening: what stopped it on the first one is mended, and now it runs.
//
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial tx=1 rts=4 report=wheel shifter=inverting baud=1200 line=7N1

const uint8_t CLOCK_PIN = 2;
const uint8_t DATA_PIN = 3;
const uint8_t TX_PIN = 1;
const uint8_t RTS_PIN = 4;

// @wire means serial.bit-time
const unsigned int BIT_US = 830;

// What a wheel mouse answers when RTS goes on: 'M', 'Z', '@' and three zeros.
const uint8_t IDENTIFICATION[] = {'M', 'Z', '@', 0, 0, 0};

volatile uint8_t bits = 0;
volatile bool sending = false;
volatile uint8_t received = 0;
volatile bool complete = false;

// The mouse begins to clock within 15 ms.
void waitForClock(uint8_t level) {
  unsigned long since = millis();
  while (digitalRead(CLOCK_PIN) != level && millis() - since < 20) {
  }
}

void clockFell() {
  if (sending) {
    return;
  }
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

void release(uint8_t pin) { pinMode(pin, INPUT_PULLUP); }

void sendToMouse(uint8_t value) {
  bool parity = true;
  sending = true;
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
  waitForClock(LOW);
  waitForClock(HIGH);
  bits = 0;
  complete = false;
  sending = false;
}

void sendToPc(uint8_t value) {
  digitalWrite(TX_PIN, LOW);
  delayMicroseconds(BIT_US);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX_PIN, value & 1);
    value >>= 1;
    delayMicroseconds(BIT_US);
  }
  digitalWrite(TX_PIN, HIGH);
  delayMicroseconds(BIT_US);
}

uint8_t answer() {
  while (!complete) {
    lookAtRts();
  }
  complete = false;
  return received;
}

bool rtsWasOn = false;

void lookAtRts() {
  bool on = digitalRead(RTS_PIN) == LOW;
  if (on && !rtsWasOn) {
    for (uint8_t i = 0; i < sizeof IDENTIFICATION; i++) {
      sendToPc(IDENTIFICATION[i]);
    }
  }
  rtsWasOn = on;
}

void command(uint8_t value) {
  sendToMouse(value);
  answer();
}

void setUpMouse() {
  // The mouse says AA 00 when it has power.
  answer();
  answer();
  command(0xFF);
  answer();
  answer();
  command(0xF3);
  command(200);
  command(0xF3);
  command(100);
  command(0xF3);
  command(80);
  command(0xF2);
  answer();
  command(0xF4);
}

void setup() {
  pinMode(TX_PIN, OUTPUT);
  digitalWrite(TX_PIN, HIGH);
  attachInterrupt(digitalPinToInterrupt(CLOCK_PIN), clockFell, FALLING);
  setUpMouse();
}

uint8_t packet[4];
uint8_t length = 0;

void loop() {
  packet[length] = answer();
  if (++length < 4) {
    return;
  }
  length = 0;
  uint8_t head = packet[0];
  uint8_t dx = packet[1];
  uint8_t dy = -packet[2];
  sendToPc(0x40 | ((head & 1) << 5) | ((head & 2) << 3) | ((dy >> 4) & 0x0C) | (dx >> 6));
  sendToPc(dx & 0x3F);
  sendToPc(dy & 0x3F);
  sendToPc(((head & 4) << 2) | (packet[3] & 0x0F));
}
