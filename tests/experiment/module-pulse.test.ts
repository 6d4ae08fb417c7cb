import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ModulePulses, watchPulses } from '../../src/experiment/module-pulse.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the pulses of policy modules', () => {
  const watched = (most: number) => {
    const pulses = new ModulePulses(3);
    const stuck = vi.fn();
    const end = watchPulses(pulses, 3, most, stuck);
    return { pulses, stuck, end };
  };

  it('are seen from another thread by the memory alone', () => {
    const pulses = new ModulePulses(3);
    new ModulePulses(3, pulses.memory).of(1).begin(42.5);
    expect([0, 1, 2].map((run) => pulses.callOf(run))).toEqual([null, 1, null]);
    expect(pulses.timeOf(1)).toBe(42.5);
  });

  it('tell of a call that does not come back, once, with the simulated time', () => {
    const { pulses, stuck } = watched(10);
    pulses.of(2).begin(7);
    vi.advanceTimersByTime(10_000);
    expect(stuck).not.toHaveBeenCalled();
    vi.advanceTimersByTime(20_000);
    expect(stuck.mock.calls).toEqual([[2, 7]]);
  });

  it('let calls pass that come back, however many there are', () => {
    const { pulses, stuck, end } = watched(10);
    const heart = pulses.of(0);
    heart.begin(0);
    for (let i = 0; i < 50; i++) {
      vi.advanceTimersByTime(3000);
      heart.end();
      heart.begin(i);
    }
    heart.end();
    vi.advanceTimersByTime(60_000);
    expect(stuck).not.toHaveBeenCalled();
    end();
    heart.begin(1);
    vi.advanceTimersByTime(60_000);
    expect(stuck).not.toHaveBeenCalled();
  });
});
