// Judges quantities by the parts of a JSON Schema that they have to satisfy, as a
// validator does that knows none of the program's formats. Reads one JSON array
// of {"schema": …, "text": …} from standard input and prints an array of
// booleans.
import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';

const ajv = new Ajv({ strict: true, validateFormats: false });
const cases = JSON.parse(readFileSync(0, 'utf8'));
console.log(JSON.stringify(cases.map(({ schema, text }) => ajv.validate(schema, text))));
