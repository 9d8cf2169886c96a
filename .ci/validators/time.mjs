// Times another general-purpose validator on a spec, decoding included:
// dryfit schema | node time.mjs FILE
import { readFileSync } from 'node:fs'
import Ajv from 'ajv/dist/2020.js'
import { parse } from 'smol-toml'

const source = readFileSync(process.argv[2], 'utf8')
const ajv = new Ajv({ strict: true, allowUnionTypes: true, validateFormats: false })
const validate = ajv.compile(JSON.parse(readFileSync(0, 'utf8')))
const rounds = 2000
let begun
for (let i = -rounds; i < rounds; i++) { // the first half warms up
  if (i === 0) begun = process.hrtime.bigint()
  if (!validate(parse(source))) throw new Error(JSON.stringify(validate.errors))
}
console.log(`${Number(process.hrtime.bigint() - begun) / rounds / 1e6}ms`)
