#!/usr/bin/env node
// Plain JavaScript that an old Node understands: it refuses to go on in one line instead of failing in the middle.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`countertorque needs Node 20.19 or later; this is Node ${process.versions.node}`);
  process.exit(1);
}
const { register } = await import('tsx/esm/api');
register();
const { main } = await import('./main.ts');
await main(process);
