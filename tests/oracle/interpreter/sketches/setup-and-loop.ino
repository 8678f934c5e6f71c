int rounds = 0;
const int limits[] = { 3, 5, 8 };

int next(int v);

void setup()
{
  Serial.begin(9600);
  Serial.println(next(1));
}

void loop()
{
  rounds = next(rounds);
  for (int limit : limits)
    if (rounds == limit)
      Serial.println(limit);
  if (rounds > 10) {
    Serial.println("done");
    Serial.write(4);
  }
}

int next(int v)
{
  return later(v);
}

int later(int v)
{
  static int calls;
  return v + (++calls > 1 ? 1 : 0);
}
