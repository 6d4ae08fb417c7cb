/** Colours as people see them, for checks of the palette. */
export type Rgb = readonly [number, number, number];

/** Linear light, by IEC 61966-2-1 (sRGB). */
export function linear(hex: string): Rgb {
  const channel = (at: number) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** Relative luminance, IEC 61966-2-1. */
const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** Contrast ratio as WCAG 2.2 defines it. */
export function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

/**
 * How a colour looks without one kind of cone: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, 2009, IEEE
 * Transactions on Visualization and Computer Graphics 15(6), 1291-1298, matrices for severity 1, from memory.
 */
const SIGHTS: Readonly<Record<string, readonly Rgb[]>> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

export const KINDS = Object.keys(SIGHTS);

export function seen(hex: string, kind: string): Rgb {
  const colour = linear(hex);
  const [r, g, b] = SIGHTS[kind]!.map((row) =>
    Math.min(1, Math.max(0, row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2])),
  );
  return [r!, g!, b!];
}

/** CIE 1976 L*a*b* under D65. */
export function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(luminance([r, g, b]));
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** CIE 1976 colour difference; about 2.3 is just noticeable side by side (M. Mahy et al., 1994, from memory). */
export function difference(a: Rgb, b: Rgb): number {
  const [one, other] = [lab(a), lab(b)];
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}
