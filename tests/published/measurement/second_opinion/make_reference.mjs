// Writes the three reference files beside this script from general-purpose packages of other people; README.md has the
// commands. The random pairs come from a fixed seed: the same packages give the same bytes.
import { writeFileSync } from 'node:fs';
import { differenceCiede2000, differenceEuclidean } from 'culori';
import jstat from 'jstat';

const { jStat } = jstat;

// The generator mulberry32: 32 bits of state, enough for a few hundred numbers.
function generator(seed) {
    let state = seed >>> 0;
    return () => {
        state = (state + 0x6d2b79f5) >>> 0;
        let mixed = Math.imul(state ^ (state >>> 15), state | 1);
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    };
}

function write(name, header, rows) {
    const lines = [header, ...rows.map((row) => row.join(','))];
    writeFileSync(new URL(name, import.meta.url), lines.join('\n') + '\n');
    console.log(`${name}: ${rows.length} rows`);
}

const hundredths = (value) => Math.round(value * 100) / 100;

// Half of the pairs are anywhere in the space, half are near neighbours as a wear test has them.
function colours() {
    const random = generator(20240229);
    const between = (low, high) => hundredths(low + (high - low) * random());
    const ciede2000 = differenceCiede2000();
    const cielab = differenceEuclidean('lab65');
    const rows = [];
    for (let i = 0; i < 200; ++i) {
        const first = { mode: 'lab65', l: between(0, 100), a: between(-100, 100), b: between(-100, 100) };
        const second = { mode: 'lab65', l: between(0, 100), a: between(-100, 100), b: between(-100, 100) };
        if (i % 2 === 1) {
            second.l = hundredths(Math.min(100, Math.max(0, first.l + between(-8, 8))));
            second.a = hundredths(first.a + between(-8, 8));
            second.b = hundredths(first.b + between(-8, 8));
        }
        rows.push([
            first.l, first.a, first.b, second.l, second.a, second.b,
            cielab(first, second).toFixed(9), ciede2000(first, second).toFixed(9),
        ]);
    }
    return rows;
}

const kDegrees = [1, 2, 3, 5, 8, 10, 16, 20, 30, 50, 100];

function statistics() {
    const rows = [];
    const add = (name, argument, dof, value) => rows.push([name, argument, dof, value.toPrecision(12)]);
    for (let z = -6; z <= 6; z += 0.25) add('normal_below', z, 'inf', jStat.normal.cdf(z, 0, 1));
    for (const dof of kDegrees) {
        for (let t = -6; t <= 6; t += 0.75) add('student_below', t, dof, jStat.studentt.cdf(t, dof));
    }
    const probabilities = [0.5, 0.6827, 0.8, 0.9, 0.95, 0.9545, 0.99, 0.9973];
    for (const p of probabilities) add('two_sided_quantile', p, 'inf', jStat.normal.inv(0.5 + p / 2, 0, 1));
    for (const dof of kDegrees) {
        for (const p of probabilities) add('two_sided_quantile', p, dof, jStat.studentt.inv(0.5 + p / 2, dof));
    }
    return rows;
}

// Ranges and readings as they occur: trace limits, main elements, density.
function ranges() {
    const rows = [];
    for (const [low, high] of [[0, 0.005], [0, 0.1], [2.5, 3.5], [17.5, 19.5], [6.6, 6.8]]) {
        for (const share of [0.05, 0.25, 1, 4]) {
            const u = (high - low) * share;
            for (let step = -4; step <= 4; step += 1) {
                const x = (low + high) / 2 + (step * (high - low)) / 4;
                const inside = jStat.normal.cdf(high, x, u) - jStat.normal.cdf(low, x, u);
                rows.push([x, u, low, high, inside.toPrecision(12)]);
            }
        }
    }
    return rows;
}

write('colour_reference.csv', 'L1,a1,b1,L2,a2,b2,cielab,ciede2000', colours());
write('statistics_reference.csv', 'function,argument,dof,value', statistics());
write('range_reference.csv', 'x,u,low,high,probability', ranges());
