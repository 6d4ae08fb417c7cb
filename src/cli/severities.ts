import { UsageError } from './usage-error.ts';

/** Beyond this a disturbance is no longer the same only worse. */
const MOST = 1000;
const DEFAULT = '0,0.5,1,2';
const REMEDY = `it expects numbers from 0 to ${MOST} with commas between, such as ${DEFAULT}`;

/**
 * The severities that `--severity` names, in rising order.
 * @throws UsageError
 */
export function severitiesOf(text = DEFAULT): number[] {
  const words = text.split(',').map((word) => word.trim());
  const found = words.map((word) => {
    if (word === '') throw new UsageError(`--severity leaves a number out; ${REMEDY}`);
    if (!/^\d*\.?\d+$/.test(word) || Number(word) > MOST)
      throw new UsageError(`--severity "${word}" is no severity; ${REMEDY}`);
    return Number(word);
  });
  const twice = found.find((severity, i) => found.indexOf(severity) !== i);
  if (twice !== undefined) throw new UsageError(`--severity names ${twice} twice; once is enough`);
  return found.sort((a, b) => a - b);
}
