// Validates YAML files against a JSON Schema (draft 2020-12): node validate.js SCHEMA FILE…
// Prints one JSON object: for each file the lines in which the validator finds a fault, each with what it says.
import { readFileSync } from 'node:fs'
import Ajv from 'ajv/dist/2020.js'
import { LineCounter, isMap, parseDocument } from 'yaml'

const [schema, ...files] = process.argv.slice(2)
const validate = new Ajv({ allErrors: true, verbose: true, strict: true, strictTypes: false, strictRequired: false })
  .compile(JSON.parse(readFileSync(schema, 'utf8')))
process.stdout.write(JSON.stringify(Object.fromEntries(files.map(file => [file, faultsOf(file)]))))

function faultsOf(file) {
  const lines = new LineCounter()
  const document = parseDocument(readFileSync(file, 'utf8'), { version: '1.2', schema: 'core', lineCounter: lines })
  const lineAt = offset => lines.linePos(offset).line
  if (document.errors.length > 0) return document.errors.map(error => ({ line: lineAt(error.pos[0]), says: error.message }))
  if (validate(document.toJS())) return []
  return validate.errors.filter(error => !['anyOf', 'if', 'allOf'].includes(error.keyword)).flatMap(error => {
    const path = error.instancePath.split('/').slice(1).map(part => part.replaceAll('~1', '/').replaceAll('~0', '~'))
    const { node, key } = path.reduce(({ node }, part) => {
      const pair = isMap(node) ? node.items.find(one => String(one.key) === part) : undefined
      return pair ? { node: pair.value, key: pair.key } : { node: node?.items?.[part] }
    }, { node: document.contents })
    return linesOf(error, node, key, lineAt).map(line => ({ line, says: `${error.instancePath} ${error.message}` }))
  })
}

// A key that is too much stands somewhere; what is missing is missed where its map begins.
function linesOf(error, node, key, lineAt) {
  const named = error.params.additionalProperty ?? error.propertyName ?? error.params.propertyName
  const one = error.keyword === 'oneOf' ? error.schema.flatMap(choice => choice.required) : []
  const keys = isMap(node) ? node.items.filter(pair => String(pair.key) === named || one.includes(String(pair.key))) : []
  if (keys.length > 0) return keys.map(pair => lineAt(pair.key.range[0]))
  return [lineAt((error.keyword === 'minProperties' ? key : node)?.range?.[0] ?? 0)]
}
