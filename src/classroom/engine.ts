import type { Reply, Request } from './worker.ts';

/** What is done as runs go on. */
interface Listener {
  readonly onRun: (values: Extract<Reply, { values: unknown }>['values']) => void;
  readonly onDone: () => void;
  /** The line cannot run at this setting; with the reason in words. */
  readonly onFailure: (why: string) => void;
  /** Nothing can be said of this setting; with the reason in words. */
  readonly onFault: (why: string) => void;
}

/** A browser that refuses a worker tells the page no reason. */
const REFUSED =
  'this browser does not let the page run the engine beside it; open the page from a file on this computer, ' +
  'or ask whoever serves it to allow it workers (worker-src blob:)';

/** Runs beside the page, so that it can be read and the runs be stopped meanwhile. */
export class Engine {
  private readonly program: string;
  private worker: Worker | null = null;

  /** @param program the text of this very program */
  constructor(program: string) {
    this.program = program;
  }

  run(request: Request, { onRun, onDone, onFailure, onFault }: Listener): void {
    let worker: Worker;
    try {
      worker = this.worker ??= this.made();
    } catch {
      onFault(REFUSED);
      return;
    }
    worker.onerror = ({ message }) => {
      this.stop();
      onFault(message || REFUSED);
    };
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      if ('values' in data) onRun(data.values);
      else if ('failure' in data) onFailure(data.failure);
      else if ('fault' in data) onFault(data.fault);
      else onDone();
    };
    worker.postMessage(request);
  }

  /** Ends what is under way; the next run makes a worker anew. */
  stop(): void {
    this.worker?.terminate();
    this.worker = null;
  }

  private made(): Worker {
    const address = URL.createObjectURL(new Blob([this.program], { type: 'text/javascript' }));
    const worker = new Worker(address);
    URL.revokeObjectURL(address);
    return worker;
  }
}
