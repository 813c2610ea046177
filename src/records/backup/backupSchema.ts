import * as z from 'zod/mini';
import { kinds } from '../kind/kinds';
import { versionOf, type Shape } from '../kind/record';
import { runEvent } from '../kind/run';
import { backupFormat, backupVersion } from './backupFile';

function definitionOf(kind: Shape): object {
  const { $schema: _, ...shape } = z.toJSONSchema(kind.schema, { io: 'input' }) as {
    $schema: string;
    properties: object;
  };
  return { ...shape, properties: { ...shape.properties, kind: { const: kind.kind }, v: { const: versionOf(kind) } } };
}

/** The shape of a backup as JSON Schema, from the same schemas that read the records. */
export function backupSchema(): object {
  const definitions = Object.fromEntries(Object.values(kinds).map((kind) => [kind.kind, definitionOf(kind)]));
  const { $schema: _, ...event } = z.toJSONSchema(runEvent, { io: 'input' });
  const { records, events } = { records: { type: 'integer', minimum: 0 }, events: { type: 'integer', minimum: 0 } };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Backup of Minim',
    description:
      'All records of the Shelf and the Book, and all steps of runs. Records of older and newer versions, which these definitions do not describe, are kept in a backup as they are.',
    type: 'object',
    required: ['format', 'version', 'made', 'holds', 'records', 'events'],
    properties: {
      format: { const: backupFormat },
      version: { const: backupVersion },
      made: { type: 'string', format: 'date-time', description: 'When the backup was made, UTC.' },
      holds: { type: 'object', required: ['records', 'events'], properties: { records, events } },
      records: {
        type: 'array',
        items: {
          anyOf: [...Object.keys(definitions).map((name) => ({ $ref: `#/$defs/${name}` })), { $ref: '#/$defs/other' }],
        },
      },
      events: { type: 'array', items: { $ref: '#/$defs/event' } },
    },
    $defs: {
      ...definitions,
      event,
      other: {
        description: 'A record of a kind or version that these definitions do not describe.',
        type: 'object',
        required: ['id', 'kind', 'v'],
        properties: { id: { type: 'string' }, kind: { type: 'string' }, v: { type: 'integer', minimum: 1 } },
      },
    },
  };
}
