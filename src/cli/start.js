#!/usr/bin/env node
// Plain JavaScript that an old Node understands: it refuses to go on in one line instead of failing in the middle.
// For the same reason there is no await at the top level.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`countertorque needs Node 20.19 or later; this is Node ${process.versions.node}`);
  process.exitCode = 1;
} else {
  import('../pool/bundled.js')
    .then(({ bundled }) => bundled('cli/main.ts'))
    .then(({ main }) => main(process));
}
