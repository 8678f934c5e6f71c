class Port : public Print {
  byte sum = 0;
public:
  size_t write(uint8_t b) override
  {
    sum += b;
    return Serial.write(b ^ 0x20);
  }
  byte checksum() const { return sum; }
};

Port port;

void report(Print &to, int v)
{
  to.print("v=");
  to.print(v);
  to.println(v, HEX);
}

void setup()
{
  Serial.begin(9600);
  report(port, 4660);
  report(Serial, -5);
  Serial.println(port.checksum());
  Serial.write(4);
}

void loop()
{
}
