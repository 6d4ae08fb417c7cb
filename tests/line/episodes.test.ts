import { expect, it } from 'vitest';
import { Episodes } from '../../src/line/episodes.ts';

it('notes when each disturbance came and went, and what first answered it while it lasted', () => {
  const episodes = new Episodes();
  episodes.act(5);
  episodes.begin('a', 10);
  episodes.begin('b', 20);
  episodes.act(25);
  episodes.begin('a', 30);
  episodes.end('a', 40);
  episodes.act(50);
  episodes.end('b', 60);
  episodes.end('nothing under way', 70);
  episodes.act(80);
  expect(episodes.all).toEqual([
    { name: 'a', begin: 10, end: 40, answered: 25 },
    { name: 'b', begin: 20, end: 60, answered: 25 },
    { name: 'a', begin: 30, end: null, answered: 50 },
  ]);
});
