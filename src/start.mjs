/**
 * Runs one of the entry points, as in `node src/start.mjs server --demo`, from JavaScript that is built from the sources as
 * they are: the first start after a change builds it, which takes about a second. Knows what has to be built, not what it does.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import module from 'node:module';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const CACHE = path.join(ROOT, 'node_modules', '.cache', 'creasebook');
const SOURCES = ['shared', 'src', 'views', 'migrations', 'seed'];
/** `worker` stands beside the others, where planning.ts looks for it. */
const ENTRIES = ['server', 'plan', 'verify', 'archive', 'restore', 'backup', 'worker'];
/** They bring files that they look for beside themselves. */
const LEFT_ALONE = ['better-sqlite3', 'pdfkit', 'sharp'];

/** CommonJS packages ask for Node's own modules by `require`. */
const REQUIRE =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

/** What looks for files beside its source still finds them; the planners alone look beside what is built. */
const inPlace = {
  name: 'in place',
  setup({ onLoad }) {
    onLoad({ filter: /\.tsx?$/ }, ({ path: file }) => {
      if (file.includes('node_modules') || file.endsWith('planning.ts')) return undefined;
      const text = readFileSync(file, 'utf8');
      if (!text.includes('import.meta.url')) return undefined;
      const url = JSON.stringify(pathToFileURL(file).href);
      return { contents: text.replaceAll('import.meta.url', url), loader: 'tsx' };
    });
  },
};

const [entry] = process.argv.splice(2, 1);
const built = path.join(CACHE, keyOf(sourceFiles()));
if (!existsSync(built)) await build(built);
process.setSourceMapsEnabled(true);
module.enableCompileCache?.(path.join(built, 'compiled'));
await import(pathToFileURL(path.join(built, `${entry}.mjs`)).href);

function sourceFiles() {
  const own = SOURCES.flatMap((folder) =>
    readdirSync(path.join(ROOT, folder), { recursive: true })
      .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
      .map((file) => path.join(folder, file)),
  );
  return [...own.sort(), 'package.json', 'package-lock.json', 'tsconfig.json'];
}

/** By what is in the files and where they lie, which the built code knows too. */
function keyOf(files) {
  const hash = createHash('sha256').update(ROOT);
  for (const file of files) hash.update(`\n${file}\n`).update(readFileSync(path.join(ROOT, file)));
  return hash.digest('hex').slice(0, 20);
}

/** In a folder aside first, so that two starts at once do not meet in half a build. */
async function build(folder) {
  const esbuild = await import('esbuild');
  mkdirSync(CACHE, { recursive: true });
  const aside = mkdtempSync(path.join(CACHE, 'aside-'));
  try {
    await esbuild.build({
      absWorkingDir: ROOT,
      entryPoints: ENTRIES.map((name) => `src/${name}.ts`),
      outdir: aside,
      outExtension: { '.js': '.mjs' },
      external: LEFT_ALONE,
      plugins: [inPlace],
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      sourcemap: 'linked',
      sourcesContent: false,
      banner: { js: REQUIRE },
      logLevel: 'error',
    });
    renameSync(aside, folder);
    for (const old of outlived()) rmSync(old, { recursive: true, force: true });
  } catch (problem) {
    rmSync(aside, { recursive: true, force: true });
    if (!existsSync(folder)) throw problem;
  }
}

/** All but the newest three: a server may still be running from one, and fetch its planner when it is first asked. */
function outlived() {
  const builds = readdirSync(CACHE)
    .filter((name) => !name.startsWith('aside-'))
    .map((name) => path.join(CACHE, name));
  return builds.sort((one, other) => statSync(other).mtimeMs - statSync(one).mtimeMs).slice(3);
}
