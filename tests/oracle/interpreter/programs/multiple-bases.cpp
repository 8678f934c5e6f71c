#include "port.h"

struct Sensor { int raw; Sensor(int r) : raw(r) {} virtual int read() { return raw; } };
struct Logger { int lines; Logger() : lines(0) {} virtual void log(int v) { lines++; show("log", v); } };
struct Probe : Sensor, Logger {
    int scale;
    Probe(int r, int s) : Sensor(r), scale(s) {}
    int read() override { int v = raw * scale; log(v); return v; }
    void log(int v) override { Logger::log(v + 1); }
};

int main()
{
    Probe probe(7, 6);
    Sensor *sensor = &probe;
    Logger *logger = &probe;
    SHOW(sensor->read());
    logger->log(5);
    SHOW(logger->lines);
    SHOW(static_cast<Probe *>(logger)->scale);
    SHOW((char *)logger - (char *)sensor == sizeof(Sensor));
    finish();
}
