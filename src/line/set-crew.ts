import type { Line } from './line.ts';

/** What lets so many more of a crew be there from then on. */
export function setReinforcement({ crews, done }: Line, name: string): (by: number) => void {
  const crew = crews.get(name)!;
  done.set(`called_${name}_h`, () => crew.calledSeconds() / 3600);
  return (by) => crew.reinforce(by);
}

/** What lets a crew serve the calls of these stations first from then on; null as ever. */
export function setPriorities(
  { crews, stations }: Line,
  name: string,
): (first: readonly string[] | null) => void {
  const crew = crews.get(name)!;
  const places = [...stations.keys()];
  return (first) => crew.serveFirst(first === null ? null : first.map((station) => places.indexOf(station)));
}
