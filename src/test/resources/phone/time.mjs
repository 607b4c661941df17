// Takes the processor time of the commands in a file, one JSON array a line, in the module that browsers load.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const spent = (since) => { const d = process.cpuUsage(since); return (d.user + d.system) / 1e3; };
const start = process.cpuUsage();
const phone = await import(pathToFileURL(process.argv[2]).href);
console.log(`load ${spent(start).toFixed(0)} ms`);
const all = {};
for (const line of readFileSync(process.argv[3], 'utf8').split('\n')) {
  if (!line) continue;
  const [what, ...rest] = JSON.parse(line);
  const from = process.cpuUsage();
  try { phone[what](...rest); } catch (e) { if (e.name !== 'Refused') throw e; }
  (all[what] ??= []).push(spent(from));
}
for (const [what, times] of Object.entries(all)) {
  const later = times.slice(1).sort((a, b) => a - b);
  const at = (share) => later[Math.min(later.length - 1, Math.floor(share * later.length))].toFixed(1);
  console.log(`${what}: first ${times[0].toFixed(0)} ms, then median ${at(0.5)} ms, one in twenty above ${at(0.95)} ms (${times.length})`);
}
