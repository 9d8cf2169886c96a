// Holds a bill of materials against CycloneDX's own schema: node bill.mjs FILE
import { readFileSync } from 'node:fs'
import { Spec, Validation } from '@cyclonedx/cyclonedx-library'

const bill = readFileSync(process.argv[2], 'utf8')
const faults = await new Validation.JsonStrictValidator(Spec.Version.v1dot6).validate(bill)
if (faults !== null) {
  console.error(process.argv[2], faults)
  process.exit(1)
}
