import { describe, expect, it } from 'vitest';
import { Calendar } from '../../src/kernel/calendar.ts';
import { Course, Upset, Upsets } from '../../src/line/upset.ts';

describe('a course', () => {
  it('is a step without a ramp', () => {
    const course = new Course();
    course.begin(7);
    expect([7, 8, 1e9].map((now) => course.level(now))).toEqual([1, 1, 1]);
  });

  it('builds up evenly, stays, and fades evenly', () => {
    const course = new Course(20, 40);
    course.begin(10);
    expect([10, 15, 30, 50].map((now) => course.level(now))).toEqual([0, 0.25, 1, 1]);
    course.fade(60);
    expect([60, 70, 100, 120].map((now) => course.level(now))).toEqual([1, 0.75, 0, 0]);
    course.begin(200);
    expect(course.level(205)).toBe(0.25);
  });

  it('fades from where it has come to', () => {
    const course = new Course(20, 40);
    course.begin(0);
    course.fade(10);
    expect([10, 30, 50].map((now) => course.level(now))).toEqual([0.5, 0.25, 0]);
  });
});

describe('upsets of one thing', () => {
  const upset = (size: number, ramp = 0) => {
    const course = new Course(ramp);
    course.begin(0);
    return Object.assign(new Upset(course), { size });
  };

  it('add up, or each take their share of what the others left', () => {
    const upsets = new Upsets(new Calendar());
    const half = upset(-0.5);
    for (const one of [half, upset(-0.2), upset(0.4, 10)]) upsets.add(one);
    expect(upsets.sum(5)).toBeCloseTo(-0.5, 12);
    expect(upsets.factor(5)).toBeCloseTo(0.5 * 0.8 * 1.2, 12);
    upsets.delete(half);
    expect(upsets.factor(10)).toBeCloseTo(0.8 * 1.4, 12);
  });

  it('are nothing where there are none, and leave no less than nothing', () => {
    const upsets = new Upsets(new Calendar());
    expect([upsets.sum(), upsets.factor()]).toEqual([0, 1]);
    upsets.add(upset(-3));
    expect(upsets.factor()).toBe(0);
  });
});
