/** Every query that a database is asked, in order, with what it is asked about. Knows no page. */
import type { CompiledQuery, QueryResult } from 'kysely';
import type { Database } from '#stores/database.ts';

export interface Queries {
  /** Those asked since the last call, each as one text. */
  readonly take: () => string[];
}

export function watchQueries(db: Database): Queries {
  const executor = db.getExecutor();
  const execute = executor.executeQuery.bind(executor);
  let asked: string[] = [];
  executor.executeQuery = <R>(query: CompiledQuery<R>): Promise<QueryResult<R>> => {
    asked.push(`${query.sql.replace(/\s+/g, ' ')} ${JSON.stringify(query.parameters)}`);
    return execute(query);
  };
  return {
    take: () => {
      const taken = asked;
      asked = [];
      return taken;
    },
  };
}

/** Those that came more than once. */
export const askedTwice = (queries: readonly string[]): string[] => [
  ...new Set(queries.filter((query, index) => queries.indexOf(query) !== index)),
];
