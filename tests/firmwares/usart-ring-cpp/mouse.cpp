#include "mouse.h"
#include "port.h"
#include "ticks.h"

namespace {

enum Command : uint8_t {
  reset = 0xFF,
  resend = 0xFE,
  enableReporting = 0xF4,
  setSampleRate = 0xF3,
  getId = 0xF2,
};

enum Reply : uint8_t {
  acknowledge = 0xFA,
  sendAgain = 0xFE,
  selfTestPassed = 0xAA,
};

constexpr uint8_t plainId = 0;
constexpr uint8_t wheelId = 3;

// @wire decodes ps2-wheel from bytes into x=out.x y=out.y wheel=out.wheel left=out.buttons.0 right=out.buttons.1 middle=out.buttons.2
void takeApart(const uint8_t *bytes, Movement &out) {
  out.x = bytes[1] - (bytes[0] & 0x10 ? 0x100 : 0);
  out.y = bytes[2] - (bytes[0] & 0x20 ? 0x100 : 0);
  out.wheel = static_cast<int8_t>(bytes[3]);
  out.buttons = bytes[0] & 0x07;
}

}  // namespace

bool Mouse::reply(uint8_t &value, uint16_t ms) {
  const Deadline deadline(ms);
  while (!port::hasByte()) {
    if (deadline.isOver()) {
      return false;
    }
    meanwhile();
  }
  value = port::read();
  return true;
}

bool Mouse::expect(uint8_t value, uint16_t ms) {
  uint8_t came = 0;
  return reply(came, ms) && came == value;
}

bool Mouse::command(uint8_t value) {
  for (uint8_t i = 0; i < tries; i++) {
    uint8_t came = 0;
    if (!port::send(value) || !reply(came, replyTimeout)) {
      return false;
    }
    if (came != sendAgain) {
      return came == acknowledge;
    }
  }
  return false;
}

bool Mouse::sampleRate(uint8_t perSecond) {
  return command(setSampleRate) && command(perSecond);
}

bool Mouse::setUp() {
  port::forget();
  length = 0;
  if (!command(reset) || !expect(selfTestPassed, selfTestTimeout) || !expect(plainId, idTimeout)) {
    return false;
  }
  uint8_t id = 0;
  // The wheel opens to three rates in this order.
  if (!sampleRate(200) || !sampleRate(100) || !sampleRate(80) || !command(getId) || !reply(id, replyTimeout)) {
    return false;
  }
  hasWheel = id == wheelId;
  return sampleRate(40) && command(enableReporting);
}

bool Mouse::gather(Movement &movement) {
  if (length > 0 && static_cast<uint16_t>(ticks::now() - last) > gap) {
    if (length == 2 && packet[0] == selfTestPassed && packet[1] == plainId) {
      isReady = false;
    }
    length = 0;
  }
  if (port::wasDisturbed()) {
    port::forget();
    length = 0;
    port::send(resend);
    return false;
  }
  while (port::hasByte()) {
    const uint8_t byte = port::read();
    if (length == 0 && !(byte & 0x08)) {
      continue;
    }
    last = ticks::now();
    packet[length++] = byte;
    if (length == (hasWheel ? 4 : 3)) {
      if (!hasWheel) {
        packet[3] = 0;
      }
      length = 0;
      takeApart(packet, movement);
      return true;
    }
  }
  return false;
}

bool Mouse::poll(Movement &movement) {
  if (isReady) {
    return gather(movement);
  }
  if (!hasTried || static_cast<uint16_t>(ticks::now() - tried) > retryTime) {
    isReady = setUp();
    hasTried = true;
    tried = ticks::now();
  }
  return false;
}
