import { Ajv } from 'ajv';

/**
 * The rules of OCEL 2.0 in its JSON format, written down anew from the public description of the format
 * (ocel-standard.org, "Specification", "JSON", and the specification of version 2.0, arXiv:2403.01975): four arrays at the
 * top; types have names and typed attributes; events have an id, a type and a time; objects have an id, a type and
 * attributes with the time from which they hold; relationships name an object and a qualifier.
 */
const text = { type: 'string', minLength: 1 };
const time = { type: 'string', pattern: '^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z$' };
const value = { type: ['string', 'number', 'boolean'] };
const of = (properties: Record<string, object>, required = Object.keys(properties)) => ({
  ...{ type: 'object', properties, required, additionalProperties: false },
});
const many = (items: object) => ({ type: 'array', items });
const types = many(
  of({
    name: text,
    attributes: many(of({ name: text, type: { enum: ['string', 'time', 'integer', 'float', 'boolean'] } })),
  }),
);
const relationships = many(of({ objectId: text, qualifier: text }));
const SCHEMA = of({
  ...{ eventTypes: types, objectTypes: types },
  events: many(
    of({ id: text, type: text, time, attributes: many(of({ name: text, value })), relationships }),
  ),
  objects: many(
    of({ id: text, type: text, attributes: many(of({ name: text, time, value })), relationships }),
  ),
});

const validate = new Ajv({ allowUnionTypes: true }).compile(SCHEMA);

interface Typed {
  readonly id: string;
  readonly type: string;
  readonly time?: string;
  readonly attributes: readonly { readonly name: string; readonly value: unknown }[];
  readonly relationships: readonly { readonly objectId: string; readonly qualifier?: string }[];
}
interface Type {
  readonly name: string;
  readonly attributes: readonly { readonly name: string; readonly type: string }[];
}
export interface Ocel {
  readonly eventTypes: readonly Type[];
  readonly objectTypes: readonly Type[];
  readonly events: readonly Typed[];
  readonly objects: readonly Typed[];
}

const FITS: Readonly<Record<string, (value: unknown) => boolean>> = {
  string: (value) => typeof value === 'string',
  time: (value) => typeof value === 'string' && !Number.isNaN(Date.parse(value)),
  integer: (value) => Number.isInteger(value),
  float: (value) => typeof value === 'number',
  boolean: (value) => typeof value === 'boolean',
};

function twice(names: readonly string[]): string[] {
  const seen = new Set<string>();
  return names.filter((name) => seen.size === seen.add(name).size);
}

/** What of the document breaks a rule; nothing where it keeps all. */
export function brokenRules(document: unknown): string[] {
  if (!validate(document))
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  const { eventTypes, objectTypes, events, objects } = document as unknown as Ocel;
  const known = new Set(objects.map(({ id }) => id));
  const follows = (them: readonly Typed[], types: readonly Type[]): string[] => {
    const byName = new Map(
      types.map(({ name, attributes }) => [name, new Map(attributes.map((it) => [it.name, it.type]))]),
    );
    return them.flatMap(({ id, type, attributes, relationships }) => {
      const declared = byName.get(type);
      if (!declared) return [`${id}: the type ${type} is not declared`];
      return [
        ...attributes.flatMap(({ name, value }) => {
          const kind = declared.get(name);
          if (kind === undefined) return [`${id}: ${name} is not declared`];
          return FITS[kind]!(value) ? [] : [`${id}: ${name} is no ${kind}`];
        }),
        ...relationships.flatMap(({ objectId }) =>
          known.has(objectId) ? [] : [`${id}: there is no ${objectId}`],
        ),
      ];
    });
  };
  return [
    ...[eventTypes, objectTypes].flatMap((types) =>
      twice(types.map(({ name }) => name)).map((name) => `type ${name} twice`),
    ),
    ...[events, objects].flatMap((them) => twice(them.map(({ id }) => id)).map((id) => `id ${id} twice`)),
    ...follows(events, eventTypes),
    ...follows(objects, objectTypes),
  ];
}
