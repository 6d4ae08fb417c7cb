import { parquetMetadata } from 'hyparquet';
import { MADE_FROM } from './page-frame.ts';

/** What the metadata of a Parquet file and the run of an event log call what they were made from, as JSON. */
export const MADE_FROM_KEY = 'mendline made from';
/** The object of an event log that stands for the run. */
export const RUN = 'run/1';

/** Each Parquet file begins and ends with it. */
const PARQUET = 'PAR1';

const parsed = (text: string | undefined): unknown => {
  if (text === undefined) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

function inParquet(bytes: Uint8Array): unknown {
  try {
    const { key_value_metadata: pairs = [] } = parquetMetadata(new Uint8Array(bytes).buffer);
    return parsed(pairs.find(({ key }) => key === MADE_FROM_KEY)?.value);
  } catch {
    // Cut off, or no Parquet after all.
    return undefined;
  }
}

/** In a page no text of the user's can begin an element, so that the first of this kind is ours. */
const inPage = (text: string): unknown =>
  parsed(new RegExp(`<script type="application/json" id="${MADE_FROM}">([^<]*)</script>`).exec(text)?.[1]);

interface EventLog {
  readonly objects?: readonly {
    readonly id?: unknown;
    readonly attributes?: readonly { readonly name?: unknown; readonly value?: unknown }[];
  }[];
}

function inDocument(document: unknown): unknown {
  const { objects } = (document ?? {}) as EventLog;
  if (!Array.isArray(objects)) return document;
  const run = (objects as NonNullable<EventLog['objects']>).find((object) => object?.id === RUN);
  const value = run?.attributes?.find(({ name }) => name === MADE_FROM_KEY)?.value;
  return typeof value === 'string' ? parsed(value) : undefined;
}

/** What a file says as data of how it was made: a document is that itself. Undefined where it says nothing. */
export function recordIn(bytes: Uint8Array): unknown {
  const text = (from: number, to?: number) => new TextDecoder().decode(bytes.subarray(from, to));
  if (text(0, PARQUET.length) === PARQUET) return inParquet(bytes);
  const whole = text(0);
  return /^\s*<!doctype html/i.test(whole) ? inPage(whole) : inDocument(parsed(whole));
}
