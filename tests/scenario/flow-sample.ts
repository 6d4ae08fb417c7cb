/** A scenario without problems that uses every way of arriving, routing, breaking down, handling and working by shift. */
export const FLOW = `mendline: 1
title: A sound flow
about: Every kind of entry of the flow once. All figures are invented.
run: { warm-up: 1 h, length: 40 h, seeds: 2 }
stations:
  incoming:
    does: arrive
    every: { distribution: exponential, mean: 40 s }
    when-full: lost
    calendar: two shifts
    to: milling
  milling:
    does: work
    buffer: 12
    cycle: { distribution: uniform, low: 18 s, high: 36 s }
    machines: 3
    speed: 90 %
    handling: { by: robot, load: 3 s, unload: 2 s }
    set-ups:
      tool change: { cycles: 500, takes: 5 min, crew: fitter, priority: 2 }
      clean: { every: 4 h, counted: working, takes: 3 min }
    maintenance:
      weekly: { every: 40 h, counted: clock, takes: 1 h, crew: fitter }
    breakdowns:
      jam: { every: { distribution: exponential, mean: 1 h }, counted: working, repair: 4 min, cycle: scraps, crew: fitter, priority: 3 }
      trip: { every: 2 h, counted: clock, repair: 10 s, cycle: restarts }
    while-down: nothing
    calendar: two shifts
    shift-end: resumes
    to: { by: share, routes: { left oven: 60 %, right oven: 40 % } }
  left oven:
    does: work
    buffer: { places: 16, transit: 30 s, spacing: 2 s }
    batch: 4
    cycle: 90 s
    warm-up: { after: 30 min, takes: 8 min }
    to: { by: priority, routes: [cooling, packing] }
  right oven:
    does: work
    buffer: { places: 8, transit: 40 s }
    batch: 6
    cycle: 130 s
    to: { by: state, routes: [packing, cooling] }
  cooling: { does: work, buffer: 0, cycle: 7 s, to: packing }
  packing:
    does: work
    buffer: unlimited
    cycle: 6 s
    handling: { by: robot, unload: 4 s }
    to: good
crew:
  fitter: { number: 2, serves: priority, calendar: two shifts }
  robot: { number: 1, serves: nearest, move: 4 s, moves: [{ between: [milling, packing], takes: 9 s }] }
carriers:
  tray: { number: 20, from: milling, to: packing, return: 25 s }
  tag: { number: 60, from: milling }
calendars:
  two shifts:
    shifts:
      - days: [mon, tue, wed, thu, fri]
        begins: 6 h
        lasts: 8 h
        breaks: [{ after: 3 h, lasts: 15 min }, { after: 6 h, lasts: 10 min }]
      - { days: [mon, tue, wed, thu, fri], begins: 14 h, lasts: 8 h }
      - { days: [sat], begins: 22 h, lasts: 6 h }
demand:
  every: { distribution: exponential, mean: 20 min }
  pieces: 5
  due-after: 2 h
  finished-goods: { at-start: 10, most: 200 }
policies:
  carry on: []
`;
