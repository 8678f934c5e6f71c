String joined(const String &a, int n)
{
  return a + "-" + n;
}

void setup()
{
  Serial.begin(9600);
  String a = "left", b(42), c = String(3.5), d;
  d = a + b;
  d += ',';
  d += 7;
  d += c;
  Serial.println(d);
  Serial.println(d.length());
  Serial.println(joined(a, 5));
  Serial.println(a == "left");
  Serial.println(a < b);
  Serial.println(d.indexOf(','));
  Serial.println(d.substring(2, 5));
  d.replace("left", "right");
  d.toUpperCase();
  Serial.println(d);
  Serial.println(String(255, HEX));
  Serial.println(String("  -17 ").toInt());
  Serial.println(a.charAt(1));
  a.setCharAt(0, 'L');
  a.remove(2);
  Serial.println(a + d[0]);
  Serial.println(a.startsWith("Le"));
  Serial.println(a.endsWith("f"));
  char buffer[5];
  d.toCharArray(buffer, sizeof buffer);
  Serial.println(buffer);
  Serial.println(a.c_str());
  Serial.write(4);
}

void loop()
{
}
