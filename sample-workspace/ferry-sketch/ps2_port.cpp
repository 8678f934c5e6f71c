#include "ps2_port.h"

void Ps2Port::begin() {
  release(clockPin);
  release(dataPin);
}

void Ps2Port::clockFell() {
  if (sending) {
    return;
  }
  bool bit = digitalRead(dataPin);
  if (frameBit == 0) {
    if (bit) {
      return;  // no start bit: wait for one
    }
    frameByte = 0;
    frameOnes = 0;
  } else if (frameBit <= 8) {
    frameByte >>= 1;
    if (bit) {
      frameByte |= 0x80;
      frameOnes++;
    }
  } else if (frameBit == 9) {
    if (bit) {
      frameOnes++;
    }
  } else {
    if (bit && (frameOnes & 1)) {  // stop bit, and parity is odd
      ring[head] = frameByte;
      head = (head + 1) % RING_SIZE;
    }
    frameBit = 0;
    return;
  }
  frameBit++;
}

bool Ps2Port::waitForClock(uint8_t level) {
  for (unsigned int i = 0; i < CLOCK_LOOKS; i++) {
    if (digitalRead(clockPin) == level) {
      return true;
    }
  }
  return false;
}

// The mouse takes the bit while the clock is high, so it is put on the line while the clock is low.
bool Ps2Port::sendBit(bool bit) {
  if (!waitForClock(LOW)) {
    return false;
  }
  if (bit) {
    release(dataPin);
  } else {
    pullLow(dataPin);
  }
  return waitForClock(HIGH);
}

bool Ps2Port::sendFrame(uint8_t value) {
  bool parity = true;
  for (uint8_t i = 0; i < 8; i++) {
    bool bit = value & 1;
    if (bit) {
      parity = !parity;
    }
    value >>= 1;
    if (!sendBit(bit)) {
      return false;
    }
  }
  if (!sendBit(parity) || !sendBit(true) || !waitForClock(LOW)) {
    return false;
  }
  bool acknowledged = digitalRead(dataPin) == LOW;
  return waitForClock(HIGH) && acknowledged;
}

bool Ps2Port::send(uint8_t value) {
  sending = true;
  pullLow(clockPin);
  delayMicroseconds(120);  // request to send
  pullLow(dataPin);
  // A handler between a fall of the clock and the change of data would make that too late.
  noInterrupts();
  release(clockPin);
  bool sent = sendFrame(value);
  release(dataPin);
  interrupts();
  frameBit = 0;
  sending = false;
  return sent;
}

uint8_t Ps2Port::read() {
  uint8_t value = ring[tail];
  tail = (tail + 1) % RING_SIZE;
  return value;
}

// @wire decodes ps2-wheel from bytes into x=out.dx y=out.dy wheel=out.wheel left=out.left right=out.right middle=out.middle
static void takeApart(const uint8_t bytes[4], Movement &out) {
  out.dx = bytes[1] - (bytes[0] & 0x10 ? 256 : 0);
  out.dy = bytes[2] - (bytes[0] & 0x20 ? 256 : 0);
  out.wheel = (int8_t)bytes[3];
  out.left = bytes[0] & 0x01;
  out.right = bytes[0] & 0x02;
  out.middle = bytes[0] & 0x04;
}

bool Ps2Port::readMovement(Movement &out) {
  if (packetLength > 0 && millis() - packetTime > REPORT_GAP_MS) {
    if (packetLength == 2 && packet[0] == 0xAA && packet[1] == 0x00) {
      restartSeen = true;
    }
    packetLength = 0;
  }
  while (available()) {
    uint8_t value = read();
    if (packetLength == 0 && !(value & 0x08)) {
      continue;  // not a first byte: find the start of a report again
    }
    packetTime = millis();
    packet[packetLength++] = value;
    if (packetLength == (hasWheel ? 4 : 3)) {
      if (packetLength == 3) {
        packet[3] = 0;
      }
      packetLength = 0;
      takeApart(packet, out);
      return true;
    }
  }
  return false;
}

bool Ps2Port::restarted() {
  bool was = restartSeen;
  restartSeen = false;
  return was;
}

void Ps2Port::forget() {
  tail = head;
  packetLength = 0;
  restartSeen = false;
}
