/** The cutting tool of one machine. */
export class Tool {
  /** Parts it has cut since it was new. */
  cuts = 0;
  /** Whether the part on the machine is deburred after its cut. */
  deburrs = false;

  /** A new one is put in. */
  renew(): void {
    this.cuts = 0;
  }
}
