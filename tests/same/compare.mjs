// Compares what `place` answers natively with what it answers in wasm: node compare.mjs NATIVE.txt MODULE.js
//
// Our own formulas must give the same bits, a library's geodesics the same metres within a micrometre. First two
// answers are wounded, one of each kind, to see that the comparison would notice.

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

const TOLERANCE_M = 1e-6

const [nativeFile, moduleFile] = process.argv.slice(2)
if (!moduleFile) {
    console.error('usage: node compare.mjs NATIVE.txt MODULE.js')
    process.exit(2)
}

/** Lines that differ by more than they may, and the greatest distance between metres of two. */
function compare(one, other) {
    const differing = []
    let apart = 0
    for (let at = 0; at < Math.max(one.length, other.length); at++) {
        const [a, b] = [one[at] ?? '', other[at] ?? '']
        if (a === b) continue
        const metres = distance(a, b)
        if (metres > TOLERANCE_M) differing.push(`${a}\n${b}`)
        else apart = Math.max(apart, metres)
    }
    return { differing, apart }
}

/** The greatest difference between the metres of two lines; infinite where they are not of the same thing. */
function distance(a, b) {
    const [left, right] = [a.split(' '), b.split(' ')]
    const alike = left[0] === 'library' && left.length === right.length && left.slice(0, 3).join() === right.slice(0, 3).join()
    if (!alike) return Infinity
    const apart = left.slice(3).map((value, at) => Math.abs(Number(value) - Number(right[at + 3])))
    return apart.some(Number.isNaN) ? Infinity : Math.max(...apart)
}

/** The lines with one bit, or two micrometres, changed in one of a group. */
function wounded(lines, group) {
    const at = lines.findIndex((line) => line.startsWith(`${group} `))
    const parts = lines[at].split(' ')
    const last = parts.pop()
    const changed = group === 'own' ? last.slice(0, -1) + (last.endsWith('0') ? '1' : '0') : String(Number(last) + 2e-6)
    return lines.with(at, [...parts, changed].join(' '))
}

const native = readFileSync(nativeFile, 'utf8').trim().split('\n')
const wasm = createRequire(import.meta.url)(moduleFile).answers().trim().split('\n')
let failed = 0
const check = (what, right) => {
    if (!right) failed += 1
    console.log(`${right ? 'same' : 'DIFFERENT'}: ${what}`)
}

const groups = ['own', 'library'].map((group) => native.filter((line) => line.startsWith(`${group} `)).length)
check(`there are enough answers (${groups.join(' and ')})`, groups.every((count) => count > 2000))
for (const group of ['own', 'library']) {
    check(`a wound to ${group} answers is noticed`, compare(native, wounded(native, group)).differing.length === 1)
}
const { differing, apart } = compare(native, wasm)
check(`native and wasm answers; the library's lie ${apart.toExponential(1)} m apart at most`, differing.length === 0)
for (const lines of differing.slice(0, 20)) console.log(lines)
console.log(`${4 - failed} passed, ${failed} failed`)
process.exit(failed ? 1 : 0)
