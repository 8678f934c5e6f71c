// Strings as parameters, results and sums.
String joined(const String &a, int n)
{
  return a + "-" + n;
}

String padded(String text, unsigned int width)
{
  while (text.length() < width)
    text = " " + text;
  return text;
}

String hex(byte value)
{
  String text = String(value, HEX);
  if (value < 16)
    text = "0" + text;
  text.toUpperCase();
  return text;
}

String choose(bool first, const String &a)
{
  return first ? a : String("other");
}

String parts(String line, char separator, int index)
{
  for (int i = 0; i < index; i++) {
    int at = line.indexOf(separator);
    if (at < 0)
      return "";
    line = line.substring(at + 1);
  }
  int end = line.indexOf(separator);
  return end < 0 ? line : line.substring(0, end);
}

int countOf(String text, char what)
{
  int count = 0;
  for (unsigned int i = 0; i < text.length(); i++)
    if (text[i] == what)
      count++;
  return count;
}

void setup()
{
  Serial.begin(1000000);
  int x = -5, n = 3;
  String b = "cm";
  String s = "a" + String(x) + b;
  Serial.println(s);
  Serial.println(String("n=") + n);
  Serial.println(String("n=") + n + ", x=" + x + ';');
  Serial.println("x is " + String(x) + "!");
  Serial.println(joined("left", 7));
  Serial.println(joined(joined("a", 1), 2));
  Serial.println(padded("42", 6) + "|" + padded(String(n), 2));
  Serial.println(hex(0x0a) + hex(0xf4));
  Serial.println(choose(true, s) + choose(false, s));
  Serial.println(parts("dx,dy,buttons", ',', 1));
  Serial.println(parts("dx,dy,buttons", ',', 5).length());
  Serial.println(countOf("a,b,c" + s, ','));
  Serial.write(4);
}

void loop()
{
}
