// The five-station line of ../reference-line.yaml, written by hand: what an engineer who needs this one line and
// no other would write for speed. The benchmark compiles it at -O3 and compares speed and results with mendline.
//
//   reference-line SECONDS SEED
//
// It runs the line for SECONDS from empty and prints one line of JSON. Blocking after service. A station fails only
// while it works, so it is never down with a finished part, and what it might still pass on does not arise.
#include <array>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <queue>
#include <vector>

namespace {

constexpr int STATIONS = 5;
constexpr int PLACES = 5;
constexpr int LAST = STATIONS - 1;
constexpr double MEAN_CYCLE = 1;
constexpr double MEAN_LIFE = 100;
constexpr double MEAN_REPAIR = 10;

enum State { WORKING, STARVED, BLOCKED, DOWN, STATES };
enum Kind : int { FINISHED, FAILED, REPAIRED };

/** xoshiro256+ seeded by splitmix64: D. Blackman and S. Vigna, ACM Trans. Math. Softw. 47 (2021) 36. */
class Random {
 public:
  explicit Random(std::uint64_t seed) {
    for (std::uint64_t& word : state_) {
      std::uint64_t z = seed += 0x9e3779b97f4a7c15u;
      z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
      z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
      word = z ^ (z >> 31);
    }
  }

  double exponential(double mean) {
    // The upper 53 bits make a number in [0, 1); one minus it is never 0.
    return -mean * std::log(1 - static_cast<double>(next() >> 11) * 0x1p-53);
  }

 private:
  std::uint64_t next() {
    const std::uint64_t result = state_[0] + state_[3];
    const std::uint64_t shifted = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= shifted;
    state_[3] = (state_[3] << 45) | (state_[3] >> 19);
    return result;
  }

  std::array<std::uint64_t, 4> state_;
};

struct Event {
  double time;
  int station;
  Kind kind;
  bool operator>(const Event& other) const { return time > other.time; }
};

/** A part is the time it was started. */
using Part = double;

struct Station {
  // The buffer in front of it, first in first out.
  std::array<Part, PLACES> buffer{};
  int first = 0;
  int count = 0;
  Part part = 0;
  State state = STARVED;
  double since = 0;
  std::array<double, STATES> seconds{};
  /** Working time left until it fails. */
  double life = 0;
  /** Working time left of the cycle. */
  double remaining = 0;
  std::int64_t cycles = 0;
};

class Line {
 public:
  explicit Line(std::uint64_t seed) : random_(seed) {
    for (Station& station : stations) station.life = random_.exponential(MEAN_LIFE);
    begin(0);
  }

  void run(double end) {
    while (calendar_.top().time <= end) {
      const Event event = calendar_.top();
      calendar_.pop();
      now_ = event.time;
      Station& station = stations[event.station];
      switch (event.kind) {
        case FINISHED:
          station.life -= station.remaining;
          station.cycles++;
          unload(event.station);
          break;
        case FAILED:
          station.remaining -= station.life;
          enter(station, DOWN);
          calendar_.push({now_ + random_.exponential(MEAN_REPAIR), event.station, REPAIRED});
          break;
        case REPAIRED:
          station.life = random_.exponential(MEAN_LIFE);
          work(event.station);
          break;
      }
    }
    now_ = end;
    for (Station& station : stations) enter(station, station.state);
    count(0);
  }

  std::array<Station, STATIONS> stations;
  std::int64_t good = 0;
  double part_seconds = 0;
  double lead_seconds = 0;

 private:
  void enter(Station& station, State state) {
    station.seconds[station.state] += now_ - station.since;
    station.since = now_;
    station.state = state;
  }

  /** Brings the integral of the parts in the line up to now and changes their number. */
  void count(int change) {
    part_seconds += in_line_ * (now_ - counted_);
    counted_ = now_;
    in_line_ += change;
  }

  /** Works on what is left of the cycle, until it is done or the station fails. */
  void work(int i) {
    Station& station = stations[i];
    enter(station, WORKING);
    if (station.life < station.remaining) calendar_.push({now_ + station.life, i, FAILED});
    else calendar_.push({now_ + station.remaining, i, FINISHED});
  }

  /** Loads the next part, if there is one. */
  void begin(int i) {
    Station& station = stations[i];
    if (i == 0) {
      count(1);
      station.part = now_;
    } else {
      if (station.count == 0) return enter(station, STARVED);
      station.part = station.buffer[station.first];
      station.first = station.first + 1 == PLACES ? 0 : station.first + 1;
      station.count--;
    }
    station.remaining = random_.exponential(MEAN_CYCLE);
    work(i);
    if (i > 0 && stations[i - 1].state == BLOCKED) unload(i - 1);
  }

  /** Passes the finished part on, if there is room, and goes on with the next. */
  void unload(int i) {
    Station& station = stations[i];
    if (i == LAST) {
      count(-1);
      good++;
      lead_seconds += now_ - station.part;
    } else {
      Station& next = stations[i + 1];
      if (next.count == PLACES) return enter(station, BLOCKED);
      int place = next.first + next.count++;
      if (place >= PLACES) place -= PLACES;
      next.buffer[place] = station.part;
      if (next.state == STARVED) begin(i + 1);
    }
    begin(i);
  }

  Random random_;
  std::priority_queue<Event, std::vector<Event>, std::greater<>> calendar_;
  double now_ = 0;
  double counted_ = 0;
  int in_line_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
  const double length = argc == 3 ? std::atof(argv[1]) : 0;
  if (!(length > 0)) {
    std::fprintf(stderr, "usage: reference-line SECONDS SEED\n");
    return 2;
  }
  Line line(std::strtoull(argv[2], nullptr, 10));
  const auto begun = std::chrono::steady_clock::now();
  line.run(length);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;

  std::int64_t visits = 0;
  for (const Station& station : line.stations) visits += station.cycles;
  std::printf("{\"visits\": %lld, \"seconds\": %.6f, \"throughput\": %.9g, \"workInProgress\": %.9g, \"leadTime\": %.9g",
              static_cast<long long>(visits), took.count(), line.good / length, line.part_seconds / length,
              line.lead_seconds / line.good);
  std::printf(", \"shares\": [");
  for (int i = 0; i < STATIONS; i++) {
    const auto& seconds = line.stations[i].seconds;
    std::printf("%s{\"working\": %.6f, \"starved\": %.6f, \"blocked\": %.6f, \"down\": %.6f}", i ? ", " : "",
                seconds[WORKING] / length, seconds[STARVED] / length, seconds[BLOCKED] / length,
                seconds[DOWN] / length);
  }
  std::printf("]}\n");
}
