/** Plain data, as read from YAML. */
export type Raw = null | boolean | number | string | readonly Raw[] | { readonly [key: string]: Raw };

export const isMapping = (value: unknown): value is { readonly [key: string]: Raw } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
