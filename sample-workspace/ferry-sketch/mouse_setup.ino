// Resets the mouse, unlocks its wheel and starts its reports.

const uint8_t CMD_RESET = 0xFF;
const uint8_t CMD_ENABLE_REPORTING = 0xF4;
const uint8_t CMD_SET_SAMPLE_RATE = 0xF3;
const uint8_t CMD_GET_ID = 0xF2;
const uint8_t REPLY_ACKNOWLEDGE = 0xFA;
const uint8_t REPLY_SEND_AGAIN = 0xFE;
const uint8_t REPLY_SELF_TEST_PASSED = 0xAA;
const uint8_t ID_WHEEL = 0x03;

// How often a byte is sent that the mouse asks for once more.
const uint8_t TRIES = 3;

const unsigned int REPLY_TIMEOUT_MS = 30;
const unsigned int SELF_TEST_TIMEOUT_MS = 1200;

bool receive(uint8_t &value, unsigned int timeoutMs) {
  unsigned long since = millis();
  while (!mouse.available()) {
    if (millis() - since > timeoutMs) {
      return false;
    }
    sendWhatIsDue();
  }
  value = mouse.read();
  return true;
}

bool expect(uint8_t wanted, unsigned int timeoutMs) {
  uint8_t reply;
  return receive(reply, timeoutMs) && reply == wanted;
}

bool command(uint8_t value) {
  for (uint8_t i = 0; i < TRIES; i++) {
    uint8_t reply;
    if (!mouse.send(value) || !receive(reply, REPLY_TIMEOUT_MS)) {
      return false;
    }
    if (reply != REPLY_SEND_AGAIN) {
      return reply == REPLY_ACKNOWLEDGE;
    }
  }
  return false;
}

bool sampleRate(uint8_t perSecond) { return command(CMD_SET_SAMPLE_RATE) && command(perSecond); }

bool setUpMouse() {
  mouse.forget();
  if (!command(CMD_RESET) || !expect(REPLY_SELF_TEST_PASSED, SELF_TEST_TIMEOUT_MS) || !expect(0, REPLY_TIMEOUT_MS)) {
    return false;
  }
  // Three sample rates in this order unlock the wheel; the identity then says whether there is one.
  uint8_t identity = 0;
  if (!sampleRate(200) || !sampleRate(100) || !sampleRate(80) || !command(CMD_GET_ID) ||
      !receive(identity, REPLY_TIMEOUT_MS)) {
    return false;
  }
  mouse.hasWheel = identity == ID_WHEEL;
  return sampleRate(40) && command(CMD_ENABLE_REPORTING);
}
