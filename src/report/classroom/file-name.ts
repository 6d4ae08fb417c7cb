/** Longer names are cut, so that any system takes the file. */
const LONGEST = 40;

/** Letters and digits of any script, and dashes for all else. */
const plain = (text: string): string =>
  [
    ...text
      .normalize('NFC')
      .toLowerCase()
      .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-'),
  ]
    .slice(0, LONGEST)
    .join('')
    .replace(/^-+|-+$/g, '');

/** What a file of an exercise is called by itself. */
export const exerciseName = (file: string): string => file.replace(/^.*[/\\]/, '').replace(/\.[^.]+$/, '');

/** The name of a file that a page saves, such as `answers-buffer-a-pupil.json`. */
export const savedName = (
  what: string,
  { exercise, pupil, suffix }: { readonly exercise: string; readonly pupil: string; readonly suffix: string },
): string => `${[what, plain(exercise), plain(pupil)].filter(Boolean).join('-')}.${suffix}`;
