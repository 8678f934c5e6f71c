// Strings made on the way: in sums, on the heap, moved, and taken from program memory.
void setup()
{
  Serial.begin(1000000);
  int x = -5, n = 3;
  String b = "cm";
  String copy = "2 c200 3", s = "a" + String(x) + b;
  String *heap = new String(s + "!");
  Serial.println(*heap + heap->length());
  delete heap;
  String moved = static_cast<String &&>(copy);
  Serial.println(moved);
  Serial.println(copy.length());
  s = s + s;
  s = s.substring(2) + s[0];
  Serial.println(s);
  Serial.println(s.length());
  String list[3];
  for (int i = 0; i < 3; i++)
    list[i] = String("#") + i;
  Serial.println(list[2] + list[1] + list[0]);
  Serial.print(String("no") + F(" flash"));
  Serial.println(String(F("flash")) + 1);
  char text[12];
  (String("buffer ") + n).toCharArray(text, sizeof text);
  Serial.println(text);
  Serial.println((String("c_str ") + n).c_str());
  Serial.println(n > 2 ? "big" : String(n));
  Serial.println(n > 5 ? "big" : String(n));
  switch (String("abc").indexOf('c')) {
    case 2:
      Serial.println("two");
  }
  Serial.println('<' + String(n) + '>');
  Serial.println(5 + String("th"));
  auto sum = s + "?";
  Serial.println(sum + "!");
  Serial.println(sum);
  const String &view = b;
  s = b;
  s[0] = 'C';
  Serial.print(view[0]);
  Serial.println(s[0]);
  s = String("a longer text than before");
  s = String("short");
  Serial.println(s);
  Serial.write(4);
}

void loop()
{
}
