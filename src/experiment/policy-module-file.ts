import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { extname } from 'node:path';
import { transform } from 'sucrase';
import { thrownInWords } from '../policy/module/thrown.ts';
import { failedForeignPromise, heedForeignPromises } from './foreign-promises.ts';
import { PolicyModuleError, type PolicyModuleFile, PolicyModuleLoader } from './policy-module.ts';

const KINDS = ['.ts', '.mts', '.js', '.mjs'];
const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; name a policy module, such as scenarios/policies/retune-in-code.ts',
  EISDIR: 'this is a folder; name a policy module in it',
  EACCES: 'reading it is not permitted',
};

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new PolicyModuleError(path, reasons[code ?? ''] ?? message);
  }
}

/** The text without types, and with imports and exports as calls and assignments. */
function plain(text: string, path: string): string {
  const typed = extname(path).endsWith('ts');
  try {
    return transform(text, { transforms: typed ? ['typescript', 'imports'] : ['imports'] }).code;
  } catch (error) {
    const { message, loc } = error as Error & { loc?: { line: number; column: number } };
    const what = message.replace(/^Error transforming \S+: /, '').replace(/ \(\d+:\d+\)$/, '');
    throw new PolicyModuleError(path, `${loc ? `line ${loc.line}, column ${loc.column}: ` : ''}${what}`);
  }
}

/**
 * Reads a policy module and loads it once, to see that it is one.
 * @param most time that loading may take, s
 * @throws PolicyModuleError
 */
export async function readPolicyModule(path: string, most: number): Promise<PolicyModuleFile> {
  const text = textOf(path);
  if (!KINDS.includes(extname(path)))
    throw new PolicyModuleError(path, `expected a file of TypeScript or JavaScript (${KINDS.join(', ')})`);
  const code = plain(text.replace(/^\uFEFF/, ''), path);
  heedForeignPromises();
  let name = '';
  let failed = null;
  try {
    name = new PolicyModuleLoader({ path, code }).load(most).name;
  } finally {
    // Asked for in any case, so that it is not taken for a promise of the next one.
    failed = await failedForeignPromise();
  }
  if (failed !== null)
    throw new PolicyModuleError(path, `left a promise that failed${thrownInWords(failed.reason, path)}`);
  return { path, sha256: createHash('sha256').update(text).digest('hex'), code, name };
}
