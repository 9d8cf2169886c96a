// Prints, for each TOML file named, whether it satisfies a JSON Schema: a line
// "good FILE" or "bad FILE". Usage: node judge.mjs SCHEMA FILE...
import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { parse } from 'smol-toml';

const [schema, ...files] = process.argv.slice(2);
// Strict mode refuses a misspelt keyword and an unknown format. A variant may
// require a property that is defined beside it.
const ajv = new Ajv({ allErrors: true, strict: true, allowUnionTypes: true, strictRequired: false, strictTypes: false });

const number = String.raw`\d+(\.\d+)?(e\d+)?`;
const inches = String.raw`(\d+[ -])?\d+\/\d+|${number}`;
const metric = new RegExp(String.raw`^-?${number}\s*(mm|cm|m)$`);
const imperial = new RegExp(String.raw`^-?(${number}\s*(ft|'))?[ -]*((${inches})\s*(in|"))?$`);
const size = (text) => (text !== '' && (metric.test(text) || imperial.test(text)) ? parseFloat(text) : NaN);
const unit = (units) => new RegExp(`^-?${number}\\s*(${units})$`);
const physical = 1e12;

const formats = {
  length: (t) => size(t) > 0 && size(t) < physical || /^0*\.?0*[1-9]/.test(t) && size(t) < physical,
  'length-zero': (t) => size(t) >= 0,
  'length-signed': (t) => !Number.isNaN(size(t)),
  density: unit('kg/m3|lb/ft3'),
  stress: unit('Pa|kPa|MPa|GPa|psi'),
  angle: unit('deg|rad'),
  hours: unit('h'),
  mass: unit('kg|g|lb'),
  force: unit('N|kN|lbf'),
  temperature: unit('C|F'),
  share: (t) => unit('%').test(t) && parseFloat(t) <= 100,
  humidity: (t) => unit('%').test(t) && parseFloat(t) <= 100,
  stock: /^[1-9]\d?\/4$/,
  date: /^\d{4}-\d{2}-\d{2}$/,
};
for (const [name, check] of Object.entries(formats)) ajv.addFormat(name, check);

const validate = ajv.compile(JSON.parse(readFileSync(schema, 'utf8')));

// A date has no JSON type; it is checked as its text.
const plain = (v) => {
  if (v instanceof Date) return v.toISOString().slice(0, 10);
  if (Array.isArray(v)) return v.map(plain);
  if (v && typeof v === 'object') return Object.fromEntries(Object.entries(v).map(([k, x]) => [k, plain(x)]));
  return v;
};

for (const file of files) {
  console.log(validate(plain(parse(readFileSync(file, 'utf8')))) ? 'good' : 'bad', file);
}
