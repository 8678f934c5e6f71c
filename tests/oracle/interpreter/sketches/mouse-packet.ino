struct Packet {
  byte head, x, y;
};

class Encoder {
  Stream &port;
public:
  explicit Encoder(Stream &p) : port(p) {}
  void send(int x, int y, byte buttons)
  {
    x = constrain(x, -128, 127);
    y = constrain(-y, -128, 127);
    Packet packet = { byte(0x40 | (buttons & 1) << 5 | (buttons & 2) << 3), byte(x & 0x3F), byte(y & 0x3F) };
    packet.head |= (x & 0xC0) >> 6 | (y & 0xC0) >> 4;
    const uint8_t *bytes = (const uint8_t *)&packet;
    for (byte i = 0; i < sizeof packet; i++)
      port.println(bytes[i], HEX);
  }
};

Encoder encoder(Serial);

void setup()
{
  Serial.begin(1200, SERIAL_7N1);
  for (int x = -150; x <= 150; x += 50)
    encoder.send(x, x / 2 + 7, x & 3);
  Serial.print('.');
  Serial.write(4);
}

void loop()
{
}
