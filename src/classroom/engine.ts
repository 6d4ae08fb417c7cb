import type { Reply, Request } from './worker.ts';

/** What is done as runs go on. */
interface Listener {
  readonly onRun: (values: Extract<Reply, { values: unknown }>['values']) => void;
  readonly onDone: () => void;
  /** With the reason in words. */
  readonly onFailure: (why: string) => void;
}

/** Runs beside the page, so that it can be read and the runs be stopped meanwhile. */
export class Engine {
  private readonly program: string;
  private worker: Worker | null = null;

  /** @param program the text of this very program */
  constructor(program: string) {
    this.program = program;
  }

  run(request: Request, { onRun, onDone, onFailure }: Listener): void {
    let worker: Worker;
    try {
      worker = this.worker ??= this.made();
    } catch (error) {
      onFailure(`this browser cannot run the engine beside the page: ${(error as Error).message}`);
      return;
    }
    worker.onerror = ({ message }) => {
      this.stop();
      onFailure(message);
    };
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      if ('values' in data) onRun(data.values);
      else if ('failure' in data) onFailure(data.failure);
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
