"""The five-station line of ../reference-line.yaml with SimPy, a general library for process-based simulation.

    reference_line.py SECONDS SEED

Runs the line for SECONDS from empty and prints one line of JSON, as its C++ neighbour does. A machine is a process
and a buffer a Store. A machine fails only while it works, so it watches its own life and needs no interrupt, which is
also the fastest way to say it.
"""

import json
import random
import sys
import time

import simpy

STATIONS = 5
PLACES = 5
MEAN_CYCLE = 1.0
MEAN_LIFE = 100.0
MEAN_REPAIR = 10.0


class Parts:
    """Counts the parts in the line. A part is the time it was started."""

    def __init__(self, env):
        self.env = env
        self.in_line = 0
        self.part_seconds = 0.0
        self.lead_seconds = 0.0
        self.good = 0
        self._since = 0.0

    def count(self, change):
        now = self.env.now
        self.part_seconds += self.in_line * (now - self._since)
        self._since = now
        self.in_line += change

    def start(self):
        self.count(1)
        return self.env.now

    def leave(self, part):
        self.count(-1)
        self.good += 1
        self.lead_seconds += self.env.now - part


class Machine:
    """Takes a part from the store in front of it, works on it, puts it into the next."""

    def __init__(self, env, rng, parts, inbox, outbox):
        self.env = env
        self.rng = rng
        self.parts = parts
        self.inbox = inbox
        self.outbox = outbox
        self.cycles = 0
        self.state = "starved"
        self.seconds = {"working": 0.0, "starved": 0.0, "blocked": 0.0, "down": 0.0}
        self._since = 0.0
        env.process(self.run())

    def enter(self, state):
        now = self.env.now
        self.seconds[self.state] += now - self._since
        self._since = now
        self.state = state

    def run(self):
        env = self.env
        draw = self.rng.expovariate
        life = draw(1 / MEAN_LIFE)
        while True:
            if self.inbox is None:
                part = self.parts.start()
            else:
                self.enter("starved")
                part = yield self.inbox.get()
            self.enter("working")
            remaining = draw(1 / MEAN_CYCLE)
            while life < remaining:
                yield env.timeout(life)
                remaining -= life
                self.enter("down")
                yield env.timeout(draw(1 / MEAN_REPAIR))
                life = draw(1 / MEAN_LIFE)
                self.enter("working")
            yield env.timeout(remaining)
            life -= remaining
            self.cycles += 1
            if self.outbox is None:
                self.parts.leave(part)
            else:
                self.enter("blocked")
                yield self.outbox.put(part)


def main(length, seed):
    env = simpy.Environment()
    rng = random.Random(seed)
    parts = Parts(env)
    buffers = [simpy.Store(env, capacity=PLACES) for _ in range(STATIONS - 1)]
    machines = [
        Machine(env, rng, parts, inbox, outbox) for inbox, outbox in zip([None, *buffers], [*buffers, None])
    ]
    begun = time.perf_counter()
    env.run(until=length)
    took = time.perf_counter() - begun
    parts.count(0)
    for machine in machines:
        machine.enter(machine.state)
    print(
        json.dumps(
            {
                "visits": sum(machine.cycles for machine in machines),
                "seconds": took,
                "throughput": parts.good / length,
                "workInProgress": parts.part_seconds / length,
                "leadTime": parts.lead_seconds / parts.good,
                "shares": [
                    {state: seconds / length for state, seconds in machine.seconds.items()} for machine in machines
                ],
            }
        )
    )


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit("usage: reference_line.py SECONDS SEED")
    main(float(sys.argv[1]), int(sys.argv[2]))
