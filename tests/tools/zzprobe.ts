import { caseOf } from "../support/tissueTally";
import { lengthQuantity, modelOf, answersOf, sewnOf, valuesOf, FREEDOM_COUNT } from "../../src/core/tissue/tissueModel";
for (let seed=1000; seed<1040; seed++) {
const c = caseOf(seed);
const model = modelOf(c.standIn.sizes[c.measured]!, c.standIn.sizes[c.measured+1], {bust:false,waist:false,hip:false});
const z = Array.from({length:FREEDOM_COUNT},()=>0);
const sewn = sewnOf(model.pieces);
const qs = [...sewn, ...c.readings.map(r=>lengthQuantity(model,r.piece,r.length)!)];
const names=[...sewn.map(s=>s.pair?`${s.pair.seam} ${s.pair.first}/${s.pair.second}`:`legs ${s.of}`), ...c.readings.map(r=>`${r.piece}.${r.length}`)];
const v = valuesOf(model, qs, z); const a = answersOf(model, qs, z);
const bad = names.filter((_,i)=>!Number.isFinite(v[i]!) || a[i]!.some(x=>!Number.isFinite(x)));
const zero = names.filter((_,i)=>a[i]!.every(x=>x===0));
if (bad.length||zero.length) console.log(seed, c.pattern.style, "bad", bad, "zero", zero);
}
import { fitOf } from "../support/tissueTally";
for (let seed=1000; seed<1040; seed++) { const c = caseOf(seed); for (const n of [5,10,100]) try { fitOf(c,n) } catch (e) { console.log(seed, n, c.pattern.style, String(e), c.readings.slice(0,n).map(r=>{const q=lengthQuantity(modelOf(c.standIn.sizes[c.measured]!, c.standIn.sizes[c.measured+1], {bust:false,waist:false,hip:false}),r.piece,r.length)!; const m=modelOf(c.standIn.sizes[c.measured]!, c.standIn.sizes[c.measured+1],{bust:false,waist:false,hip:false}); return `${r.piece}.${r.length} ${r.read.toFixed(0)}/${q.value(m.pieces,m.next).toFixed(0)}`}).join(" ")); } }
