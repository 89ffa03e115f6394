#!/usr/bin/env node
// Starts the program: finds a Node that is new enough, sees that the bundle is there, and imports it.
// Written so that a Node as old as 10 can read it and be told what to do: no static import, nothing newer than
// async functions. Everything the program itself does is in main.tsx.

const needed = [22, 12];
const unavailable = 69;

function isTooOld(version) {
  const have = version.split('.').map(Number);
  return have[0] < needed[0] || (have[0] === needed[0] && have[1] < needed[1]);
}

function give(complaint) {
  process.stderr.write(`countback: ${complaint}\n`);
  process.exitCode = unavailable;
}

function sayTooOld() {
  give(
    `this is Node ${process.versions.node}; Node ${needed.join('.')} or newer is needed. ` +
      'In a checkout run "npm ci" and then "npm start", which bring their own; otherwise install a newer Node from nodejs.org.',
  );
}

// A child, because this Node cannot replace itself by another. Limit: a shell's stop (Ctrl+Z) reaches the child only
// through the process group, so with an old Node "npm start" is the better way in.
async function goOnWith(node, script) {
  const { spawn } = await import('child_process');
  const env = Object.assign({}, process.env, { COUNTBACK_RELAUNCHED: '1' });
  const child = spawn(node, [script].concat(process.argv.slice(2)), { stdio: 'inherit', env });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGQUIT', 'SIGCONT']) {
    process.on(signal, () => child.kill(signal));
  }
  child.on('error', sayTooOld);
  child.on('exit', (code, signal) => {
    if (signal === null) process.exit(code);
    process.removeAllListeners(signal);
    process.kill(process.pid, signal);
  });
}

function isBundleBehind(fs, root, whole) {
  return !fs.existsSync(whole) || holdsNewer(fs, `${root}/src`, fs.statSync(whole).mtimeMs);
}

// Folder by folder: Node's own way through all of them takes four times as long, and a slash is a slash on every system;
// joining 500 paths took half of the search.
function holdsNewer(fs, folder, made) {
  return fs.readdirSync(folder, { withFileTypes: true }).some((at) => {
    const there = `${folder}/${at.name}`;
    if (at.isDirectory()) return holdsNewer(fs, there, made);
    return at.isFile() && fs.statSync(there).mtimeMs > made;
  });
}

async function launch() {
  const fs = await import('fs');
  const path = await import('path');
  const script = fs.realpathSync(process.argv[1]);
  const root = path.dirname(path.dirname(script));

  if (isTooOld(process.versions.node)) {
    const own = path.join(root, 'node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
    if (process.env.COUNTBACK_RELAUNCHED === undefined && fs.existsSync(own)) await goOnWith(own, script);
    else sayTooOld();
    return;
  }

  const whole = path.join(root, 'dist', 'countback.js');
  const isCheckout = fs.existsSync(path.join(root, '.build', 'bundle.js'));
  if (isCheckout && isBundleBehind(fs, root, whole)) {
    try {
      await (await import('../.build/bundle.js')).bundle();
    } catch (fault) {
      give(`the program could not be built (${String(fault.message).split('\n')[0]}); run "npm ci" in ${root}`);
      return;
    }
  }
  if (!fs.existsSync(whole)) {
    give(`${whole} is missing; install the package again`);
    return;
  }
  // Before React is imported: its development build keeps a performance entry for every key pressed.
  process.env.NODE_ENV = 'production';
  // What was compiled once need not be compiled again at the next start; where it cannot be kept, all goes on without.
  (await import('module')).enableCompileCache(path.join(root, 'dist', '.compiled'));
  await import('../dist/countback.js');
}

if (isTooOld(process.versions.node) && Number(process.versions.node.split('.')[0]) < 14) sayTooOld();
else launch();
