/**
 * Slurm on this machine alone, with a folder, ports and a key of its own: one node that holds all of it. Its
 * daemons run as root, as Debian's package has them.
 */
import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { availableParallelism, hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

const has = (program: string) => spawnSync('which', [program]).status === 0;

/** Why there can be no such node here; '' where there can, the package then installed. */
export function slurmMissing(): string {
  if (process.getuid?.() !== 0) return 'the daemons of Slurm want root';
  if (has('slurmctld') && has('slurmd') && has('munged')) return '';
  if (!has('apt-get')) return 'slurmctld, slurmd and munged are not installed';
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const get = (...words: string[]) => spawnSync('apt-get', words, { env }).status === 0;
  const got =
    get('update') && get('install', '-y', '--no-install-recommends', 'slurm-wlm', 'munge');
  return got ? '' : 'apt-get could not install slurm-wlm';
}

export interface SlurmNode {
  /** For its commands: where its configuration is. */
  env: NodeJS.ProcessEnv;
  stop(): Promise<void>;
}

/** Starts it and waits until it takes jobs. */
export async function slurmNode(): Promise<SlurmNode> {
  const folder = mkdtempSync(join(tmpdir(), 'trumpetry-slurm-'));
  for (const name of ['state', 'spool']) mkdirSync(join(folder, name));
  const key = join(folder, 'munge.key');
  writeFileSync(key, randomBytes(128), { mode: 0o400 });
  const conf = join(folder, 'slurm.conf');
  writeFileSync(conf, configuration(folder));
  const env = { ...process.env, SLURM_CONF: conf };
  const at = (name: string) => join(folder, name);
  const munge = ['--foreground', '--force', '--key-file', key, '--socket', at('munge.socket')];
  const files = ['--pid-file', at('munge.pid'), '--log-file', at('munge.log')];
  const daemons = [
    start('munged', [...munge, ...files, '--seed-file', at('munge.seed')], env),
    start('slurmctld', ['-D', '-i', '-f', conf, '-L', at('slurmctld.log')], env),
    start('slurmd', ['-D', '-f', conf, '-L', at('slurmd.log'), '-N', hostname()], env),
  ];
  const stop = async () => {
    const ended = daemons.map((one) => new Promise((end) => one.once('close', end)));
    for (const daemon of daemons.toReversed()) daemon.kill('SIGTERM');
    await Promise.all(ended);
  };
  try {
    await idle(env);
  } catch (error) {
    await stop();
    throw error;
  }
  return { env, stop };
}

function start(program: string, words: string[], env: NodeJS.ProcessEnv): ChildProcess {
  return spawn(program, words, { env, stdio: 'ignore' });
}

/** Tries to see the node ready, one a half second. */
const TRIES = 240;

async function idle(env: NodeJS.ProcessEnv): Promise<void> {
  for (let i = 0; i < TRIES; i++) {
    const { stdout } = spawnSync('sinfo', ['-h', '-o', '%T'], { env, encoding: 'utf8' });
    if (stdout.trim() === 'idle') return;
    await wait(500);
  }
  throw new Error('Slurm did not become ready');
}

/** Ports that no usual service has. */
const [CONTROL_PORT, NODE_PORT] = [26_817, 26_818];

function configuration(folder: string): string {
  const name = hostname();
  const said = {
    ClusterName: 'shards',
    SlurmctldHost: `${name}(127.0.0.1)`,
    SlurmUser: 'root',
    // A job that was requeued waits for the end of its credential.
    AuthInfo: `socket=${folder}/munge.socket,cred_expire=5`,
    ...{ AuthType: 'auth/munge', CredType: 'cred/munge' },
    ...{ SlurmctldPort: CONTROL_PORT, SlurmdPort: NODE_PORT },
    ...{ StateSaveLocation: `${folder}/state`, SlurmdSpoolDir: `${folder}/spool` },
    ...{ SlurmctldPidFile: `${folder}/ctld.pid`, SlurmdPidFile: `${folder}/d.pid` },
    ...{ ProctrackType: 'proctrack/linuxproc', TaskPlugin: 'task/none', MpiDefault: 'none' },
    ...{ JobAcctGatherType: 'jobacct_gather/none', SwitchType: 'switch/none' },
    ...{ SelectType: 'select/cons_tres', SelectTypeParameters: 'CR_CPU' },
    ...{ ReturnToService: 2, KillWait: 2, MinJobAge: 600 },
  };
  const lines = Object.entries(said).map(([key, value]) => `${key}=${value}`);
  const cpus = availableParallelism();
  return [
    ...lines,
    `NodeName=${name} NodeAddr=127.0.0.1 CPUs=${cpus} State=UNKNOWN`,
    'PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP',
    '',
  ].join('\n');
}

/** What a command of Slurm says. Throws where it fails. */
export function slurm({ env }: SlurmNode, program: string, ...words: string[]): string {
  return execFileSync(program, words, { env, encoding: 'utf8' }).trim();
}
