/// <reference types="vite/client" />

/** One step of the schema, by its number. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

const files = import.meta.glob<string>("./migrations/*.sql", {
  query: "?raw",
  import: "default",
  eager: true,
});

const NAME = /(\d{3})-([a-z0-9-]+)\.sql$/;

function migrationOf(path: string, sql: string): Migration {
  const match = NAME.exec(path);
  if (!match) throw new Error(`A migration's file is named NNN-name.sql; read ${path}`);
  return { version: Number(match[1]), name: match[2], sql };
}

/** Every migration, by rising number; the SQL travels inside the built bundle. */
export const MIGRATIONS: readonly Migration[] = Object.entries(files)
  .map(([path, sql]) => migrationOf(path, sql))
  .sort((a, b) => a.version - b.version);
