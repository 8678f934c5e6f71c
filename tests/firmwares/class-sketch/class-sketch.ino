// The Ferry as it stands in the newspaper room of Lantern Street: a board with an ATmega2560, a class for each thing.
//
// @wire board atmega2560 clock=16MHz
// @wire ps2 clock=20 data=22 pullups=internal
// @wire serial uart=2 rts=24 report=two-button shifter=inverting baud=1200 line=7N2

#include "Ps2Wires.h"
#include "Ps2Mouse.h"
#include "SerialMouse.h"

Ps2Wires wires(20, 22);
Ps2Mouse mouse(wires);
TwoButtonMouse pcSide(Serial2, 24);

void onClock() { wires.clockFell(); }

void whileWaiting() { pcSide.update(); }

void setup() {
  pcSide.begin();
  wires.begin();
  attachInterrupt(digitalPinToInterrupt(20), onClock, FALLING);
  mouse.onWaiting(whileWaiting);
}

void loop() {
  Steps steps;
  if (mouse.update(steps)) {
    pcSide.add(steps);
  }
  pcSide.update();
}
