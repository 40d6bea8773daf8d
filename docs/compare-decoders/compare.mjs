// node compare.mjs FOLDER TABLES: every FIT file in FOLDER against our reader's table of it in TABLES.
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { columns, records } from './records.mjs';

// Our tables have six decimals; single-precision steps of the decoders lie below this too.
const TOLERANCE = 2e-6;
const MOST_SHOWN = 3;

const [folder, tables] = process.argv.slice(2);
if (!folder || !tables) {
  console.error('usage: node compare.mjs FOLDER TABLES');
  process.exit(2);
}

function fitFiles(from) {
  return readdirSync(from).flatMap(name => {
    const path = join(from, name);
    return statSync(path).isDirectory() ? fitFiles(path) : path.endsWith('.fit') ? [path] : [];
  });
}

function ours(path) {
  const table = join(tables, `${relative(folder, path).replaceAll('/', '~')}.csv`);
  if (!existsSync(table)) return { refused: 'there is no table of it' };
  const text = readFileSync(table, 'utf8');
  if (text.startsWith('refused: ')) return { refused: text.trim() };
  const lines = text.trimEnd().split('\n').slice(1);
  return { rows: lines.map(line => line.split(',').map(cell => (cell === '' ? null : Number(cell)))) };
}

// Our recordings stand in the order of their sessions: in both lists, records are put in order of time.
const byTime = rows => rows.map((row, i) => [row, i]).sort((a, b) => a[0][0] - b[0][0] || a[1] - b[1]).map(([row]) => row);

let files = 0;
let samples = 0;
let values = 0;
let different = 0;
for (const path of fitFiles(folder).sort()) {
  const name = relative(folder, path);
  const mine = ours(path);
  const theirs = records(path);
  const stopped = theirs.errors.length > 0 ? ` [decoder: ${theirs.errors[0].split('\n')[0]}]` : '';
  if (mine.refused) {
    console.log(`${name}: ${theirs.rows.length} records there; here ${mine.refused}${stopped}`);
    continue;
  }
  if (/compressed timestamp/i.test(stopped) || (theirs.rows.length === 0 && stopped)) {
    console.log(`${name}: not judged, ${mine.rows.length} samples here${stopped}`);
    continue;
  }
  const [a, b] = [byTime(mine.rows), byTime(theirs.rows)];
  const common = Math.min(a.length, b.length);
  const differences = [];
  const onlyHere = columns.map((_, c) => b.every(row => row[c] === null) && a.some(row => row[c] !== null));
  for (let i = 0; i < common; i++) {
    for (let c = 0; c < columns.length; c++) {
      if (onlyHere[c]) continue;
      const [x, y] = [a[i][c], b[i][c]];
      values++;
      const same = x === null || y === null ? x === y : Math.abs(x - y) <= TOLERANCE * Math.max(1, Math.abs(y));
      if (!same) differences.push(`sample ${i} ${columns[c]}: here ${x}, there ${y}`);
    }
  }
  files++;
  samples += common;
  different += differences.length;
  const extra = a.length === b.length ? '' : `, ${a.length} samples here and ${b.length} there`;
  const own = columns.filter((_, c) => onlyHere[c]);
  console.log(`${name}: ${common} samples compared, ${differences.length} differences${extra}`
    + `${own.length > 0 ? `, only here: ${own.join(', ')}` : ''}${stopped}`);
  for (const difference of differences.slice(0, MOST_SHOWN)) console.log(`    ${difference}`);
}
console.log(`${files} files, ${samples} samples, ${values} values compared: ${different} differences`);
