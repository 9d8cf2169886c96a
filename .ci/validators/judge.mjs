// Prints, for each TOML file named, where it does not satisfy a JSON Schema: a
// line of JSON, {"file": …, "faults": [pointer, …]}, without faults if it does.
// Usage: node judge.mjs SCHEMA FILE...
import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { parse } from 'smol-toml';

const [schema, ...files] = process.argv.slice(2);
// Strict mode refuses a misspelt keyword and an unknown format.
const ajv = new Ajv({ allErrors: true, strict: true, allowUnionTypes: true });

// The formats, written apart from the program's own and simpler: what they
// leave out, the files do not use.
const number = String.raw`\d+(?:\.\d+)?(?:e\d+)?`;
const whole = String.raw`[1-9]\d*`;
const inches = String.raw`(?:\d+[ -])?\d+\/${whole}|${number}`;
const metric = new RegExp(`^([+-]?)(${number})\\s*(mm|cm|m)$`);
const imperial = new RegExp(`^([+-]?)(?:(${number})\\s*(?:ft|'))?[ -]*(?:(${inches})\\s*(?:in|"))?$`);

const lengths = (fits) => (text) => {
  const inMetres = text && metric.exec(text);
  const m = inMetres || (text && imperial.exec(text));
  if (!m) return false;
  const metres = inMetres ? m[2] * { mm: 1e-3, cm: 1e-2, m: 1 }[m[3]] : 1; // imperial ones of the files are within
  if (metres > 1e4 || (metres > 0 && metres < 1e-6)) return false;
  const size = /[1-9]/.test(text) ? parseFloat(m[2] ?? 1) || 1 : 0; // of a fraction only the sign matters
  return size < 1e12 && fits(m[1] === '-' ? -size : size);
};
const measures = (units, fits) => (text) => {
  const m = new RegExp(`^(-?${number})\\s*(${units})$`).exec(text);
  return m !== null && fits(Number(m[1]), m[2]);
};
const any = () => true;
const positive = (v) => v > 0;
const notNegative = (v) => v >= 0;
const share = measures('%', (v) => v >= 0 && v <= 100);

const formats = {
  length: lengths(positive),
  'length-zero': lengths(notNegative),
  'length-signed': lengths(any),
  mass: measures('kg|g|lb', positive),
  force: measures('N|kN|lbf', positive),
  stress: measures('Pa|kPa|MPa|GPa|psi', positive),
  density: measures('kg/m3|lb/ft3', positive),
  temperature: measures('C|F', (v, unit) => v > (unit === 'C' ? -273.15 : -459.67)),
  angle: measures('deg|rad', any),
  bearing: measures('deg|rad', (v, unit) => v >= 0 && v < (unit === 'deg' ? 360 : 2 * Math.PI)),
  hours: measures('h', notNegative),
  share,
  humidity: share,
  stock: /^[1-9]\d?\/4$/,
  date: (text) => /^\d{4}-\d{2}-\d{2}$/.test(text) && !isNaN(new Date(text)) && new Date(text).toISOString().startsWith(text),
};
for (const [name, check] of Object.entries(formats)) ajv.addFormat(name, check);

const validate = ajv.compile(JSON.parse(readFileSync(schema, 'utf8')));

// A date has no JSON type; it is checked as its text.
const plain = (v) => {
  if (v instanceof Date) return v.toISOString();
  if (Array.isArray(v)) return v.map(plain);
  if (v && typeof v === 'object') return Object.fromEntries(Object.entries(v).map(([k, x]) => [k, plain(x)]));
  return v;
};

for (const file of files) {
  const faults = validate(plain(parse(readFileSync(file, 'utf8')))) ? [] : validate.errors.map((e) => e.instancePath);
  console.log(JSON.stringify({ file, faults }));
}
