// Runs the module that browsers load: reads commands, one JSON array a line, and writes the answer of each as one line of JSON.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const phone = await import(pathToFileURL(process.argv[2]).href);
const out = [];
for (const line of readFileSync(process.argv[3], 'utf8').split('\n')) {
  if (!line) continue;
  const [what, ...rest] = JSON.parse(line);
  try {
    const answer = phone[what](...rest);
    out.push(JSON.stringify({ answer: answer === undefined ? null : answer }));
  } catch (e) {
    out.push(JSON.stringify({ refused: e.message, name: e.name }));
  }
}
process.stdout.write(out.join('\n') + '\n');
