// The Ferry as a sketch: a PS/2 mouse on pins 2 and 3, the catalogue PC's serial port on pin 1, its RTS on pin 4.
//
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=4 report=wheel shifter=inverting baud=1200 line=7N1

#include "ps2_port.h"
#include "travel.h"

const uint8_t RTS_PIN = 4;
const unsigned long RETRY_MS = 500;

// What a wheel mouse answers when RTS goes on: 'M', 'Z', '@' and three zeros.
const uint8_t IDENTIFICATION[] = {'M', 'Z', '@', 0, 0, 0};

Ps2Port mouse(2, 3);
Travel travel;

bool mouseReady = false;
bool rtsWasOn = false;
unsigned long lastTry = 0;

void clockFell() { mouse.clockFell(); }

// The level shifter turns the line over: ON reads low.
bool rtsIsOn() { return digitalRead(RTS_PIN) == LOW; }

// The core sends from a buffer: a new report is built when the last one has left it, with all that moved since.
bool lineIsFree() { return Serial.availableForWrite() == SERIAL_TX_BUFFER_SIZE - 1; }

void sendWhatIsDue() {
  bool on = rtsIsOn();
  if (on && !rtsWasOn) {
    travel.forget();
    Serial.write(IDENTIFICATION, sizeof IDENTIFICATION);
  }
  rtsWasOn = on;
  if (!on || !lineIsFree()) {
    return;
  }
  uint8_t report[4];
  if (travel.take(report)) {
    Serial.write(report, sizeof report);
  }
}

void setup() {
  pinMode(RTS_PIN, INPUT);
  Serial.begin(1200, SERIAL_7N1);
  mouse.begin();
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}

void loop() {
  if (!mouseReady && millis() - lastTry >= RETRY_MS) {
    mouseReady = setUpMouse();
    lastTry = millis();
  }
  Movement movement;
  while (mouse.readMovement(movement)) {
    travel.add(movement);
  }
  if (mouse.restarted()) {
    mouseReady = false;
  }
  sendWhatIsDue();
}
