/** Keeps text in the browser from one visit to the next, where it lets us; a page opened from a file may be refused. */
export class Kept {
  private readonly key: string;

  constructor(key: string) {
    this.key = key;
  }

  read(): string | null {
    try {
      return localStorage.getItem(this.key);
    } catch {
      return null;
    }
  }

  /** Calls when another page has kept something else meanwhile. */
  onChange(act: () => void): void {
    addEventListener('storage', ({ key }) => {
      if (key === this.key || key === null) act();
    });
    // A page that one goes back to was told nothing while it was away.
    addEventListener('pageshow', ({ persisted }) => {
      if (persisted) act();
    });
  }

  /** Whether it was kept. */
  write(text: string): boolean {
    try {
      localStorage.setItem(this.key, text);
      return true;
    } catch {
      return false;
    }
  }
}
