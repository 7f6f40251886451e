/** Astro's processes: its commands, and the build of the pages. */
import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import type { Places } from './places.ts';

const project = join(import.meta.dirname, '..', '..');

/**
 * Names that a page reads as `import.meta.env`: a variable of the machine with such a name would
 * take the place of what the build says, and every link would lead elsewhere.
 */
const readByPages = new Set(['BASE_URL', 'SITE', 'ASSETS_PREFIX', 'MODE', 'DEV', 'PROD', 'SSR']);

const inherited = (): NodeJS.ProcessEnv =>
  Object.fromEntries(Object.entries(process.env).filter(([name]) => !readByPages.has(name)));

/** What Astro's own process must know of our folders. */
const ourFolders = ({ content, cache, out }: Places): NodeJS.ProcessEnv => ({
  MIRRORLEAF_CONTENT: content,
  MIRRORLEAF_CACHE: cache,
  MIRRORLEAF_OUT: out,
  ASTRO_TELEMETRY_DISABLED: '1',
});

/** Run one of Astro's commands with the project's own Node; gives its exit code. */
export function runAstro(places: Places, args: readonly string[]): Promise<number> {
  const astro = join(project, 'node_modules', 'astro', 'bin', 'astro.mjs');
  return exitCode(
    spawn(process.execPath, [astro, ...args], {
      cwd: project,
      env: { ...inherited(), ...ourFolders(places) },
      stdio: 'inherit',
    }),
  );
}

/** 1 for a process that was killed. */
function exitCode(child: ChildProcess): Promise<number> {
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', (code) => {
      resolve(code ?? 1);
    });
  });
}

export interface PagesProcess {
  /**
   * Makes the pages; gives the exit code. Once.
   *
   * @param out The folder to make them in.
   * @param told What the pages are told besides, as variables of the process.
   */
  build(out: string, told: NodeJS.ProcessEnv): Promise<number>;
  /** Ends it where it has not been asked to build. */
  stop(): void;
}

/** Begins the process of the pages, which loads Astro and what was read before, and waits. */
export function beginPagesProcess(places: Places): PagesProcess {
  const child = spawn(process.execPath, [join(project, 'src', 'integration', 'pages-process.ts')], {
    cwd: project,
    env: { ...inherited(), ...ourFolders(places) },
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
  const ended = exitCode(child);
  // Heard by whoever asks it to build.
  ended.catch(() => undefined);
  let asked = false;
  return {
    build: (out, told) => {
      asked = true;
      // An error means that it has ended, which is told as its exit code.
      child.send({ MIRRORLEAF_OUT: out, ...told }, () => undefined);
      return ended;
    },
    stop: () => {
      if (!asked) child.kill();
    },
  };
}
