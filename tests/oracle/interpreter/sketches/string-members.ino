// Strings as members, at file level, in conditions, and ended with every turn of a loop.
struct Reading {
  String name;
  int value;
  String text() const { return name + "=" + value; }
};

String label("ps2");
String lines[2] = { "clock", String("data") };
const String fixed = String(12) + "/" + String(34);

void setup()
{
  Serial.begin(1000000);
  int x = -5, n = 3;
  String b = "cm";
  String s = "a" + String(x) + b;
  Reading reading = { "speed", 12 }, other = reading;
  other.name += "2";
  other.value = 99;
  Serial.println(reading.text() + " " + other.text());
  reading = other;
  Serial.println(reading.text());
  Serial.println(label + ":" + lines[0] + "," + lines[1] + " " + fixed);
  for (int i = 0; i < 3; i++) {
    String line = "line " + String(i);
    if (i == 1)
      continue;
    Serial.println(line);
  }
  if (String(n) + "0" == "30")
    Serial.println("equal");
  if (s.substring(1, 3) == "-5" && s.startsWith("a" + String(x)))
    Serial.println("starts");
  String empty;
  Serial.println(empty.length() + String("abc").length());
  empty += String(1.5, 1) + " " + 'c' + 200L + " " + 3u;
  Serial.println(empty);
  String copy = empty;
  copy.replace("1.5", "2");
  Serial.println(empty + "/" + copy);
  const String &kept = String(s + "kept");
  Serial.println(kept);
  Serial.write(4);
}

void loop()
{
}
