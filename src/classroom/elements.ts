/** An element of the page, which the maker of the page has put there. */
export function byId<Kind extends HTMLElement = HTMLElement>(id: string): Kind {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no "${id}"`);
  return found as Kind;
}

const written = new WeakMap<Element, string>();

/** Writes into an element where that differs: what is in focus, open or being read out in it stays otherwise. */
export function write(element: Element, html: string): void {
  if (written.get(element) === html) return;
  written.set(element, html);
  element.innerHTML = html;
}

/** Lets a reader save a text as a file. */
export function offer(name: string, text: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
