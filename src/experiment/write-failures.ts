const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no folder can be made here',
  ENOTDIR: 'a file stands where a folder should be',
  EISDIR: 'a folder stands where a file should be',
  EACCES: 'writing here is not permitted',
  EPERM: 'writing here is not permitted',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'there is no room left on the disk for you',
  EFBIG: 'a file may not be as large as that',
};

/** Why something could not be written, in words. */
export function whyUnwritten(error: unknown): string {
  const { code = '', message } = error as NodeJS.ErrnoException;
  return REASONS[code] ?? message;
}
